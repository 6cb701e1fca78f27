import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { ChangesContent, FoundContent } from '../../src/pages/changes/content.ts';
import type { ChangesFound, NoHistory } from '../../src/pages/changes/known.ts';
import { changesPage } from '../../src/pages/changes/page.ts';
import type { ChangesJson } from '../../src/report/changes/shape.ts';
import type { ContentMessage } from '../../src/panes/messages.ts';
import { trespasses } from '../pages/hostile.ts';
import { strictSchema } from '../report/samples.ts';
import { EXAMPLES } from '../support/examples.ts';
import { beforeTheyChangedTheirMinds, changesSince, COMMIT } from './support/changed.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage } from './support/pane-page.ts';
import { atOnce } from '../../src/plain/steps.ts';

const now = EXAMPLES, before = beforeTheyChangedTheirMinds(now);
const room = async () => roomOnPage(await serve(now), 'quince-lane/dining-room.coffer');
const messageOf = async (from = before, against?: string, width = 900): Promise<ContentMessage> => {
    const page = await room();
    return contentMessage('changes', page, { width, height: 900, changes: await changesSince(from, now, page, against) });
};
const foundIn = ({ content }: ContentMessage): FoundContent => (content as ChangesContent).found!;
let known: Promise<ContentMessage> | undefined;
const changed = (): Promise<ContentMessage> => known ??= messageOf();

inTheOneBrowser();

describe('the pane of changes', () => {
    test.each(looks('changes', [300, 900, 1600]))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const pane = await PanePage.open('changes', { theme, width, height: 900 });
        await pane.say(await messageOf(before, undefined, width));
        await pane.picture(`changes-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        expect(await pane.page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('tells the four layers: what was said, the ceiling, the pieces, boards, hours and money', async () => {
        const found = foundIn(await changed());
        expect(found.said.map(({ what, before: was, after, where, was: isGone }) => [what, was, after, where, isGone ?? false])).toEqual([
            ['room dining › grid › coffers-north', '3', '4', 'quince-lane/dining-room.coffer:17', false],
            ['room library › grid › lines-north', `4' 4 1/8", 8' 9"`, `4' 4 1/8", 8' 11", 13' 9 7/8"`, 'quince-lane/library.coffer:25', false],
        ]);
        expect(found.ceilings.map(({ room: name }) => name)).toEqual(['dining', 'library']);
        const [dining, library] = found.ceilings;
        expect(dining!.changes.map(({ words }) => words.replace(/,.*/, ''))).toContain('line 2 is new');
        // 2 is moved, 3 is new: the first line is as it was
        expect(library!.changes.map(({ words }) => words.split(/[ :]/).slice(0, 2).join(' '))).toEqual(expect.arrayContaining(['line 2', 'line 3']));
        expect(found.pieces.at(-1)!.part).toBe('together');
        expect(found.pieces.at(-1)!.counts.every(count => count > 0)).toBe(true);
        expect(found.numbers.map(({ what }) => what)).toEqual(expect.arrayContaining(['Sides', 'Bottoms', 'Hours', 'Total']));
        expect(found.price.filter(({ strong }) => strong)).toHaveLength(1);
        expect(found.costs).toBe(found.price.find(({ strong }) => strong)!.amount.startsWith('-') ? found.costs : `${found.price.find(({ strong }) => strong)!.amount} more`);
    });

    test('each line leads to its words; a part on the plan to the same, and lights its line up', async () => {
        const pane = await PanePage.open('changes', { width: 900, height: 1400 });
        const shown = await changed(), found = foundIn(shown);
        await pane.say(shown);
        const { page } = pane;
        await page.click('.said tbody tr:first-child [data-at]');
        expect((await pane.sent('select')).at(-1)!.at).toMatchObject({ uri: 'file:///house/quince-lane/dining-room.coffer', range: { start: { line: 16 } } });
        const [first] = found.ceilings[0]!.changes.filter(({ key }) => found.ceilings[0]!.plans.some(({ when, svg }) => when === 'now' && svg.includes(key)));
        await page.locator(`#plan-dining-now [data-key="${first!.key}"]`).first().dispatchEvent('click');
        expect((await pane.sent('select')).at(-1)!.at).toMatchObject({ uri: 'file:///house/quince-lane/dining-room.coffer' });
        await page.hover(`li[data-key="${first!.key}"]`);
        expect(await page.locator(`#plan-dining-now .about[data-key="${first!.key}"]`).count()).toBe(1);
        await page.click('#list');
        await page.click('#lines [data-find="view"]');
        const [find] = await pane.sent('find');
        expect(find).toMatchObject({ kind: 'view' });
        expect(find!.key).toMatch(/^(dining|library)\./);
        await pane.close();
    });

    test('what is there no more leads to the text as it was, by its commit', async () => {
        const pane = await PanePage.open('changes', { width: 900, height: 1400 });
        const more = { ...before, 'quince-lane/dining-room.coffer': before['quince-lane/dining-room.coffer']!.replace('\n  grid {', '\n  fixture lost light at 3\', 3\' diameter 5"\n  grid {') };
        await pane.say(await messageOf(more));
        await pane.page.click('.said [data-was]');
        expect((await pane.sent('select')).at(-1)).toMatchObject({ was: COMMIT, at: { uri: 'file:///house/quince-lane/dining-room.coffer' } });
        expect(await pane.page.textContent('.said tbody tr:has([data-was])')).toMatch(/fixture|light/);
        await pane.close();
    });

    test('the last commit or another one; a chosen one is kept over a reload', async () => {
        const pane = await PanePage.open('changes', { width: 900, height: 900 });
        await pane.say(await changed());
        expect(await pane.page.textContent('#since')).toContain('Since the last commit: 3f2a1c98, 2026-10-03');
        expect(await pane.page.locator('#back-to-last').count()).toBe(0);
        await pane.page.click('#another');
        await pane.say(await messageOf(before, COMMIT));
        expect(await pane.page.textContent('#since')).toContain('Since the commit: 3f2a1c98');
        expect(await pane.kept()).toMatchObject({ own: { against: COMMIT } });
        await pane.page.click('#back-to-last');
        expect((await pane.sent('against')).map(({ to }) => to)).toEqual(['pick', 'last']);
        const message = await changed(), content = message.content as ChangesContent, told = async (isSigned: boolean): Promise<number> => {
            await pane.say({ ...message, content: { ...content, isSigned } as ChangesContent });
            return pane.page.locator('#signed').count();
        };
        // only where a contract names a commit
        expect([await told(false), await told(true)]).toEqual([0, 1]);
        await pane.page.click('#signed');
        expect((await pane.sent('against')).at(-1)!.to).toBe('signed');
        await pane.close();
    });

    test('where nothing changed it says so, and shows no empty table', async () => {
        const pane = await PanePage.open('changes', { width: 900, height: 900 });
        await pane.say(await messageOf(now));
        expect(await pane.page.textContent('#same')).toContain('Nothing changed.');
        expect(await pane.page.locator('table').count()).toBe(0);
        await pane.close();
    });

    test('where there is no earlier state it says why, calmly; while it is read, that', async () => {
        const page = await room(), pane = await PanePage.open('changes', { width: 400, height: 900 });
        const words: Readonly<Record<NoHistory, RegExp>> = {
            'not-asked': /does not read the history/, 'no-git': /no git here/, 'switched-off': /switched off/, 'not-saved': /not been saved/, 'no-repository': /no git repository/,
            'no-commit': /Nothing has been committed/, 'unknown-commit': /no such commit/, 'not-signed': /No contract/, 'too-many': /more job files/, fault: /could not be read/,
        };
        for (const [none, said] of Object.entries(words)) {
            await pane.say(contentMessage('changes', page, { changes: { none: none as NoHistory } }));
            expect(await pane.page.textContent('#none')).toMatch(said);
            expect(await pane.page.locator('.accent, .wrong, [role=alert]').count()).toBe(0);
        }
        const known = await changesSince(before, now, page);
        if ('house' in known) await pane.say(contentMessage('changes', page, { changes: { ...known, isBehind: true, isLooking: true, unread: [{ file: 'yard.coffer', why: 'link' }] } }));
        expect(await pane.page.textContent('#behind')).toMatch(/half written/);
        expect(await pane.page.textContent('#looking')).toMatch(/still being looked for/);
        expect(await pane.page.textContent('.changes')).toContain('yard.coffer: it was a link');
        await pane.say(contentMessage('changes', page, { changes: { working: true } }));
        expect(await pane.page.textContent('#comparing')).toMatch(/being read/);
        expect(await pane.violations()).toEqual([]);
        await pane.close();
    });

    test('a name that looks like markup is a name', async () => {
        const evil = { ...before, 'quince-lane/dining-room.coffer': before['quince-lane/dining-room.coffer']!.replace('room dining "Dining room"', 'room dining "<img src=x onerror=alert(1)>"') };
        const pane = await PanePage.open('changes', { width: 900, height: 900 });
        await pane.say(await messageOf(evil));
        expect(await pane.page.locator('img').count()).toBe(0);
        expect(await pane.page.textContent('.said')).toContain('<img src=x onerror=alert(1)>');
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('is kept as a page to print, as rows and as data; and not at all where nothing is known', async () => {
        const page = await room(), wishes = { changes: await changesSince(before, now, page) };
        expect(changesPage.isThere!(wishes)).toBe(true);
        for (const changes of [{ none: 'no-commit' }, { working: true }] as const) expect(changesPage.isThere!({ changes })).toBe(false);
        const made = async (format: 'html' | 'csv' | 'json') => atOnce(changesPage.exports[format]!(page, undefined, wishes));
        const { name, bytes: html } = await made('html');
        expect(name).toMatch(/^changes-[a-z0-9-]+\.html$/);
        expect(trespasses(String(html)).filter(tag => !/^<(style|meta)/.test(tag))).toEqual([]);
        for (const words of ['Since the last commit:', 'line 2 is new', 'no longer wanted', 'coffers-north']) expect(String(html)).toContain(words);
        const rows = Papa.parse<Record<string, string>>(String((await made('csv')).bytes).replace(/^\ufeff/, ''), { header: true, skipEmptyLines: true }).data;
        const { fresh, gone } = (wishes.changes as ChangesFound).house.pieces, count = (what: string): number => rows.filter(row => row['what'] === what).length;
        expect([count('new'), count('no longer wanted')]).toEqual([fresh.length, gone.length]);
        const json = JSON.parse(String((await made('json')).bytes)) as ChangesJson;
        expect(strictSchema('changes')(json)).toBe(true);
        expect([json.before.commit, json.after.commit, json.houses.length]).toEqual([COMMIT, null, 1]);
        const pane = await PanePage.open('changes', { width: 794, height: 1100 });
        // the pane's policy takes no style sheets but its own
        await pane.page.goto('about:blank');
        await pane.page.setContent(String(html));
        await pane.page.emulateMedia({ media: 'print' });
        // what leads somewhere in the editor is no word on paper
        expect(await pane.page.locator('.ways:visible').count()).toBe(0);
        await pane.page.screenshot({ path: 'out/pictures/panes/changes-printed.png', fullPage: true });
        await pane.page.emulateMedia({ media: null });
        await pane.close();
    });
});
