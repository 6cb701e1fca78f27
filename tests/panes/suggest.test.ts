import { describe, expect, test } from 'vitest';
import type { SuggestContent } from '../../src/pages/suggest/content.ts';
import { suggestPage } from '../../src/pages/suggest/page.ts';
import type { RoomOnPage } from '../../src/pages/page.ts';
import type { ContentMessage } from '../../src/panes/messages.ts';
import { markEdits } from '../../src/server/panes/mark.ts';
import { suggestionsFor } from '../../src/suggest/suggestions.ts';
import { applied } from '../support/applied.ts';
import { den, house } from '../cli/house.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage } from './support/pane-page.ts';
import { atOnce } from '../../src/plain/steps.ts';

const LIT = { ...house, 'den.coffer': den.replace('  grid {', `  fixture can light at 4', 2' diameter 5"\n\n  grid {`) };

/** The room with its other grids, which are looked for once. */
let made: Promise<RoomOnPage> | undefined;
const lit = (): Promise<RoomOnPage> => made ??= (async () => {
    const room = roomOnPage(await serve(LIT), 'den.coffer');
    return withGrids(room, suggestionsFor(room.layout.room, room.file, room.standing));
})();
const withGrids = (room: RoomOnPage, otherGrids: NonNullable<RoomOnPage['otherGrids']>): RoomOnPage => {
    const { layout, file, ceiling, takeOff, findings, standing, house: rooms, alternates } = room;
    return { layout, file, ceiling, takeOff, findings, standing, house: rooms, alternates, otherGrids };
};
const message = async (): Promise<ContentMessage> => contentMessage('suggest', await lit());

inTheOneBrowser();

describe('the pane of suggestions', () => {
    test.each(looks('suggest', [300, 400, 900, 1600]))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const pane = await PanePage.open('suggest', { theme, width, height: 900 });
        await pane.say(await message());
        await pane.picture(`suggest-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        expect(await pane.page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('a plan and figures of each grid, the room as it is first; one is written into the text by its button', async () => {
        const { content } = await message(), { offers, present, tried } = content as SuggestContent;
        expect(present?.grid).toBe('3 by 2');
        expect(present?.facts).toContainEqual({ what: 'errors', value: '1' });
        expect(tried.join(' ')).toMatch(/In the way of lines: can/);
        const pane = await PanePage.open('suggest', { width: 900, height: 900 });
        await pane.say(await message());
        expect(await pane.page.$$eval('.grid svg', all => all.length)).toBe(1 + offers.length);
        expect(await pane.page.$$eval('.grid svg [id*="fixture"], .grid svg title', all => all.map(one => one.textContent).join())).toContain('light can');
        await pane.page.click('#take-1');
        expect(await pane.sent('mark')).toEqual([expect.objectContaining({ as: 'grid', key: offers[1]!.key })]);
        await pane.close();
    });

    test('what is written is the offer; nothing, where the text is another one by now', async () => {
        const room = await lit(), { offers } = contentMessage('suggest', room).content as SuggestContent, { shared } = await serve(LIT);
        const answer = markEdits('grid', offers[0]!.key, room, shared);
        if (!answer || !('edits' in answer)) throw new Error('nothing to write');
        const text = applied({ title: '', edits: answer.edits }, { 'den.coffer': LIT['den.coffer'] })['den.coffer']!;
        for (const words of offers[0]!.says) expect(text.replace(/ +/g, ' ')).toContain(words);
        expect(markEdits('grid', 'coffers-north 99', room, shared)).toBe(null);
        const read = withGrids(roomOnPage(await serve({ ...LIT, 'den.coffer': `${LIT['den.coffer']}\n` }), 'den.coffer'), room.otherGrids!);
        expect(markEdits('grid', offers[0]!.key, read, shared)).toBe(null);
    });

    test('while it is looked for that is said; it is kept as files', async () => {
        const room = await lit();
        const pane = await PanePage.open('suggest', { width: 600, height: 700 });
        await pane.say(contentMessage('suggest', withGrids(room, 'looking')));
        expect(await pane.page.textContent('#looking')).toContain('Trying other grids');
        await pane.close();
        const page = await atOnce(suggestPage.exports.html!(room, undefined)), csv = await atOnce(suggestPage.exports.csv!(room, undefined));
        expect([page.name, csv.name]).toEqual(['suggest-den.html', 'suggest-den.csv']);
        expect(String(page.bytes)).toMatch(/Not to be built from as it stands/);
        expect(String(page.bytes)).not.toContain('<button');
        expect(String(csv.bytes).trim().split('\r\n')).toHaveLength(2 + (contentMessage('suggest', room).content as SuggestContent).offers.length);
    });
});
