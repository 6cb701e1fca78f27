import { describe, expect, it } from 'vitest';
import { STRENGTH } from '../../../src/data/species.ts';
import { bowed, kerfed, kneed, leastToSpring, swung } from '../../../src/takeoff/closing/bending.ts';
import { elastica } from './elastica.ts';

/**
 * USDA Forest Products Laboratory, Wood Handbook FPL-GTR-282 (2021), Table 5-3b: rupture in psi, elasticity in 10^6 psi; bending alone 10 %
 * stiffer, note c there.
 */
const HANDBOOK: Readonly<Record<string, readonly [rupture: number, elasticity: number]>> = {
    'yellow-poplar': [10_100, 1.58], 'red-oak': [14_300, 1.82], 'eastern-white-pine': [8_600, 1.24], 'sugar-maple': [15_800, 1.83], 'douglas-fir': [12_400, 1.95],
};
const BOARDS = [[50.875, 0.75, 5.5], [96, 0.75, 5.5], [144, 0.75, 3.5], [60, 0.5, 7.25]] as const;

describe.each(Object.entries(HANDBOOK))('%s', (species, [rupture, elasticity]) => {
    it('has the published strength', () => {
        expect(STRENGTH[species]).toMatchObject({ rupture, elasticity });
    });

    it.each(BOARDS)('%d" long, %d" thick, %d" wide: force and stress are those of the handbook\'s beam', (length, thickness, width) => {
        const found = bowed({ length, thickness, width }, STRENGTH[species]!, { shorter: 0.7, sticksOut: 0.35, biscuit: 0 });
        // Eq. 9-2, a load in the middle of simple supports: sag = F l³ / (48 E I) + shear, here less than half a percent of it and left out
        const e = elasticity * 1.1e6, inertia = width * thickness ** 3 / 12;
        expect(found.force * length ** 3 / (48 * e * inertia)).toBeCloseTo(found.bow, 9);
        // the moment there is F l / 4, stress = M / S with S = b t² / 6; of the modulus of rupture it is as much as of the breaking strain
        expect(found.force * length / 4 / (width * thickness ** 2 / 6) / rupture).toBeCloseTo(found.ofBreaking, 9);
        expect(found.strain).toBeCloseTo(found.ofBreaking * rupture / e, 9);
    });
});

describe('against a beam of large bows', () => {
    it.each([0.3, 0.5, 0.75, 1, 1.25].flatMap(shorter => [[50.875, shorter], [90, shorter]]))('%d" long, %d" shorter', (length, shorter) => {
        const found = bowed({ length, thickness: 0.75, width: 5.5 }, STRENGTH['yellow-poplar']!, { shorter, sticksOut: 0, biscuit: 0 });
        const stiffness = 1.58e6 * 1.1 * 5.5 * 0.75 ** 3 / 12, exact = elastica(length, stiffness, shorter);
        expect(exact.shorter).toBeCloseTo(shorter, 6);
        const off = (got: number, is: number): number => Math.abs(got / is - 1);
        expect(off(found.bow, exact.bow)).toBeLessThan(0.008);
        expect(off(found.endAngle * Math.PI / 180, exact.endAngle)).toBeLessThan(0.002);
        expect(off(found.force, exact.force)).toBeLessThan(0.036);
        expect(off(found.strain, exact.curvature * 0.75 / 2)).toBeLessThan(0.011);
    });
});

it('50 7/8" of 3/4" poplar with #20 at both ends breaks, and wants more than 500 lb', () => {
    const out = (23 / 2 - 25.4 / 32) / 25.4;
    const found = bowed({ length: 50.875, thickness: 0.75, width: 5.5 }, STRENGTH['yellow-poplar']!, { shorter: 2 * out, sticksOut: out, biscuit: 4 / 25.4 });
    expect(found.bow).toBeCloseTo(4.33, 2);
    // by the published elasticity, with the sag by shear in it, 118 % and 482 lb
    expect(found.ofBreaking / 1.1).toBeCloseTo(1.177, 3);
    expect(found.force / 1.1).toBeCloseTo(482, 0);
    expect(found.slotWider).toBeCloseTo(1.054 * out ** 1.5 / Math.sqrt(50.875), 4);
});

it('the least length to spring breaks at half, a hair shorter above it', () => {
    const board = { thickness: 0.75, width: 5.5 }, wanted = { shorter: 0.84, sticksOut: 0.42, biscuit: 4 / 25.4 }, poplar = STRENGTH['yellow-poplar']!;
    const least = leastToSpring(board, poplar, wanted);
    expect(bowed({ ...board, length: least }, poplar, wanted).ofBreaking).toBeCloseTo(0.5, 6);
    expect(bowed({ ...board, length: least - 0.1 }, poplar, wanted).ofBreaking).toBeGreaterThan(0.5);
});

/** The greatest of something over 0 to 1, looked for. */
const greatest = (of: (share: number) => number): number => Math.max(...Array.from({ length: 20_001 }, (_, i) => of(i / 20_000)));

describe('slots are wider by what a biscuit takes while it goes in at an angle', () => {
    const out = 0.42;
    it('sprung', () => {
        const length = 60;
        // on by x: the chord is still shorter by 2 (P - x), and the ends lean by 3 q / l with 2.4 q² / l of it
        const took = greatest(share => share * out * 3 * Math.sqrt(2 * out * (1 - share) * length / 2.4) / length);
        expect(bowed({ length, thickness: 0.75, width: 5.5 }, STRENGTH['red-oak']!, { shorter: 2 * out, sticksOut: out, biscuit: 0 }).slotWider).toBeCloseTo(took, 6);
    });
    it('swung', () => {
        const [length, thickness, biscuit] = [60, 0.75, 4 / 25.4];
        const found = swung({ length, thickness }, { sticksOut: out, biscuit }), most = found.angle * Math.PI / 180;
        // leaning by a its middle end is held off by l (1 - cos a) less half of what its thickness leans
        const onBy = (a: number): number => out - length * (1 - Math.cos(a)) + thickness / 2 * Math.sin(a);
        expect(found.slotWider).toBeCloseTo(greatest(share => share * most * onBy(share * most)), 3);
        // at first the lower face of the biscuit is just cleared, and its end hangs as low as a board of that length does
        expect(length * (1 - Math.cos(most))).toBeCloseTo(out + (thickness + biscuit) / 2 * Math.sin(most), 2);
        expect(found.hangs).toBeCloseTo(length * Math.sin(most), 9);
        const leans = (a: number): number => length * Math.cos(a) + thickness * Math.sin(a) - length;
        expect(found.binds).toBeCloseTo(greatest(share => leans(share * thickness / length)), 5);
    });
    it('kneed', () => {
        const { slotWider } = kneed({ length: 60, thickness: 0.75 }, { shorter: 2 * out, sticksOut: out, biscuit: 0 });
        expect(slotWider).toBe(swung({ length: 30, thickness: 0.75 }, { sticksOut: out, biscuit: 0 }).slotWider);
    });
});

it('a knee is as long as its halves and their thickness reach, and binds where its corners stand out most', () => {
    const length = 60, thickness = 0.75, shorter = 0.7, { angle, binds } = kneed({ length, thickness }, { shorter, sticksOut: 0.35, biscuit: 0 });
    const a = angle * Math.PI / 180;
    expect(length * Math.cos(a) + thickness * Math.sin(a)).toBeCloseTo(length - shorter, 2);
    expect(binds).toBeCloseTo(greatest(share => length * Math.cos(share / 10) + 2 * thickness * Math.sin(share / 10)) - length, 4);
});

it('kerfs close by no more than the web under them may be bent, and their arc gains what is wanted', () => {
    const length = 50.875, shorter = 0.72, kerf = 1 / 8, { rupture, elasticity } = STRENGTH['yellow-poplar']!;
    const { count, web, depth, apart, hangs } = kerfed({ length, thickness: 0.75 }, { rupture, elasticity }, { shorter, sticksOut: 0.36, biscuit: 0 }, kerf);
    const angle = Math.sqrt(24 * shorter / length), radius = length / angle;
    // an arc of that angle: chord 2 R sin(A / 2), height R (1 - cos(A / 2))
    expect(length - 2 * radius * Math.sin(angle / 2)).toBeCloseTo(shorter, 1);
    expect(radius * (1 - Math.cos(angle / 2))).toBeCloseTo(hangs, 1);
    expect(angle / count * web / 2 / kerf).toBeLessThanOrEqual(rupture / (elasticity * 1.1e6) / 2);
    expect(web + depth).toBeCloseTo(0.75, 9);
    expect(apart * count).toBeCloseTo(length - 6, 9);
});
