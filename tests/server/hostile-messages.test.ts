import { afterAll, beforeAll, expect, test } from 'vitest';
import { PANE_KINDS } from '../../src/pages/kinds.ts';
import {
    BUILTIN_DOCUMENT, COLORS, CURSOR, FILES_OF_JOB, HISTORY_CHANGED, PANE_CLOSED, PANE_CONTENT, PANE_EXPORT, PANE_MARK, PANE_SHOWS, PANE_STOP, TRIALS, TRY_ROOM,
    type PaneContentParams, type PaneExportResult,
} from '../../src/server/messages.ts';
import { some } from '../support/full.ts';
import { Client, shipped } from './client.ts';

/** What an extension of another version, or one that went wrong, may send: every message of ours, with everything that it should not hold. */
let client: Client, uri: string;
const contents: PaneContentParams[] = [];
beforeAll(async () => {
    client = await new Client(shipped).initialize();
    client.on<PaneContentParams>(PANE_CONTENT, params => { contents.push(params); });
    uri = await client.open('rooms/den.coffer');
});
afterAll(() => client.dispose());

const LONG = 'x'.repeat(100_000);
const ADDRESSES: readonly unknown[] = [undefined, null, 5, '', 'x', '%zz', 'file:///a\ud800', 'file://', 'builtin:///builtin.coffer', `file:///${LONG}`, 'https://example.com/a.coffer', {}, [], '__proto__'];
const WORDS: readonly unknown[] = [undefined, null, 5, '', '__proto__', 'constructor', 'toString', '\ud800', LONG, {}, [], ['plan']];
const NUMBERS: readonly unknown[] = [undefined, null, -1, 0.5, 1e308, Number.MAX_SAFE_INTEGER, '5', {}, []];
const PARAMS: readonly unknown[] = [undefined, null, [], {}, [null], [5]];

/** Each of the values in the place of one that is right. */
function spoiled(good: Readonly<Record<string, unknown>>, by: Readonly<Record<string, readonly unknown[]>>): readonly unknown[] {
    return [...PARAMS, ...Object.entries(by).flatMap(([name, values]) => values.map(value => ({ ...good, [name]: value })))];
}
const AT = { line: 8, character: 4 };
const positions = NUMBERS.flatMap(value => [{ line: value, character: 4 }, { line: 8, character: value }]);
const notifications = (kind: string): readonly (readonly [string, readonly unknown[]])[] => [
    [PANE_SHOWS, spoiled({ pane: kind, kind, pinned: false }, { pane: WORDS, kind: WORDS, pinned: WORDS, room: [...WORDS, ...ADDRESSES.map(each => ({ uri: each, room: 'den' })), ...WORDS.map(room => ({ uri, room }))], width: NUMBERS, height: NUMBERS, against: WORDS })],
    [CURSOR, spoiled({ uri, position: AT }, { uri: ADDRESSES, position: [...PARAMS, ...positions] })],
    [PANE_STOP, spoiled({ pane: kind }, { pane: WORDS })],
    [COLORS, spoiled({ colors: 'light' }, { colors: WORDS })],
    [HISTORY_CHANGED, PARAMS],
];
const requests = (kind: string): readonly (readonly [string, readonly unknown[]])[] => [
    [PANE_MARK, spoiled({ pane: kind, as: 'cut', key: 'x' }, { pane: WORDS, as: WORDS, key: WORDS })],
    [PANE_EXPORT, spoiled({ pane: kind, format: 'html', state: null }, { pane: WORDS, format: WORDS, state: [...WORDS, { ticks: LONG }, { ticks: [{}] }, { sort: '__proto__', by: '__proto__', group: 5, filter: {} }] })],
    [BUILTIN_DOCUMENT, spoiled({ uri }, { uri: ADDRESSES })],
    [FILES_OF_JOB, spoiled({ uri }, { uri: ADDRESSES })],
    [TRY_ROOM, spoiled({ uri, room: 'den' }, { uri: ADDRESSES, room: WORDS })],
    [TRIALS, PARAMS],
];

const raw = (method: string, params: unknown): Promise<unknown> =>
    client.request(method, params as object).then(answer => ({ answer }), (error: { message: string }) => ({ failed: error.message }));

test.each(some(PANE_KINDS, 3))('whatever the extension says for a %s pane, the server answers, and shows the next thing that it can', async kind => {
    const show = (): Promise<void> => client.notify(PANE_SHOWS, { pane: kind, kind, pinned: false, width: 400, height: 400 });
    const shown = async (): Promise<PaneContentParams> => {
        const before = contents.length;
        await show();
        await expect.poll(() => contents.slice(before).some(({ pane, condition }) => pane === kind && condition === 'current'), { interval: 20 }).toBe(true);
        return contents.slice(before).find(({ pane }) => pane === kind)!;
    };
    await client.notify(CURSOR, { uri, position: AT });
    expect((await shown()).shown).toMatchObject({ uri, room: 'den' });
    for (const [method, all] of notifications(kind)) {
        for (const params of all) await client.notify(method, params as object);
        // an address that is none takes the picture from no pane
        expect((await shown()).shown, method).toMatchObject({ uri, room: 'den' });
    }
    await client.notify(CURSOR, { uri, position: AT });
    for (const [method, all] of requests(kind)) {
        for (const params of all) {
            const said = await raw(method, params);
            // a word that says what is wrong, or nothing: never something that was not asked for
            if (method === PANE_MARK) expect(said).toEqual({ answer: null });
            if (method === PANE_EXPORT || method === TRIALS || method === BUILTIN_DOCUMENT) expect(said, JSON.stringify(params)?.slice(0, 200)).toHaveProperty('answer');
            if (method === PANE_EXPORT && (params as { format?: unknown } | null)?.format !== 'html') expect(said).toEqual({ answer: null });
        }
    }
    const made = await client.request<PaneExportResult>(PANE_EXPORT, { pane: kind, format: 'html', state: null });
    expect(kind === 'changes' ? 1 : made?.name.length).toBeGreaterThan(0);
    for (const params of spoiled({ pane: kind }, { pane: WORDS })) await client.notify(PANE_CLOSED, params as object);
    expect((await shown()).shown).toMatchObject({ uri, room: 'den' });
    await client.notify(PANE_CLOSED, { pane: kind });
});
