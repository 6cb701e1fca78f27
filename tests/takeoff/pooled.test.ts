import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Profile } from '../../src/job/model.ts';
import type { Part } from '../../src/job/part.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';
import { isPooled, pooled, shorterBy } from '../../src/takeoff/pooled.ts';
import { given, piece, stock } from '../cutting/samples.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';
import { runs } from '../support/full.ts';

/** How few lengths hidden pieces are cut to. That they go together as before is held by the dry fit's test of the same name. */
const of = (...parts: readonly Part[]) => given({ slack: 3, of: new Set(parts) });
const beams = (short: number, relief?: number): Profile =>
    ({ cleats: { shortEachEnd: given(short) }, blocking: relief === undefined ? {} : { relief: given(relief) } }) as unknown as Profile;
const pine = stock(), MITER: EndCut = { cut: 'miter', degrees: 45 }, SQUARE: EndCut = { cut: 'square' };

test.each<[string, Parameters<typeof isPooled>, boolean]>([
    ['spacers', [{ part: 'spacer' }, of('spacer'), undefined], true], ['spacers, where cleats alone are to be', [{ part: 'spacer' }, of('cleat'), undefined], false],
    ['cleats that are short of their side', [{ part: 'cleat' }, of('cleat'), beams(1)], true], ['cleats that are as long', [{ part: 'cleat' }, of('cleat'), beams(0)], false],
    ['cleats of nobody knows what', [{ part: 'cleat' }, of('cleat'), undefined], false],
    ['blocking with the usual relief', [{ part: 'blocking', bay: 2 }, of('blocking'), beams(1)], true], ['blocking with its own', [{ part: 'blocking', bay: 2 }, of('blocking'), beams(1, 5)], true],
    ['blocking of nobody knows what, with the usual relief', [{ part: 'blocking', bay: 2 }, of('blocking'), undefined], true],
    ['blocking that goes in dead tight', [{ part: 'blocking', bay: 2 }, of('blocking'), beams(1, 0)], false],
    ['blocking that runs through', [{ part: 'blocking', bay: null }, of('blocking'), beams(1, 5)], false], ['what is seen', [{ part: 'side', bay: 1 }, of('side'), beams(1)], false],
])('%s', (_, one, is) => {
    expect(isPooled(...one)).toBe(is);
});

test('from the shortest of a kind on, all within the slack are as long as it; the next longer one begins anew', () => {
    const all = [['a', 107], ['a', 100], ['a', 103], ['a', 104], ['a', 108], ['b', 101], ['b', 102]] as const;
    const by = shorterBy(all, ([kind]) => kind, ([, length]) => length, 3);
    expect(all.map(one => by.get(one))).toEqual([3, 0, 3, 0, 0, 0, 1]);
});

test('no fewer lengths would do, says trying all sets of them', () => {
    const some = fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 9 });
    fc.assert(fc.property(some, fc.integer({ min: 0, max: 12 }), (lengths, slack) => {
        const pieces = lengths.map(length => ({ length }));
        const by = shorterBy(pieces, () => '', ({ length }) => length, slack);
        const cut = pieces.map(one => one.length - by.get(one)!);
        expect(pieces.every(one => by.get(one)! >= 0 && by.get(one)! <= slack)).toBe(true);
        // a stop may as well stand at the shortest piece that is cut there
        let fewest = Infinity;
        for (let set = 1; set < 1 << lengths.length; set++) {
            const stops = lengths.filter((_, i) => set & (1 << i));
            if (lengths.every(length => stops.some(stop => stop <= length && length - stop <= slack))) fewest = Math.min(fewest, stops.length);
        }
        expect(new Set(cut).size).toBe(fewest);
    }), { seed: 13, numRuns: runs(300) });
});

test('a shorter one stands in the middle of its place, an odd tick nearer to its beginning; a spacer hangs less low; what is at an angle stays', () => {
    const cleat = (id: string, length: number, over: Partial<Piece> = {}): Piece => piece(id, pine, length, { part: 'cleat', line: null, width: 20, ...over });
    const spacer = (id: string, length: number): Piece => piece(id, pine, length, { part: 'spacer', box: { west: 0, east: 5, north: 0, south: 5, top: 10, foot: 10 + length } });
    const all = [
        cleat('short', 100), cleat('long', 103), cleat('mitered', 103, { ends: [MITER, SQUARE] }), cleat('nipped', 103, { work: [{ kind: 'nip', by: [1, 0], ends: ['west', 'east'] }] }),
        spacer('low', 52), spacer('high', 50), cleat('other', 102, { width: 30 }),
    ];
    const made = pooled(all, { poolHidden: of('cleat', 'spacer') }, () => beams(1)), find = (id: string): Piece => made.find(each => each.id === id)!;
    expect(made.map(({ cutOverall, cutBack, back, face, cutFace, overall }) => [cutOverall, cutBack, back, face, cutFace, overall])).toEqual(
        [100, 100, 103, 103, 50, 50, 102].map(length => Array.from({ length: 6 }, () => length)));
    const { corners, box, why } = find('long');
    expect([corners.map(({ x }) => x), box.west, box.east, corners.map(({ y }) => y)]).toEqual([[1, 101, 101, 1], 1, 101, [0, 0, 20, 20]]);
    expect(why.terms.map(({ what, times, ticks }) => [what, times * ticks])).toEqual([['sample', 103], ['pooled at one stop', -3]]);
    // the same from north to south, and askew: 3 of 5 each way of 4 east and 3 south
    const upright = pooled([cleat('a', 100), cleat('b', 102, { corners: [{ x: 50, y: 0 }, { x: 50, y: 102 }, { x: 30, y: 102 }, { x: 30, y: 0 }] })], { poolHidden: of('cleat') }, () => beams(1))[1]!;
    expect(upright.corners.map(({ x, y }) => [x, y])).toEqual([[50, 1], [50, 101], [30, 101], [30, 1]]);
    expect([upright.box.north, upright.box.south, upright.box.west]).toEqual([1, 101, 30]);
    const askew = pooled([cleat('a', 90), cleat('b', 100, { corners: [{ x: 0, y: 0 }, { x: 80, y: 60 }, { x: 74, y: 68 }, { x: -6, y: 8 }] })], { poolHidden: given({ slack: 10, of: new Set<Part>(['cleat']) }) }, () => beams(1))[1]!;
    expect(askew.corners.map(({ x, y }) => [x, y])).toEqual([[4, 3], [76, 57], [70, 65], [-2, 11]]);
    expect(find('low').box).toEqual({ west: 0, east: 5, north: 0, south: 5, top: 10, foot: 60 });
    expect(pooled(all, {}, () => beams(1))).toBe(all);
});

test('in a room every line says by its own detail what of it may be pooled', async () => {
    // Beside lines 1 and 2 there are 32 1/2", 29 1/2" and 32" from north to south; the cleats of line 1 are as long as their sides, those of line 2
    // 1/4" shorter at either end: 32 + 3/4 - 2 x 1/4 = 32 1/4", to which those of 32 1/2 + 3/4 - 2 x 1/4 are cut as well
    const [layout] = await layoutsOf(`${PLAIN_BEAM.replace('edition 1', 'edition 1\njob "Ladder Street 2" { pool-hidden 3/4" of cleats }')}
profile fit like plain { cleats.short-each-end 0" }
room den {
  wall north  12'
  wall east   9'
  grid { lines-north 4', 8'; lines-east 3', 6' 1/2"; beams plain; through north-south; perimeter { kind none } }
  line 1 { beams fit }
}
`);
    const cleats = takeOff(layout!.ceiling!).pieces.filter(({ part }) => part === 'cleat');
    const isPooledHere = ({ why }: Piece): boolean => why.terms.some(({ what }) => what === 'pooled at one stop');
    expect(cleats.filter(isPooledHere).map(({ id, overall }) => `${id} ${printInches(overall)}`)).toEqual(['den.cleat-2-1-west 32 1/4"', 'den.cleat-2-1-east 32 1/4"']);
});
