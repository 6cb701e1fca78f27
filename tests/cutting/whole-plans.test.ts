import { describe, expect, test } from 'vitest';
import { questionsOf } from '../../src/cutting/questions.ts';
import { checkPlan } from './checker.ts';
import { plannedAtOnce, planText } from './whole-plan.ts';
import { SHOPS } from './whole-shops.ts';

/**
 * The same job is cut the same way everywhere: plans at once of shops that have much in them, board by board, with all that is bought, ripped
 * and left. That every plan is sound is held by the checker; what is written down holds that it stays as it is.
 */
describe.each(SHOPS)('$name', shop => {
    test('is planned as it was', async () => {
        const { wanted, plan, whole, after } = plannedAtOnce(shop);
        checkPlan(plan, wanted, shop.settings);
        await expect([planText(whole, shop.settings), ...after.map(line => `${line}\n`)].join('')).toMatchFileSnapshot(`./whole-plans/${shop.name}.txt`);
    });
    test('what is asked of the search is whole numbers that stand for the shop', async () => {
        const { asked } = questionsOf(plannedAtOnce(shop).wanted, shop.settings, [], shop.shop);
        await expect(asked.map(({ problem }) => JSON.stringify(problem)).join('\n')).toMatchFileSnapshot(`./whole-plans/${shop.name}-asked.txt`);
    });
});
