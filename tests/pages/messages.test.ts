import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PANE_KINDS, isPaneKind } from '../../src/pages/kinds.ts';
import { readFromPane, readToPane, VERSION, versioned, type FromPane, type ToPane } from '../../src/panes/messages.ts';

const at = { uri: 'file:///a.coffer', range: { start: { line: 1, character: 2 }, end: { line: 1, character: 5 } } };
const room = { uri: at.uri, room: 'den', title: 'Den' };
const toPane: readonly ToPane[] = [
    { type: 'content', kind: 'plan', shown: room, rooms: [room], condition: 'current', content: { sources: [at] } },
    { type: 'content', kind: 'cut-list', shown: null, rooms: [], condition: 'nothing', problem: { message: 'It is 5" wide.', at } },
    { type: 'selection', keys: ['den.side-B-3'], reveal: true }, { type: 'picked', key: 'den.side-B-3' }, { type: 'ticks', keys: [] }, { type: 'following', pinned: true }, { type: 'plain', words: 'Saved.' },
];
const fromPane: readonly FromPane[] = [
    { type: 'ready' }, { type: 'size', width: 300, height: 500 }, { type: 'select', at }, { type: 'choose', uri: at.uri, room: 'den' }, { type: 'pin', pinned: false },
    { type: 'find', kind: 'plan', key: 'den.side-B-3' }, { type: 'pick', key: 'den.side-B-3' }, { type: 'tick', add: ['x'], remove: ['y', 'z'] }, { type: 'export', format: 'csv', state: { sort: 'length' } },
    { type: 'export', format: 'svg', state: null, file: { name: 'view.svg', base64: '' } },
];
const overTheWire = (message: unknown): unknown => JSON.parse(JSON.stringify(message));

describe('messages of panes', () => {
    test.each(toPane)('arrive as they were sent: $type', message => {
        expect(readToPane(overTheWire(versioned(message)))).toEqual({ ...message, version: VERSION });
    });
    test.each(fromPane)('and come back: $type', message => {
        expect(readFromPane(overTheWire(versioned(message)))).toEqual({ ...message, version: VERSION });
    });

    test('of another version are not taken, whatever they hold', () => {
        for (const message of [...toPane, ...fromPane]) {
            for (const version of [0, 2, '1', undefined]) {
                expect(readToPane({ ...message, version })).toEqual({ type: 'not-taken', version });
                expect(readFromPane({ ...message, version })).toEqual({ type: 'not-taken', version });
            }
        }
    });

    test('without a part, or with one of the wrong kind, are not taken', () => {
        const check = (message: object, read: (data: unknown) => { type: string }) => {
            for (const name of Object.keys(message).filter(key => !['state', 'problem', 'content', 'file'].includes(key))) {
                const { [name]: _, ...without } = { ...message, version: VERSION } as Record<string, unknown>;
                expect(read(without), `without ${name}`).toMatchObject({ type: 'not-taken' });
                expect(read({ ...message, version: VERSION, [name]: { odd: [] } }), `odd ${name}`).toMatchObject({ type: 'not-taken' });
            }
        };
        toPane.forEach(message => check(message, readToPane));
        fromPane.forEach(message => check(message, readFromPane));
    });

    test('with a file whose name leads elsewhere, or that holds no bytes, are not taken', () => {
        const sent = (file: object): string => readFromPane(versioned({ type: 'export', format: 'svg', state: null, file: { name: 'view.svg', base64: 'AAAA', ...file } })).type;
        expect(sent({})).toBe('export');
        for (const name of ['', '.', '..', '../view.svg', '/etc/view.svg', 'C:\\view.svg', 'a\u0000.svg', 'a\nb.svg']) expect(sent({ name }), name).toBe('not-taken');
        for (const base64 of ['A', '!!!!', 'AAAA ', 'A===', '=AAA', 'data:,x', 'ÄÄÄÄ']) expect(sent({ base64 }), base64).toBe('not-taken');
    });

    test('never throw, whatever comes', () => {
        fc.assert(fc.property(fc.anything(), data => {
            expect(readToPane(data).type).toBe('not-taken');
            expect(readFromPane(data).type).toBe('not-taken');
        }), { seed: 4 });
        expect(readToPane({ version: VERSION, type: 'toString' }).type).toBe('not-taken');
    });

    test('know every kind of pane', () => {
        for (const kind of PANE_KINDS) {
            expect(isPaneKind(kind)).toBe(true);
            expect(readFromPane(versioned({ type: 'find', kind, key: 'x' })).type).toBe('find');
        }
        expect(isPaneKind('constructor')).toBe(false);
    });
});
