import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { price, priceInSteps, type Priced } from '../../src/pipeline/price.ts';
import { roughPlan } from '../../src/pipeline/price-plans.ts';
import { atOnce, inTurns } from '../../src/plain/steps.ts';
import { readFile } from '../../src/language/read-file.ts';
import { TestWorkspace } from '../support/workspace.ts';

const FILES = ['yard.coffer', 'rates.coffer', 'details/groove-box.coffer', 'details/plain-box.coffer', 'quince-lane/house.coffer', 'quince-lane/dining-room.coffer'];
const rooms = async () => {
    const workspace = await TestWorkspace.open(Object.fromEntries(FILES.map(name => [name, readFileSync(`examples/${name}`, 'utf8')])));
    return readFile(workspace.document('quince-lane/dining-room.coffer')).rooms;
};

describe('a price in steps', () => {
    test('is the same as at once; others have their turn several times for every stock, and where they end it the rest is undone', async () => {
        const [own, again, third] = [await rooms(), await rooms(), await rooms()], { job } = own[0]!;
        let turns = 0;
        const inParts = await inTurns(priceInSteps(own, job), () => { turns++; return Promise.resolve(); }), whole = price(again, again[0]!.job);
        expect(inParts.estimate.sums.total.toFraction()).toBe(whole.estimate.sums.total.toFraction());
        const bought = ({ plan }: Priced) => plan.stocks.map(({ buy }) => buy.map(({ count, length }) => [count, length]));
        expect(bought(inParts)).toEqual(bought(whole));
        expect(turns).toBeGreaterThan(2 * inParts.plan.stocks.length);
        // kept: whoever asks next waits for nothing
        expect(priceInSteps(own, job).next()).toEqual({ done: true, value: inParts });
        expect(price(own, job)).toBe(inParts);
        let calls = 0;
        await expect(inTurns(priceInSteps(third, third[0]!.job), () => (++calls === 2 ? Promise.reject(new Error('somebody types')) : Promise.resolve()))).rejects.toThrow('somebody types');
        expect(calls).toBe(2);
    });

    test('on a rough plan is within some hundredths of it', async () => {
        const own = await rooms(), { job } = own[0]!, exact = atOnce(priceInSteps(own, job)).estimate.sums.total;
        const rough = price(own, job, roughPlan(own, job)).estimate.sums.total;
        expect(Math.abs(rough.sub(exact).div(exact).valueOf())).toBeLessThan(0.03);
    });
});
