import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { PlanContent } from '../../src/pages/plan/content.ts';
import { CURSOR, PANE_CLOSED, PANE_CONTENT, PANE_EXPORT, PANE_SELECTION, PANE_SHOWS, type PaneContentParams, type PaneExportResult, type PaneSelectionParams, type PaneShowsParams } from '../../src/server/messages.ts';
import { bundledServer, Client } from './client.ts';

/** What the server sends to panes, over the wire; this end plays the extension. */
let client: Client;
const contents: PaneContentParams[] = [];
const selections: PaneSelectionParams[] = [];
const waiting = new Set<() => void>();

beforeAll(async () => {
    client = await new Client(await bundledServer()).initialize();
    client.on<PaneContentParams>(PANE_CONTENT, params => { contents.push(params); waiting.forEach(look => look()); });
    client.on<PaneSelectionParams>(PANE_SELECTION, params => { selections.push(params); waiting.forEach(look => look()); });
});
afterAll(() => client.dispose());
beforeEach(() => { contents.length = selections.length = 0; });

/** The test's own time limit ends a wait in vain. */
function until<T>(find: () => T | undefined): Promise<T> {
    return new Promise(resolve => {
        const look = (): void => {
            const found = find();
            if (found === undefined) return;
            waiting.delete(look);
            resolve(found);
        };
        waiting.add(look);
        look();
    });
}
const show = (pane: string, wishes: Partial<PaneShowsParams> = {}): Promise<void> => client.notify(PANE_SHOWS, { pane, kind: 'plan', pinned: false, ...wishes });
const cursor = (uri: string, words: string): Promise<void> => {
    const before = client.text(uri).slice(0, client.text(uri).indexOf(words)).split('\n');
    return client.notify(CURSOR, { uri, position: { line: before.length - 1, character: before.at(-1)!.length } });
};
const coffers = ({ content }: PaneContentParams): number | undefined => content && (content as PlanContent).svg.match(/data-key="coffer\./g)?.length;
/** Whatever was asked before is answered, and the panes have been looked at since. */
async function settled(): Promise<void> {
    const before = contents.length;
    await show(`settled-${Math.random()}`);
    await until(() => contents.slice(before).find(({ pane }) => pane.startsWith('settled-')));
    for (const { pane } of contents.filter(each => each.pane.startsWith('settled-'))) await client.notify(PANE_CLOSED, { pane });
}

describe('panes', () => {
    test('get the room of the cursor, with the rooms of its job', async () => {
        const uri = await client.open('rooms/den.coffer');
        await cursor(uri, 'grid');
        await show('a');
        const first = await until(() => contents.find(({ pane }) => pane === 'a'));
        expect(first).toMatchObject({ kind: 'plan', shown: { uri, room: 'den', title: 'Den' }, rooms: [{ uri, room: 'den', title: 'Den' }], condition: 'current' });
        expect(coffers(first)).toBe(9);
    });

    test('a detail\'s rooms are those that use it; a file of another job takes no picture away', async () => {
        const uri = await client.open('details/beam.coffer');
        await cursor(uri, 'sides {');
        const selection = await until(() => selections.find(({ keys }) => keys.some(key => key.startsWith('den.side-'))));
        expect(selection.keys.length).toBeGreaterThan(10);
        expect(selection.keys.every(key => key.startsWith('den.side-'))).toBe(true);
        const lonely = await client.open('untitled:lonely.coffer', 'edition 1\n');
        await cursor(lonely, 'edition');
        await settled();
        expect(contents.filter(({ pane }) => pane === 'a' && pane).every(({ condition, shown }) => condition === 'current' && shown?.room === 'den')).toBe(true);
        await cursor(client.uri('rooms/den.coffer'), 'grid');
    });

    test('get new content when the room has changed, and none when it has not', async () => {
        const uri = client.uri('rooms/den.coffer');
        await settled();
        contents.length = 0;
        await client.replace(uri, 'coffers-east   3', 'coffers-east   2');
        expect(coffers(await until(() => contents.find(({ pane }) => pane === 'a')))).toBe(6);
        await settled();
        contents.length = 0;
        // a remark behind the last line moves nothing
        await client.change(uri, `${client.text(uri)}// looked at twice\n`);
        await settled();
        expect(contents.filter(({ pane }) => pane === 'a')).toEqual([]);
        await client.replace(uri, 'coffers-east   2', 'coffers-east   3');
        expect(coffers(await until(() => contents.find(({ pane }) => pane === 'a')))).toBe(9);
    });

    test('keep the last good picture while the text is broken, and are told the first error', async () => {
        const uri = client.uri('rooms/den.coffer'), whole = client.text(uri);
        await settled();
        contents.length = 0;
        await client.replace(uri, 'coffers-north  3', 'coffers-north');
        const broken = await until(() => contents.find(({ pane }) => pane === 'a'));
        expect(broken).toMatchObject({ condition: 'broken', shown: { room: 'den' }, problem: { at: { uri } } });
        expect(broken.content).toBeUndefined();
        expect(broken.problem!.message.length).toBeGreaterThan(5);
        await client.change(uri, whole);
        expect(await until(() => contents.find(({ pane, condition }) => pane === 'a' && condition === 'current'))).toBeDefined();
    });

    test('a mistake in a detail stops the picture too, and is named where it is', async () => {
        const beam = client.uri('details/beam.coffer'), whole = client.text(beam);
        await settled();
        contents.length = 0;
        await client.replace(beam, 'profile beam(', 'profile beem(');
        const broken = await until(() => contents.find(({ pane, condition }) => pane === 'a' && condition === 'broken'));
        expect(broken.problem).toBeDefined();
        await client.change(beam, whole);
        await until(() => contents.find(({ pane, condition }) => pane === 'a' && condition === 'current'));
    });

    test('are laid out for their size', async () => {
        await show('a', { width: 320, height: 480 });
        const narrow = await until(() => contents.find(({ pane }) => pane === 'a'));
        contents.length = 0;
        await show('a', { width: 1200, height: 800 });
        const wide = await until(() => contents.find(({ pane }) => pane === 'a'));
        expect((wide.content as PlanContent).ground.width).toBeGreaterThan((narrow.content as PlanContent).ground.width * 2);
    });

    test('pinned ones stay when the cursor goes to another room, the others follow', async () => {
        const den = client.uri('rooms/den.coffer');
        const other = await client.open('untitled:attic.coffer', client.text(den).replace('room den "Den"', 'room attic "Attic"').replace('"../details/beam.coffer"', `"${client.uri('details/beam.coffer')}"`));
        await show('pinned', { pinned: true, room: { uri: den, room: 'den' } });
        await until(() => contents.find(({ pane }) => pane === 'pinned'));
        contents.length = 0;
        await cursor(other, 'grid');
        expect(await until(() => contents.find(({ pane }) => pane === 'a'))).toMatchObject({ shown: { uri: other, room: 'attic' } });
        expect(contents.filter(({ pane }) => pane === 'pinned')).toEqual([]);
        await cursor(den, 'grid');
        await until(() => contents.find(({ pane, shown }) => pane === 'a' && shown?.room === 'den'));
        await client.notify(PANE_CLOSED, { pane: 'pinned' });
    });

    test('light what a property of the grid sets', async () => {
        const uri = client.uri('rooms/den.coffer');
        const litAt = async (words: string): Promise<readonly string[]> => {
            selections.length = 0;
            await cursor(uri, words);
            return (await until(() => selections.find(({ pane }) => pane === 'a'))).keys;
        };
        await cursor(uri, 'edition');
        await settled();
        const north = await litAt('coffers-north');
        expect(north).toEqual(expect.arrayContaining(['line.1', 'line.2', 'coffer.1', 'coffer.9', 'dimensions.across.parts']));
        expect(north).not.toContain('line.A');
        expect(await litAt('coffers-east')).toEqual(expect.arrayContaining(['line.A', 'line.B', 'dimensions.down.parts']));
        const beams = await litAt('beams          beam');
        expect(beams).toEqual(expect.arrayContaining(['line.1', 'line.A']));
        expect(beams).not.toContain('line.B');
        const through = await litAt('through');
        expect(through).toEqual(expect.arrayContaining(['line.1', 'line.2']));
        expect(through.filter(key => key.startsWith('den.')).every(key => key.startsWith('den.bottom-'))).toBe(true);
        expect(await litAt('grid')).toEqual(expect.arrayContaining(['line.1', 'line.B', 'coffer.5']));
    });

    test('show the room that is chosen by hand though the cursor stands in another, until it goes to one; whole houses by their own name', async () => {
        const den = client.uri('rooms/den.coffer'), text = client.text(den);
        await client.change(den, `${text}room nook "Nook" { wall north 8'; wall east 8'; grid { coffers-north 2; coffers-east 2; beams beam; through north-south } }\n`);
        await cursor(den, 'coffers-north');
        await until(() => contents.find(({ pane, rooms }) => pane === 'a' && rooms.some(({ room }) => room === 'nook')));
        contents.length = 0;
        await show('a', { room: { uri: den, room: 'nook' } });
        await until(() => contents.find(({ pane, shown }) => pane === 'a' && shown?.room === 'nook'));
        await settled();
        expect(contents.filter(({ pane }) => pane === 'a').at(-1)!.shown!.room).toBe('nook');
        await show('house', { kind: 'estimate' });
        const house = await until(() => contents.find(({ pane }) => pane === 'house'));
        expect([house.shown!.title, ...house.rooms.map(({ title }) => title)]).toEqual(['Weir Cottage', 'Weir Cottage']);
        await client.notify(PANE_CLOSED, { pane: 'house' });
        await cursor(den, 'room nook');
        await settled();
        await cursor(den, 'coffers-north');
        await until(() => contents.find(({ pane, shown }) => pane === 'a' && shown?.room === 'den'));
        await client.change(den, text);
        await settled();
    });

    test('are kept as files, by what the server makes', async () => {
        const made = async (format: string): Promise<string> => {
            const result = await client.request<PaneExportResult>(PANE_EXPORT, { pane: 'a', format, state: null });
            return result && 'text' in result ? `${result.name}: ${result.text.slice(0, 15)}` : 'nothing';
        };
        expect(await made('html')).toBe('plan-den.html: <!doctype html>');
        expect(await made('svg')).toMatch(/^plan-den\.svg: <svg xmlns=/);
        expect(await made('csv')).toMatch(/^plan-den\.csv: piece,part/);
        expect(await made('tar')).toBe('nothing');
    });

    test('closed ones get nothing any more', async () => {
        await settled();
        contents.length = 0;
        await client.notify(PANE_CLOSED, { pane: 'a' });
        const uri = client.uri('rooms/den.coffer');
        await client.replace(uri, 'coffers-east   3', 'coffers-east   2');
        await settled();
        expect(contents.filter(({ pane }) => pane === 'a')).toEqual([]);
        expect(await client.request<PaneExportResult>(PANE_EXPORT, { pane: 'a', format: 'csv', state: null })).toBeNull();
    });

    test('wishes that make no sense do no harm', async () => {
        for (const params of [{}, { pane: 3 }, { pane: 'odd', kind: 'hologram', pinned: true, room: { uri: 'nowhere', room: '' } }, { pane: 'odd', kind: 'constructor', pinned: false, width: -1, height: Infinity }]) await client.notify(PANE_SHOWS, params);
        await client.notify(CURSOR, { uri: 'nowhere', position: { line: -1, character: 1e9 } });
        await settled();
        expect(contents.some(({ pane }) => pane.startsWith('settled-'))).toBe(true);
    });
});
