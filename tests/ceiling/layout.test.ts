import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Layout } from '../../src/ceiling/model.ts';
import type { Room } from '../../src/job/model.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder, ticksOf, type ProfileWords, type RoomWords } from '../support/job-builder.ts';
import { randomRooms } from '../support/random-rooms.ts';
import { runs } from '../support/full.ts';

const { stock, profile, at, said } = jobBuilder('file:///details/beams.coffer');
const board = (width: string, thickness = '3/4"') => stock(`board-${width}-${thickness}`, { thickness, width, lengths: ["16'"] });
const beam = (words: ProfileWords = {}) => profile('other-box', {
    blocking: { stock: board('5 1/2"') }, sides: { stock: board('7 1/4"'), rabbet: ['1/4"', '1/4"'] }, bottom: { stock: board('5 1/2"') }, ...words,
});
const laid = (words: RoomWords = {}, beamWords: ProfileWords = {}): Layout => layOut(exampleRoom(words, beamWords));
const kinds = (layout: Layout): string[] => layout.troubles.map(trouble => trouble.kind);

describe('the room', () => {
    test('opposite walls must be equal: both pairs are told, at the second wall', () => {
        const layout = laid({ walls: { north: `18' 4"`, south: `18' 4 1/4"`, east: `15' 2"`, west: `15'` } });
        expect(layout.ceiling).toBeUndefined();
        expect(layout.troubles).toMatchObject([
            { kind: 'not-rectangular', walls: ['north', 'south'], a: ticksOf(`18' 4"`), b: ticksOf(`18' 4 1/4"`), at: layout.room.walls[2]!.length!.at, other: layout.room.walls[0]!.length!.at },
            { kind: 'not-rectangular', walls: ['east', 'west'] },
        ]);
    });
    test('a wall that nobody gave is as long as the one across', () => {
        expect(laid({ walls: { north: `18' 4"`, west: `15' 2"` } }).ceiling).toMatchObject({ width: ticksOf('220"'), length: ticksOf('182"') });
    });
    test('nothing round the walls: lines and coffers run to the walls', () => {
        const { ceiling, troubles } = laid({ band: null });
        expect([ceiling?.band, troubles, ceiling?.inside.west, ceiling?.inside.east]).toEqual([null, [], 0, ticksOf('220"')]);
    });
    test('the band hangs by its lower edge, below the beams', () => {
        const { band } = laid().ceiling!;
        expect([band!.thickness, band!.height, band!.lowerEdge].map(d => printInches(d.ticks))).toEqual(['3/4"', '7 1/4"', '7 3/4"']);
        expect(band!.lowerEdge.why.terms.map(term => term.what)).toEqual(['held down', 'side', 'below the beams']);
    });
    test('a half beam round the walls: lines and coffers run to its face, bottoms to its bottom', () => {
        const { ceiling, troubles } = laid({ band: { kind: 'half-beam', width: '2 1/2"' } });
        expect([troubles, ceiling!.inside.west, ceiling!.inside.east].flat().map(ticks => printInches(ticks as number))).toEqual(['3 1/4"', '216 3/4"']);
        expect(ceiling!.lines.map(({ start, end }) => [start, end].map(printInches).join()).slice(0, 1)).toEqual(['2 1/2",179 1/2"']);
    });
    test('each wall for itself: a band, a half beam, nothing', () => {
        const { ceiling } = laid({ around: { north: { kind: 'half-beam', width: '3 1/4"' }, west: null } });
        const { west, east, north, south } = ceiling!.inside;
        expect([west, east, north, south].map(printInches)).toEqual(['0"', '219 1/4"', '4"', '181 1/4"']);
        // the coffers stay equal: 219 1/4" less three beams of 7", and 177 1/4" less two of them
        expect(ceiling!.across.coffers.map(printInches)).toEqual(['49 9/16"', '49 9/16"', '49 9/16"', '49 9/16"']);
        expect(ceiling!.down.coffers.reduce((sum, coffer) => sum + coffer, 0)).toBe(ticksOf('163 1/4"'));
    });
    test('a half beam that is not as deep as the lines is told, and gives no ceiling', () => {
        const layout = laid({ band: { kind: 'half-beam', width: '2 1/2"', beams: beam({ sides: { stock: board('5 1/2"') } }) } });
        expect([layout.ceiling, [...new Set(kinds(layout))]]).toEqual([undefined, ['line-goes-nowhere']]);
    });
    test.each([['0"', 'not-positive'], [-5, 'not-positive'], [`5000'`, 'not-supported']])('a wall of %s', (north, kind) => {
        expect(kinds(laid({ walls: { north, east: `15' 2"` } }))).toEqual([kind]);
    });
    test('a band taller than the beams hang low has no room above it', () => {
        expect(laid({ band: { stock: board('9 1/4"') } }).troubles).toMatchObject([{ kind: 'band-too-high', height: ticksOf('9 1/4"'), room: ticksOf('7 1/2"') }]);
    });
});

describe('lines of their own', () => {
    test('another profile of the same depth: widths differ line by line, and everything still adds up', () => {
        const { ceiling, troubles } = laid({ lines: { 2: { beams: beam({ blocking: { stock: board('3 1/2"') }, bottom: { stock: board('3 1/2"') } }) } } });
        expect(troubles).toEqual([]);
        expect(ceiling!.across.lines.map(line => printInches(line.high - line.low))).toEqual(['7"', '5"', '7"']);
        expect(ceiling!.across.coffers.map(printInches)).toEqual(['49 7/8"', '49 7/8"', '49 7/8"', '49 7/8"']);
    });
    test('a shallower line dies into the deeper ones that it crosses, and is cut there; they run on', () => {
        const { ceiling, troubles } = laid({ lines: { 2: { beams: beam({ sides: { stock: board('5 1/2"') } }) } } });
        expect(troubles).toEqual([]);
        const [one, two, , a] = ceiling!.lines;
        expect(two!.passes.map(({ of, relation, cuts }) => [of, relation, cuts])).toEqual([['A', 'dies', true], ['B', 'dies', true]]);
        expect(a!.passes.map(({ of, relation, cuts }) => [of, relation, cuts])).toEqual([['1', 'flush', true], ['2', 'over', false], ['3', 'flush', true]].map(([of, ...rest]) => [of, ...rest]));
        expect([one, two, a].map(line => line!.through)).toEqual([true, false, false]);
        expect(ceiling!.crossings.filter(({ flush }) => !flush).map(({ name }) => name)).toEqual(['A2', 'B2']);
    });
    test('mitered lines cannot meet butted ones, nor lines that run past each other', () => {
        expect(laid({ lines: { B: { beams: beam({ sides: { stock: board('7 1/4"'), corners: 'butted' } }) } } }).troubles).toMatchObject([
            { kind: 'not-supported', what: expect.stringMatching(/corners of line B \(butted\).*line 1 \(mitered\)/) },
        ]);
        const past = (direction: 'north-south' | 'east-west') => ({ sides: { stock: board('7 1/4"'), corners: 'butted' as const, past: direction } });
        expect(kinds(laid({ lines: { B: { beams: beam(past('east-west')) } } }, past('north-south')))).toEqual(['not-supported']);
        expect(kinds(laid({ lines: { B: { beams: beam(past('east-west')) } } }, past('east-west')))).toEqual([]);
    });
    test('a trim of a line\'s own would not turn the corners', () => {
        const layout = laid({ lines: { A: { beams: beam({ trim: { stock: board('2 1/2"', '1/2"') } }) } } });
        expect([layout.ceiling !== undefined, layout.troubles]).toMatchObject([true, [{ kind: 'not-supported', what: expect.stringContaining('line A') }]]);
    });
    test('a line that is not there', () => {
        const layout = laid({ lines: { D: {}, 4: {} } });
        expect(layout.troubles).toMatchObject([{ kind: 'unknown-line', name: '4', has: ['1', '2', '3', 'A', 'B'] }, { kind: 'unknown-line', name: 'D' }]);
        expect(layout.ceiling).toBeDefined();
    });
    test('sections are kept by profile, and by a held-down of a line\'s own', () => {
        expect([...laid({ lines: { B: { heldDown: '5/16"' }, A: {} } }).sections.keys()].map(key => key.split('#')[1])).toEqual(['groove-box()', `groove-box() held down ${ticksOf('5/16"')}`]);
    });
    test('more than 26 lines go on with AA', () => {
        const { ceiling } = laid({ length: `120'`, east: { coffers: 29 }, north: { coffers: 2 } });
        expect(ceiling?.down.lines.map(line => line.name).slice(24)).toEqual(['Y', 'Z', 'AA', 'AB']);
    });
});

describe('too much', () => {
    test('coffers in all', () => {
        const layout = laid({ width: `300'`, length: `300'`, north: { coffers: 40 }, east: { coffers: 40 } });
        expect([layout.ceiling, layout.troubles]).toMatchObject([undefined, [{ kind: 'too-many-coffers', count: 1600, most: 400 }]]);
        const most = laid({ width: `60'`, length: `60'`, north: { coffers: 20 }, east: { coffers: 20 } });
        expect([most.ceiling?.coffers.length, most.troubles]).toEqual([400, []]);
    });
    test('in the rooms of a file: said at the grid, and nothing is laid out', () => {
        const tooMuch = { of: 'rooms', what: 'coffers', count: 420, most: 400 } as const, room = { ...exampleRoom(), tooMuch };
        expect(layOut(room)).toMatchObject({ troubles: [{ kind: 'too-much-in-file', ...tooMuch, at: room.grid!.at }] });
        expect(layOut(room).ceiling).toBeUndefined();
    });
    test('spacers', () => {
        const spacers = { stock: board('5 1/2"'), height: '5"', every: '1/128"' };
        expect(laid({}, { spacers })).toMatchObject({ troubles: [{ kind: 'not-supported', what: 'more than 4000 spacers in one room' }] });
    });
    test.each([[0, 'not-positive'], [ticksOf('3"'), 'not-supported']])('a cut-to of %d ticks', (cutTo, kind) => {
        const room = exampleRoom();
        expect(layOut({ ...room, job: { ...room.job, cutTo: said(cutTo) } })).toMatchObject({ troubles: [{ kind }] });
    });
});

describe('what is not said', () => {
    const without = (change: (room: Room) => Room): Layout => layOut(change(exampleRoom()));
    const grid = (room: Room, words: Partial<NonNullable<Room['grid']>>): Room => ({ ...room, grid: { ...room.grid!, ...words } });
    test.each([
        ['walls', (room: Room): Room => ({ ...room, walls: [] })], ['grid', (room: Room): Room => ({ ...room, grid: undefined })],
        ['the spacing of one wall', (room: Room) => grid(room, { east: undefined })], ['beams', (room: Room) => grid(room, { beams: undefined })],
        ['through', (room: Room) => grid(room, { through: undefined })],
        ['the stock of the band', (room: Room) => grid(room, { around: { ...room.grid!.around, east: { ...room.grid!.around.east!, stock: undefined } } })],
        ['where the feature is', (room: Room) => grid(room, { centeredOn: said({ name: 'lamp', at: at(), kind: 'light' }) })],
        ['what a line stands off', (room: Room): Room => ({ ...room, lines: [{ name: 'own', at: at(), splices: [], place: { by: said(1000) } }] })],
    ] as [string, (room: Room) => Room][])('without %s: no ceiling, silently', (_, change) => {
        expect(without(change)).toMatchObject({ troubles: [] });
        expect(without(change).ceiling).toBeUndefined();
    });
});

test('whatever is missing or absurd, a layout and its pieces come back, and never too many', () => {
    const absurd = fc.constantFrom<number | undefined>(undefined, 0, -1, 0.5, 1, 1e15, 1e300, Infinity, Number.NaN);
    fc.assert(fc.property(randomRooms, fc.array(fc.tuple(fc.nat(), absurd), { minLength: 1, maxLength: 4 }), ({ room }, changes) => {
        const { ceiling } = layOut(spoiled(room, changes));
        const pieces = ceiling ? takeOff(ceiling).pieces : [];
        expect(pieces.length).toBeLessThan(60_000);
    }), { seed: 12, numRuns: runs(400) });
});

/** A copy of the room in which some numbers are something else; undefined takes a whole optional value away. */
function spoiled(room: Room, changes: readonly (readonly [number, number | undefined])[]): Room {
    const copy = structuredClone({ ...room });
    const spots: { holder: Record<string, unknown>; key: string; optional: boolean }[] = [];
    const seen = new Set<unknown>();
    const look = (value: unknown): void => {
        if (typeof value !== 'object' || value === null || seen.has(value)) return;
        seen.add(value);
        for (const [key, inner] of Object.entries(value)) {
            if (key === 'at' || key.endsWith('At')) continue;
            const holder = value as Record<string, unknown>;
            if (typeof inner === 'number') spots.push({ holder, key, optional: false });
            else if (OPTIONAL.has(key) && !('edge' in value)) spots.push({ holder, key, optional: true });
            look(inner);
        }
    };
    look(copy);
    for (const [index, to] of changes) {
        const fitting = spots.filter(spot => spot.optional === (to === undefined));
        const { holder, key } = fitting[index % fitting.length]!;
        holder[key] = to;
    }
    return copy;
}
const OPTIONAL = new Set(['thickness', 'width', 'stock', 'height', 'rabbet', 'nails', 'screws', 'blocking', 'spacers', 'sides', 'cleats', 'bottom', 'trim', 'biscuits', 'press', 'north', 'east', 'south', 'west', 'beams', 'through', 'centeredOn', 'perimeter', 'grid', 'past']);
