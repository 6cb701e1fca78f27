import { expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import { TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { edgesText, miterAt, sawDegrees, signedDegrees, toldLengths } from '../../src/takeoff/ends.ts';
import { copedOff } from '../../src/takeoff/lie.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { workWords, type Work } from '../../src/takeoff/work.ts';
import { exampleRoom } from '../support/example-room.ts';

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
    const told = (part: 'side' | 'bottom', [overall, face, back]: readonly [number, number, number]): string => edgesText({ part, ends: [{ cut: 'miter', degrees: 45 }, { cut: 'square' }], cutOverall: inches(overall), cutFace: inches(face), cutBack: inches(back) }, printInches);
    expect([[50, 50, 50], [50, 49, 50], [50, 50, 49], [50, 49, 48]].map(all => [told('side', all as [number, number, number]), told('bottom', all as [number, number, number])])).toEqual([
        ['', ''], ['face 49"', 'edge 49"'], ['back 49"', 'edge 49"'], ['face 49", back 48"', 'edge 49", edge 48"'],
    ]);
    // corners in whole ticks leave a thousandth of a degree and a mark of the tape: told as square, it has one length
    const nearly: Piece['ends'] = [{ cut: 'angled', degrees: 0.0004 }, { cut: 'square' }], one = { cutOverall: inches(50), cutFace: inches('49 31/32'), cutBack: inches(50) };
    expect([edgesText({ part: 'bottom', ends: nearly, ...one }, printInches), toldLengths({ ends: nearly, ...one }).face]).toEqual(['', inches(50)]);
    expect(edgesText({ part: 'bottom', ends: [{ cut: 'angled', degrees: 0.06 }, { cut: 'square' }], ...one }, printInches)).toBe('edge 49 31/32"');
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

// line A is 3 1/2" behind a coffer of 55 1/2", so its center is 59" from the band, where line 1 and 2 begin
test('a bottom has slots where others butt against it: in both edges, or in the one where a line ends at it', () => {
    const { pieces } = takeOff(layOut(exampleRoom({ lines: { A: { until: '2' } } })).ceiling!);
    const slots = (id: string): string[] => pieces.find(piece => piece.id === `parlor.${id}`)!.work.flatMap(work => (work.kind === 'slots' ? `${work.places}: ${work.where}` : []));
    expect([slots('bottom-1')[0], slots('bottom-2')[0], slots('bottom-A-2')]).toEqual([
        '2: in both edges, centered 59" from the north end', '1: in the west edge, centered 59" from the north end', ['2: in the west and the east end'],
    ]);
});

test('the hand of a piece is the end of its one miter, seen with the face towards you and the groove down; what lies has none but a molding', () => {
    const MITER: EndCut = { cut: 'miter', degrees: 45 }, SQUARE: EndCut = { cut: 'square' };
    const back = { x: 0, y: 0 }, backEnd = { x: 100, y: 0 }, faces = (y: number): Piece['corners'] => [back, backEnd, { x: 100, y }, { x: 0, y }];
    const hand = (over: Partial<Pick<Piece, 'part' | 'lies' | 'ends' | 'corners' | 'work'>>) => miterAt({ part: 'side', ends: [MITER, SQUARE], corners: faces(10), work: [], ...over });
    const groove = (edge: 'upper' | 'lower'): Work[] => [{ kind: 'rabbet', width: 1, height: 1, edge, face: 'back' }];
    // its back to the north, so that whoever looks at its face looks north and has the west end on the left
    expect([hand({}), hand({ ends: [SQUARE, MITER] }), hand({ corners: faces(-10) })]).toEqual(['left', 'right', 'right']);
    expect([hand({ work: groove('lower') }), hand({ work: groove('upper') })]).toEqual(['left', 'right']);
    expect([hand({ ends: [MITER, MITER] }), hand({ ends: [SQUARE, SQUARE] }), hand({ ends: [{ cut: 'angled', degrees: 5 }, SQUARE] })]).toEqual([null, null, null]);
    expect([hand({ part: 'molding', lies: true }), hand({ part: 'bottom' }), hand({ part: 'trim', lies: true })]).toEqual(['left', null, null]);
});
