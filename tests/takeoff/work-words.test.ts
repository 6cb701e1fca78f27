import { expect, test } from 'vitest';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import { TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { edgesText, sawDegrees, signedDegrees } from '../../src/takeoff/ends.ts';
import { copedOff } from '../../src/takeoff/lie.ts';
import { workWords, type Work } from '../../src/takeoff/work.ts';

const corners = [[inches(0), inches(0)], [inches(30), inches(0)], [inches('28 1/2'), inches(12)]] as const;

test.each<[string, Work]>([
    ['rip to 3 1/2"', { kind: 'rip', width: inches('3 1/2'), fence: 'fence B' }], ['rip to 1/2" x 3/4"', { kind: 'rip', width: inches('3/4'), thickness: inches('1/2') }],
    ['rabbet 1/8" x 1/4" on the lower back edge', { kind: 'rabbet', width: inches('1/8'), height: inches('1/4'), edge: 'lower', face: 'back' }],
    ['3/8" of it to be scribed to the wall', { kind: 'scribe', by: inches('3/8') }], ['ease the two back edges 1/16"', { kind: 'ease', by: inches('1/16') }],
    ['slot for 1 #20 biscuit in the west end', { kind: 'slots', count: 1, size: '#20', places: 1, where: 'in the west end' }],
    ['slots for 2 #0 biscuits in both edges', { kind: 'slots', count: 2, size: '#0', places: 2, where: 'in both edges' }], ['2 pocket holes at the upper end', { kind: 'pocket-holes', count: 2 }],
    ['nip the corner away from the side 1/4" at the west end', { kind: 'nip', by: [inches('1/4'), 0], ends: ['west', 'east'] }],
    ['nip the corner away from the side 1/8" at the south end', { kind: 'nip', by: [0, inches('1/8')], ends: ['north', 'south'] }],
    ['nip the corner away from the side 1/4" at the west end and 1/8" at the east end', { kind: 'nip', by: [inches('1/4'), inches('1/8')], ends: ['west', 'east'] }],
    ['cut to shape by its corners, from the west end and from the north edge: 0", 0"; 30", 0"; 28 1/2", 12"', { kind: 'shape', corners, from: ['west', 'north'] }],
])('%s', (words, work) => {
    expect(workWords(work, printInches)).toBe(words);
});

test('an edge is told only where it is not what the piece takes of a board, and by its name: a face, or of what lies an edge', () => {
    const told = (part: 'side' | 'bottom', [overall, face, back]: readonly [number, number, number]): string => edgesText({ part, cutOverall: inches(overall), cutFace: inches(face), cutBack: inches(back) }, printInches);
    expect([[50, 50, 50], [50, 49, 50], [50, 50, 49], [50, 49, 48]].map(all => [told('side', all as [number, number, number]), told('bottom', all as [number, number, number])])).toEqual([
        ['', ''], ['face 49"', 'edge 49"'], ['back 49"', 'edge 49"'], ['face 49", back 48"', 'edge 49", edge 48"'],
    ]);
});

test('an angle is set to a tenth of a degree, and told to programs to a ten-thousandth, with its sign', () => {
    const at = (degrees: number) => ({ cut: 'miter' as const, degrees });
    expect([22.449, 22.45, -22.45, 0.04].map(degrees => sawDegrees(at(degrees)))).toEqual([22.4, 22.5, 22.5, 0]);
    expect([22.44996, -0.00004, -33.690067].map(degrees => signedDegrees(at(degrees)))).toEqual([22.45, 0, -33.6901]);
});

/**
 * Coped, a piece ends along the face of the other, which stands at an angle b to it: at the back of a thickness t it is shorter than its miter by
 * t cot(b/2) - t cot b = t / sin b. At a right angle that is all of its miter, t.
 */
test.each([[90, 1], [120, 2 / Math.sqrt(3)], [60, 2 / Math.sqrt(3)], [150, 2]])('coping at a corner of %i degrees takes %f times its thickness off the back', (corner, times) => {
    const thick = 19 * TICKS_PER_MM, half = corner * Math.PI / 360;
    expect(copedOff(thick / Math.tan(half), thick)).toBeCloseTo(times * thick, 6);
});
test('where the face is as long as the back, or longer, nothing is coped off the back', () => {
    expect([copedOff(0, 100), copedOff(-40, 100)]).toEqual([0, 0]);
});
