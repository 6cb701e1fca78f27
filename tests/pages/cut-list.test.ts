import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tapeOf } from '../../src/job/tape.ts';
import { cutListContent, type CutListContent, type ListedPiece } from '../../src/pages/cut-list/content.ts';
import { cutListPage } from '../../src/pages/cut-list/page.ts';
import { filesBeside } from '../../src/pages/shared/files-beside.ts';
import { CHUNK, listOf, renderCutList } from '../../src/pages/cut-list/render.ts';
import { COLUMNS } from '../../src/pages/cut-list/columns.ts';
import { GROUPINGS } from '../../src/pages/cut-list/groupings.ts';
import { CUT_LIST_STATE, type CutListState } from '../../src/pages/cut-list/rows.ts';
import { Ticked, tickChange, tickKey } from '../../src/pages/cut-list/ticks.ts';
import { totalsOf } from '../../src/pages/cut-list/totals.ts';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { whyText } from '../../src/provenance/why-text.ts';
import { folderWith } from '../cli/folder.ts';
import { cofferwright } from '../cli/world.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { HOSTILE, trespasses } from './hostile.ts';
import { parlor, type ParlorWords } from './parlor.ts';
import { runs, some } from '../support/full.ts';
import { atOnce } from '../../src/plain/steps.ts';

const room = async (words: ParlorWords = {}, change = (text: string) => text): Promise<RoomOnPage> => roomOnPage(await serve({ 'parlor.coffer': change(parlor(words)) }), 'parlor.coffer');
const NONE: ReadonlySet<string> = new Set();
const state = (over: Partial<CutListState> = {}): CutListState => ({ ...CUT_LIST_STATE, ...over });
const markup = (content: CutListContent, over: Partial<CutListState> = {}, ticks = NONE): string =>
    renderCutList(content, state(over), listOf(content, state(over), ticks)).text;
const keyOf = ({ cuts }: CutListContent, piece: ListedPiece): string => tickKey(piece, cuts[piece.cut]!);
const idsIn = (content: CutListContent, over: Partial<CutListState> = {}, ticks = NONE): string[] =>
    listOf(content, state(over), ticks).groups.flatMap(({ entries }) => entries.flatMap(({ pieces }) => pieces.map(({ id }) => id)));

describe('the content of the cut list', () => {
    test('holds every piece with its cut, its why and the words it comes from', async () => {
        const workspace = await serve({ 'parlor.coffer': parlor() });
        const page = roomOnPage(workspace, 'parlor.coffer');
        const { pieces, cuts, whys, sources } = cutListContent(page);
        expect(pieces.map(({ id }) => id).sort()).toEqual(page.takeOff.pieces.map(({ id }) => id).sort());
        for (const piece of page.takeOff.pieces) {
            const listed = pieces.find(({ id }) => id === piece.id)!, cut = cuts[listed.cut]!;
            expect([cut.back, cut.face, cut.part, cut.stock, cut.hand]).toEqual([piece.cutBack, piece.cutFace, piece.part, piece.stock.name, piece.hand]);
            expect(whys[listed.why]!.map(({ text }) => text).join('')).toBe(whyText(piece.why, piece.cutBack, tapeOf(page.ceiling.room.job)));
            expect(sources[listed.at]).toEqual(piece.source);
        }
        const side = pieces.find(({ id }) => id === 'parlor.side-B-2-north')!;
        const coffer = whys[side.why]!.find(({ text }) => text.startsWith('coffer'))!;
        expect(workspace.words(sources[coffer.at!]!)).toBe('3');
    });

    test('says what pieces share once, and nothing of the machine in its markup', async () => {
        const content = cutListContent(await room());
        expect(content.cuts.length).toBeLessThan(content.pieces.length / 4);
        expect(new Set(content.cuts.map(({ print }) => print)).size).toBe(content.cuts.length);
        expect(markup(content)).not.toMatch(/file:|parlor\.coffer/);
        expect(JSON.parse(JSON.stringify(content))).toEqual(content);
    });
});

describe('rows', () => {
    test('whatever is sorted and grouped, every piece stands there once', async () => {
        const content = cutListContent(await room());
        const all = content.pieces.map(({ id }) => id).sort();
        for (const group of GROUPINGS) for (const together of [true, false]) expect(idsIn(content, { group, together }).sort()).toEqual(all);
        fc.assert(fc.property(fc.constantFrom(...COLUMNS), fc.boolean(), fc.boolean(), (sort, descending, together) => {
            const { groups } = listOf(content, state({ group: 'none', sort, descending, together }), NONE);
            const entries = groups[0]!.entries;
            expect(entries.reduce((sum, { pieces }) => sum + pieces.length, 0)).toBe(all.length);
            if (sort === 'length') for (let i = 1; i < entries.length; i++) expect(descending ? entries[i - 1]!.cut.back >= entries[i]!.cut.back : entries[i - 1]!.cut.back <= entries[i]!.cut.back).toBe(true);
        }), { seed: 20251125, numRuns: runs(60) });
    });

    test('a set-up is one setting of the stop, the hands apart', async () => {
        const content = cutListContent(await room());
        const { groups } = listOf(content, state({ group: 'set-up' }), NONE);
        for (const { entries } of groups) expect(new Set(entries.map(({ cut }) => `${cut.back} ${cut.hand ?? cut.ends}`)).size).toBe(1);
        expect(new Set(groups.map(({ title }) => title)).size).toBe(groups.length);
        // 13' 2" less the band and two beams of 7" is 142 1/2", a third of it 47 1/2", with the mitered end 48 1/4"
        expect(groups.map(({ title }) => title)).toEqual(expect.arrayContaining(['Stop at 48 1/4", left hand', 'Stop at 48 1/4", right hand', 'Stop at 49", miter 45 both ends']));
        const stops = groups.map(({ entries }) => entries[0]!.cut.back);
        expect(stops).toEqual([...stops].sort((a, b) => b - a));
    });

    test('groups come in the order of the trade: lines 1, 2, A, B, then what belongs to none', async () => {
        const titles = (group: CutListState['group'], content: CutListContent) => listOf(content, state({ group }), NONE).groups.map(({ title }) => title);
        const content = cutListContent(await room());
        expect(titles('line', content)).toEqual(['Line 1', 'Line 2', 'Line A', 'Line B', 'Band']);
        expect(titles('part', content)).toEqual(['Blocking', 'Spacer', 'Side', 'Cleat', 'Bottom', 'Band']);
        expect(titles('stock', content)).toEqual(['board-1x6', 'board-1x8', 'strip-1x2']);
        expect(titles('none', content)).toEqual(['']);
    });

    test('what is looked for stands in every row that is left', async () => {
        const content = cutListContent(await room());
        expect(idsIn(content, { find: 'bottom B' }).every(id => id.startsWith('parlor.bottom-'))).toBe(true);
        expect(idsIn(content, { find: 'Line b SIDE' }).sort()).toEqual(content.pieces.filter(({ id, line }) => line === 'B' && id.includes('.side-')).map(({ id }) => id).sort());
        expect(idsIn(content, { find: '48 1/4"' }).length).toBeGreaterThan(3);
        expect(idsIn(content, { find: '.*' })).toEqual([]);
        expect(markup(content, { find: 'no such piece' })).toContain('Nothing in the list has all of these words.');
    });

    test('of a long list only some chunks are in the page, and it says how many rows there are', async () => {
        const content = cutListContent(await room({}, text => text.replaceAll('13\' 2"', '90\'').replaceAll('11\'', '80\'').replace('coffers-north 3', 'coffers-north 15').replace('coffers-east 3', 'coffers-east 14')));
        const wanted = state({ together: false, group: 'none' }), list = listOf(content, wanted, NONE);
        expect(list.rows.length).toBeGreaterThan(2000);
        const { text } = renderCutList(content, wanted, list, { from: 3, to: 4 });
        expect([...text.matchAll(/id="chunk-(\d+)"/g)].map(([, n]) => Number(n))).toEqual([3, 4]);
        expect(text).toContain(`aria-rowcount="${list.rows.length + 1}"`);
        expect([...text.matchAll(/<tr[^>]* aria-rowindex="(\d+)"/g)].map(([, n]) => Number(n)).slice(1, 4)).toEqual([3 * CHUNK + 2, 3 * CHUNK + 3, 3 * CHUNK + 4]);
        // a span from before the list became shorter
        expect(renderCutList(content, wanted, list, { from: 900, to: 999 }).text).toContain(`id="chunk-${Math.ceil(list.rows.length / CHUNK) - 1}"`);
    });
});

describe('ticks', () => {
    test('go with the piece and with how it was cut', async () => {
        const before = cutListContent(await room());
        const side = before.pieces.find(({ id }) => id === 'parlor.side-1-2-east')!, band = before.pieces.find(({ id }) => id === 'parlor.band-north')!;
        const ticks = new Set([keyOf(before, side), keyOf(before, band)]);
        const ticked = new Ticked(ticks);
        expect(before.pieces.filter(piece => ticked.conditionOf(piece, before.cuts[piece.cut]!) === 'cut').map(({ id }) => id).sort()).toEqual(['parlor.band-north', 'parlor.side-1-2-east']);

        // a finer groove is another cut of the side; the band stays what it was
        const after = cutListContent(await room({}, text => text.replace('rabbet 1/4"', 'rabbet 1/8"')));
        const now = (content: CutListContent, id: string) => {
            const piece = content.pieces.find(each => each.id === id)!;
            return new Ticked(ticks).conditionOf(piece, content.cuts[piece.cut]!);
        };
        expect([now(after, 'parlor.side-1-2-east'), now(after, 'parlor.band-north'), now(after, 'parlor.side-1-2-west')]).toEqual(['changed', 'cut', 'to cut']);
        expect(markup(after, { find: 'side-1-2-east' }, ticks)).toContain('changed since cut');

        // a longer room: what it was cut at is told
        const longer = cutListContent(await room({}, text => text.replaceAll('wall east 11\'', 'wall east 11\' 3"').replaceAll('wall west 11\'', 'wall west 11\' 3"')));
        const told = markup(longer, { find: 'side-1-2-east' }, ticks).replaceAll(/<[^>]*>/g, '').replaceAll('&quot;', '"').replaceAll('&#39;', "'").replaceAll('\u2044', '/');
        expect(told).toContain(`changed since cut: it was ${before.cuts[side.cut]!.length}`);

        // the same lengths shown in millimeters, or the same words elsewhere in the text, change nothing
        for (const other of [await room({ job: 'show millimeters' }), await room({}, text => text.replace('edition 1\n', 'edition 1\n\n// moved\n\n'))]) {
            expect(now(cutListContent(other), 'parlor.side-1-2-east')).toBe('cut');
        }
    });

    test('are told to their keeper as one change, which forgets what the piece was cut at before', async () => {
        const content = cutListContent(await room());
        const [a, b] = content.pieces.slice(0, 2) as [ListedPiece, ListedPiece];
        const both = [a, b].map(piece => ({ piece, cut: content.cuts[piece.cut]! }));
        const old = `${a.id}#1.1.zz`, kept = `${b.id}#${content.cuts[b.cut]!.print}`;
        const ticked = new Ticked(new Set([old, kept, 'parlor.gone-1#5.5.a']));
        expect(tickChange(both, true, ticked)).toEqual({ add: both.map(({ piece, cut }) => tickKey(piece, cut)), remove: [old] });
        expect(tickChange(both, false, ticked)).toEqual({ add: [], remove: [old, kept] });
        expect(ticked.gone(content.pieces)).toEqual(['parlor.gone-1']);
    });

    test('leave a row open until all its pieces are cut, and count in the totals', async () => {
        const content = cutListContent(await room());
        const spacers = content.pieces.filter(({ id }) => id.includes('.spacer-'));
        const some = new Set(spacers.slice(0, 3).map(piece => keyOf(content, piece))), all = new Set(spacers.map(piece => keyOf(content, piece)));
        expect(markup(content, { find: 'spacer' }, some)).toMatch(/data-act="tick"[^>]* data-some/);
        expect(markup(content, { find: 'spacer' }, all)).toMatch(/data-act="tick"[^>]* checked/);
        expect(idsIn(content, { onlyOpen: true }, all).some(id => id.includes('.spacer-'))).toBe(false);
        const totals = totalsOf(content, new Ticked(some));
        expect(totals.find(({ part }) => part === 'spacer')).toMatchObject({ stock: 'board-1x6', pieces: spacers.length, cut: 3 });
        expect(totals.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(content.pieces.length);
    });
});

describe('the cut list as markup and as files', () => {
    const titled = (name: string) => (text: string): string => text.replaceAll('"Copper Street 8"', JSON.stringify(name.replace(/["\\]/g, '')));
    test.each(some(HOSTILE, 3))('shows a name as text: %s', async name => {
        const page = await room({ title: name.replace(/["\\]/g, '') }, titled(name));
        const content = cutListContent(page);
        const open = Object.fromEntries(listOf(content, state(), NONE).groups.flatMap(({ entries }) => entries.map(({ key }) => [key, true] as const)));
        expect(trespasses(markup(content, { open, find: '' }, new Set([`${name}#1.1.a`])))).toEqual([]);
        expect(trespasses(markup(content, { find: name }))).toEqual([]);
        for (const make of Object.values(cutListPage.exports)) {
            const { bytes, name: file } = await atOnce(make(page, { find: name, ticks: [name, 7], group: name, sort: {} }));
            expect(file).toMatch(/^cut-list-parlor\.\w+$/);
            if (file.endsWith('.html')) expect(trespasses(String(bytes))).toEqual([]);
        }
    });

    test('on paper every piece has its box and every length its why, whatever was open', async () => {
        const page = await room(), content = cutListContent(page);
        const ticks = content.pieces.slice(0, 5).map(piece => keyOf(content, piece));
        const paper = String((await atOnce(cutListPage.exports.html!(page, { ...CUT_LIST_STATE, ticks }))).bytes);
        expect([...paper.matchAll(/☐|☑/g)]).toHaveLength(content.pieces.length);
        expect([...paper.matchAll(/☑/g)]).toHaveLength(5);
        for (const { mark } of content.pieces) expect(paper).toContain(mark);
        expect(paper).not.toMatch(/<button|<input|file:/);
        expect(paper).toMatch(/<thead>/);
    });

    test('the CSV is the one that the command line prints', async () => {
        const text = parlor();
        const { out } = await cofferwright(folderWith({ 'parlor.coffer': text }), ['cut-list', '--format', 'csv', 'parlor.coffer']);
        const csv = String((await atOnce(cutListPage.exports.csv!(await room(), CUT_LIST_STATE))).bytes);
        expect(csv).toBe(out);
        expect(csv.split('\r\n').length).toBeGreaterThan(100);
    });

    test('of a room without a beam is the band alone', async () => {
        const content = cutListContent(await room({}, text => text.replace('coffers-north 3', 'coffers-north 1').replace('coffers-east 3', 'coffers-east 1').replace('  line B { beams clear-box }\n', '')));
        expect(content.pieces.map(({ mark }) => mark)).toEqual(['band-east', 'band-north', 'band-south', 'band-west']);
        expect(markup({ ...content, pieces: [] })).toContain('This room has no pieces yet.');
    });

    test('files are named by their way from the room\'s own', () => {
        const { nameOf } = filesBeside('file:///home/k/jobs/mill%20row/den.coffer');
        expect(['file:///home/k/jobs/mill%20row/den.coffer', 'file:///home/k/jobs/mill%20row/beams/box.coffer', 'file:///home/k/jobs/yard.coffer', 'file:///srv/box.coffer'].map(nameOf))
            .toEqual(['den.coffer', 'beams/box.coffer', '../yard.coffer', '../../../../srv/box.coffer']);
    });
});
