import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { suspectsOf } from '../../src/measure/misread.ts';
import { slipOf } from '../../src/measure/slips.ts';
import { readFile } from '../../src/language/read-file.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { runs } from '../support/full.ts';

const INCH = 16256;

async function roomOf(words: string, job = '') {
    const workspace = await TestWorkspace.open({ 'den.coffer': `edition 1\n${job}\nroom den {\n${words}\n}\n` });
    return readFile(workspace.document('den.coffer')).rooms[0]!;
}

type Spot = readonly [number, number];
const apart = ([ax, ay]: Spot, [bx, by]: Spot): number => Math.hypot(ax - bx, ay - by);
const NAMES = ['wall north', 'wall east', 'wall south', 'wall west', 'the diagonal from north-west to south-east', 'the diagonal from north-east to south-west'];
/** Walls north, east, south, west, then the diagonals of a room with these corners from the north-west one on; in inches. */
const readingsOf = ([nw, ne, se, sw]: readonly Spot[]): number[] =>
    [apart(nw!, ne!), apart(ne!, se!), apart(se!, sw!), apart(sw!, nw!), apart(nw!, se!), apart(ne!, sw!)];
const spelled = (all: readonly number[]): string => {
    const [n, e, s, w, a, b] = all.map(inches => `${Math.round(inches * 64)}/64"`);
    return `  wall north ${n}\n  wall east ${e}\n  wall south ${s}\n  wall west ${w}\n  diagonal north-west to south-east measures ${a}\n  diagonal north-east to south-west measures ${b}`;
};

/**
 * Six distances between four places of a plane: their Cayley-Menger determinant is 0 (A. Cayley, 1841; K. Menger, 1928). An independent way to say
 * that a room closes. In inches.
 */
function cayleyMenger([n, e, s, w, a, b]: readonly number[]): number {
    const d = [[0, n!, a!, w!], [n!, 0, e!, b!], [a!, e!, 0, s!], [w!, b!, s!, 0]].map(row => row.map(each => each * each));
    const m = [[0, 1, 1, 1, 1], ...d.map(row => [1, ...row])];
    let det = 1;
    for (let i = 0; i < 5; i++) {
        const pivot = m.slice(i).reduce((best, row, k) => (Math.abs(row[i]!) > Math.abs(m[best]![i]!) ? i + k : best), i);
        if (pivot !== i) { [m[i], m[pivot]] = [m[pivot]!, m[i]!]; det = -det; }
        det *= m[i]![i]!;
        for (let k = i + 1; k < 5; k++) {
            const by = m[k]![i]! / m[i]![i]!;
            for (let j = i; j < 5; j++) m[k]![j]! -= by * m[i]![j]!;
        }
    }
    return det;
}

describe('a reading that would explain alone why the room does not close', () => {
    // a quadrilateral of which the area, 26,091.188 sq in, and the first corner, 90.2984 degrees, agree by three formulas (shoelace, Heron, diagonals)
    const ROOM: readonly Spot[] = [[0, 0], [180, 0], [181, 144.5], [-0.75, 144]];

    test('nothing is suspected where the tape closes', async () => {
        expect(suspectsOf(await roomOf(spelled(readingsOf(ROOM))))).toEqual([]);
    });

    test.each([[0, 12, 'foot'], [1, 1, 'held-at-one'], [2, -1, 'inch'], [3, -12, 'foot'], [4, 1, 'held-at-one'], [5, 12, 'foot']] as const)('reading %i off by %i"', async (which, off, slip) => {
        const is = readingsOf(ROOM), suspects = suspectsOf(await roomOf(spelled(is.with(which, is[which]! + off))));
        const found = suspects.find(({ name }) => name === NAMES[which])!;
        expect(found.slip).toBe(slip);
        // 1/64" of spelling in six readings
        expect(Math.abs(found.should / INCH - is[which]!)).toBeLessThan(1 / 8);
        expect(suspects.findIndex(({ slip: one }) => !one)).toSatisfy((first: number) => first === -1 || first > suspects.indexOf(found));
    });

    test('whatever is suspected closes the room, by the determinant of its six distances; those with a slip come first, then those that are off least', async () => {
        const between = (min: number, max: number) => fc.double({ min, max, noNaN: true }), eight = fc.array(between(-6, 6), { minLength: 8, maxLength: 8 });
        await fc.assert(fc.asyncProperty(eight, fc.integer({ min: 0, max: 5 }), between(0.3, 9), async (by, which, off) => {
            const corners = ([[0, 0], [160, 0], [160, 130], [0, 130]] as const).map(([x, y], i): Spot => [x + by[2 * i]!, y + by[2 * i + 1]!]);
            const spelt = (inches: number): number => Math.round(inches * 64) / 64;
            const reads = readingsOf(corners).map((inches, i) => spelt(inches) + (i === which ? spelt(off) : 0));
            const suspects = suspectsOf(await roomOf(spelled(reads)));
            expect(suspects.map(({ name }) => name)).toContain(NAMES[which]);
            const scale = Math.abs(cayleyMenger(reads.with(which, reads[which]! + 1)) - cayleyMenger(reads)) + 1;
            for (const { name, should } of suspects) expect(Math.abs(cayleyMenger(reads.with(NAMES.indexOf(name), should / INCH))) / scale).toBeLessThan(0.05);
            const order = suspects.map(({ slip, off: far }) => [slip ? 0 : 1, Math.abs(far)] as const);
            expect(order).toEqual([...order].sort((a, b) => a[0] - b[0] || a[1] - b[1]));
        }), { seed: 3, numRuns: runs(60) });
    });

    test('round an ell only walls that run the way of what is missing can be wrong', async () => {
        const ell = '  wall north 20\'\n  wall east 9\'\n  wall wing-south 8\'\n  wall inner-east 7\' heading south\n  wall south 13\'\n  wall west 16\'\n';
        const suspects = suspectsOf(await roomOf(ell));
        expect(suspects.map(({ name, off, slip }) => [name, off / INCH, slip])).toEqual([['wall north', 12, 'foot'], ['wall wing-south', -12, 'foot'], ['wall south', -12, 'foot']]);
        // off both ways: no wall alone
        expect(suspectsOf(await roomOf(ell.replace('west 16\'', 'west 15\'')))).toEqual([]);
    });
});

test.each([
    ['15\' 8" for 14\' 8"', 15 * 12 + 8, 14 * 12 + 8, 'foot'],
    ['held at 1"', 101.5, 100.5, 'held-at-one'],
    ['an inch short', 100.5, 101.5, 'inch'],
    ['21\' for 12\'', 21 * 12, 12 * 12, 'swapped-digits'],
    ['142" for 124"', 142, 124, 'swapped-digits'],
    ['9\' 6" for 6\' 6"', 9 * 12 + 6, 6 * 12 + 6, 'upside-down'],
    ['5 3/8" for 5 5/8"', 65.375, 65.625, 'wrong-side-of-inch'],
    ['nothing usual', 100, 104.3, undefined],
    ['as good as right', 100, 100.03, undefined],
] as const)('%s', (_, reads, should, slip) => {
    expect(slipOf(reads * INCH, Math.round(should * INCH), 'feet-inches')).toBe(slip);
});

test.each([[4826, 4286, 'swapped-digits'], [4100, 4000, 'held-at-one'], [4010, 4000, 'centimeter'], [4960, 4660, 'upside-down'], [4000, 4321, undefined]] as const)('%i mm for %i mm', (reads, should, slip) => {
    expect(slipOf(reads * 640, should * 640, 'millimeters')).toBe(slip);
});
