import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { closeBrowser, PanePage, THEMES, WIDTHS } from './support/pane-page.ts';

const example = (path: string): string => readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');
const house = {
    'yard.coffer': example('yard.coffer'), 'details/groove-box.coffer': example('details/groove-box.coffer'),
    'quince-lane/house.coffer': example('quince-lane/house.coffer'), 'quince-lane/dining-room.coffer': example('quince-lane/dining-room.coffer'),
};
const DINING = 'quince-lane/dining-room.coffer';
const dining = async (files: Partial<typeof house> = {}): Promise<RoomOnPage> => roomOnPage(await serve({ ...house, ...files }), DINING);

afterAll(closeBrowser);

describe('the plan pane', () => {
    for (const theme of THEMES) {
        for (const width of WIDTHS) {
            test(`has nothing against it in ${theme} at ${width} pixels`, async () => {
                const beam = house['details/groove-box.coffer'].replace('spacer: Length = 5"', 'spacer: Length = 5 1/2"');
                expect(beam).not.toBe(house['details/groove-box.coffer']);
                const pane = await PanePage.open('plan', { theme, width, height: width === 300 ? 700 : 900 });
                const [size] = (await pane.sent('size')).slice(-1);
                await pane.say(contentMessage('plan', await dining({ 'details/groove-box.coffer': beam }), size));
                await pane.picture(`plan-${theme}-${width}`);
                expect(await pane.violations()).toEqual([]);
                expect(pane.complaints).toEqual([]);
                await pane.close();
            });
        }
    }
});
