import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Section } from '../../src/ceiling/model.ts';
import { poundsPerCubicFoot } from '../../src/data/species.ts';
import { inches } from '../../src/quantity/rational.ts';
import { exactly } from '../../src/quantity/tolerance.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { threadOf } from '../../src/takeoff/thread.ts';
import { hangingOn } from '../../src/takeoff/weight.ts';
import { given } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';

const ceiling = layOut(exampleRoom()).ceiling!;
const of = (species: string, pieces: readonly Piece[]): Piece[] => pieces.map(piece => ({ ...piece, stock: { ...piece.stock, species: given(species) } }));

describe('what hangs on a beam', () => {
    const pieces = of('yellow-poplar', takeOff(ceiling).pieces), pound = poundsPerCubicFoot('yellow-poplar')!;
    /**
     * Line 2 of the example, in cubic inches. Blocking and bottom 180 1/2" x 5 1/2" x 3/4"; three spacers of 5" x 5 1/2" x 3/4" in each of three bays;
     * on either flank sides of 56 1/4" in the middle of their thickness, and of 55 7/8" in the first and last bay, 7 1/4" x 3/4"; cleats of 56 1/2" and
     * twice 55 3/4", 3/4" x 3/4"; and along it six trims of 55" in the middle of their thickness, 1 1/2" x 1/2".
     */
    const line2 = 2 * 180.5 * 5.5 * 0.75 + 9 * 5 * 5.5 * 0.75 + 2 * (56.25 + 2 * 55.875) * 7.25 * 0.75
        + 2 * (56.5 + 2 * 55.75) * 0.75 * 0.75 + 6 * 55 * 1.5 * 0.5;
    test('is all that is fastened to it, and the trim along it', () => {
        expect(hangingOn('2', ceiling, pieces)).toEqual({ pounds: expect.closeTo(line2 / 1728 * pound, 6), unknown: [] });
    });
    test('all but the band hangs on one line or along one wall', () => {
        const names = [...ceiling.lines, ...ceiling.walls].map(({ name }) => name);
        const sum = names.reduce((all, name) => all + hangingOn(name, ceiling, pieces).pounds, 0);
        const all = pieces.filter(({ part }) => part !== 'band')
            .reduce((cubic, { face, back, width, thickness }) => cubic + (face + back) / 2 * width * thickness / inches(1) ** 3, 0);
        expect(sum).toBeCloseTo(all / 1728 * pound, 5);
        // along the north wall four trims of 48 7/8" in the middle of their thickness
        expect(hangingOn('north', ceiling, pieces).pounds).toBeCloseTo(4 * 48.875 * 1.5 * 0.5 / 1728 * pound, 6);
    });
    test('is not known of stocks of no species, or of one that no table has: each is named once', () => {
        const other = takeOff(ceiling).pieces.map(piece => (piece.part === 'trim' ? of('moon-oak', [piece])[0]! : piece));
        expect(hangingOn('2', ceiling, other)).toEqual({ pounds: 0, unknown: ['poplar-1x6', 'poplar-1x8', 'strip-1x2'] });
    });
});

// a screw of 3" through blocking of 3/4", a panel of 1/4" and 5/8" of gypsum is 1 3/8" in the joist; one of 1 1/2" ends 1/8" short of it
describe('what of a screw is in the joist', () => {
    interface Words { readonly long?: string; readonly cover?: string; readonly back?: string | null; readonly blocking?: boolean }
    type In = Parameters<typeof threadOf>[1];
    const thread = ({ long, cover, back, blocking = true }: Words) => threadOf({
        profile: {
            blocking: { screws: long === undefined ? undefined : given({ gauge: 8, length: inches(long), every: inches(16) }) },
            ...back !== undefined && { back: { thickness: back === null ? undefined : given(exactly(inches(back))) } },
        },
        ...blocking && { blockingThickness: { ticks: inches('3/4'), tolerance: [], why: { terms: [] } } },
    } as unknown as Section, { room: { covering: { kind: given('gypsum'), thickness: cover === undefined ? undefined : given(inches(cover)) } } } as In);
    test('is what is left of it behind blocking, panel and covering', () => {
        const through = (back: string) => ({ blocking: inches('3/4'), back: inches(back), covering: inches('5/8') });
        expect(thread({ long: '3', cover: '5/8', back: '1/4' })).toEqual({ through: { ...through('1/4'), total: inches('1 5/8') }, inWood: inches('1 3/8') });
        expect(thread({ long: '3', cover: '5/8' })).toEqual({ through: { ...through('0'), total: inches('1 3/8') }, inWood: inches('1 5/8') });
        expect(thread({ long: '1 1/2', cover: '5/8', back: '1/4' })!.inWood).toBe(-inches('1/8'));
    });
    test('is not known where one of these is not', () => {
        const all: Words[] = [{ cover: '5/8' }, { long: '3' }, { long: '3', cover: '5/8', back: null }, { long: '3', cover: '5/8', blocking: false }];
        expect(all.map(thread)).toEqual([undefined, undefined, undefined, undefined]);
    });
});
