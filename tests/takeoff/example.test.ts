import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import type { Piece, TakeOff } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { ticksOf } from '../support/job-builder.ts';
import { exampleRoom } from '../support/example-room.ts';

/** The room of tests/support/example-room.ts, both ways, held to figures worked out by hand, piece for piece. */
function both(through: 'north-south' | 'east-west') {
    const layout = layOut(exampleRoom({ through }));
    expect(layout.troubles).toEqual([]);
    return { ceiling: layout.ceiling!, off: takeOff(layout.ceiling!) };
}

/** Each kind of piece with its count: line's direction, face, back, ends from west or north, hand. */
function counted({ pieces }: TakeOff): string[] {
    const rows = new Map<string, number>();
    for (const piece of pieces) rows.set(rowOf(piece), (rows.get(rowOf(piece)) ?? 0) + 1);
    return [...rows].map(([row, count]) => `${count} ${row}`).sort();
}
function rowOf({ part, line, face, back, ends, hand, cutFace, cutBack }: Piece): string {
    expect([cutFace, cutBack]).toEqual([face, back]); // all of it is on the tape's thirty-seconds
    const runs = line === null ? '' : /\d/.test(line) ? ' north-south' : ' east-west';
    const size = face === back ? printInches(back) : `${printInches(face)} face ${printInches(back)} back`;
    const cuts = ends.map(end => end.cut === 'miter' ? `${end.degrees}` : end.cut).join(' and ');
    return `${part}${runs}: ${size}, ${cuts}${hand ? `, ${hand}` : ''}`;
}

/** What does not depend on which bottoms run through. */
const SAME = [
    // sides and cleats of the east-west lines
    '8 side east-west: 49 3/8" face 50 7/8" back, 45 and 45',
    '2 side east-west: 49 3/8" face 50 1/8" back, square and 45, left', '2 side east-west: 49 3/8" face 50 1/8" back, square and 45, right',
    '2 side east-west: 49 3/8" face 50 1/8" back, 45 and square, left', '2 side east-west: 49 3/8" face 50 1/8" back, 45 and square, right',
    '8 cleat east-west: 50 3/8", square and square', '8 cleat east-west: 49 5/8", square and square',
    // and of the north-south lines
    '6 side north-south: 55 1/2" face 57" back, 45 and 45',
    '3 side north-south: 55 1/2" face 56 1/4" back, square and 45, left', '3 side north-south: 55 1/2" face 56 1/4" back, square and 45, right',
    '3 side north-south: 55 1/2" face 56 1/4" back, 45 and square, left', '3 side north-south: 55 1/2" face 56 1/4" back, 45 and square, right',
    '6 cleat north-south: 56 1/2", square and square', '12 cleat north-south: 55 3/4", square and square',
    // spacers within 6" of each end of a bay, at most 24" apart: three in each of 17 bays
    '24 spacer east-west: 5", square and square', '27 spacer north-south: 5", square and square',
    // band 18' 4" long in two pieces, spliced on line 2; between them the west and east walls
    '4 band: 110", square and square', '2 band: 180 1/2", square and square',
    // trim: four a coffer, the long point is the coffer
    '24 trim: 48 3/8" face 49 3/8" back, 45 and 45', '24 trim: 54 1/2" face 55 1/2" back, 45 and 45',
];

describe('four coffers by three, bottoms through north-south', () => {
    const { ceiling, off } = both('north-south');

    test('the layout', () => {
        const section = ceiling.lines[0]!.section;
        expect([section.outerWidth, section.depth, section.bottomTop, section.cleatTop, section.spacerRoom].map(d => printInches(d!.ticks))).toEqual(['7"', '7 1/2"', '6 3/4"', '6"', '5 1/4"']);
        expect(ceiling.across.coffers.map(printInches)).toEqual(['49 3/8"', '49 3/8"', '49 3/8"', '49 3/8"']);
        expect(ceiling.down.coffers.map(printInches)).toEqual(['55 1/2"', '55 1/2"', '55 1/2"']);
        expect(ceiling.lines.map(({ name, low, high }) => `${name} ${printInches((low + high) / 2)}`)).toEqual(['1 53 5/8"', '2 110"', '3 166 3/8"', 'A 59 3/4"', 'B 122 1/4"']);
        expect(ceiling.crossings.map(crossing => crossing.name)).toEqual(['A1', 'A2', 'A3', 'B1', 'B2', 'B3']);
        expect(ceiling.coffers).toHaveLength(12);
        expect(ceiling.coffers[5]).toMatchObject({ number: 6 });
    });

    test('195 pieces, every one', () => {
        expect(off.pieces).toHaveLength(195);
        expect(counted(off)).toEqual([
            '3 blocking north-south: 180 1/2", square and square', '3 bottom north-south: 180 1/2", square and square',
            '4 blocking east-west: 50 13/16", square and square', '4 blocking east-west: 50 1/16", square and square',
            '4 bottom east-west: 50 7/8", square and square', '4 bottom east-west: 50 1/8", square and square',
            ...SAME,
        ].sort());
    });

    test('12 butts with two #10 biscuits each, 24 in all', () => {
        const butts = off.joints.filter(joint => joint.kind === 'butt');
        expect(butts).toHaveLength(12);
        expect(butts.every(({ biscuits }) => biscuits?.count === 2 && biscuits.size === '#10')).toBe(true);
        expect(off.consumables.find(({ what }) => what === '#10 biscuits')?.count).toBe(24);
        expect(butts.find(({ at }) => at === 'crossing B2, west')?.pieces).toEqual(['parlor.bottom-B-2', 'parlor.bottom-2']);
    });

    test('corners, band and trim joints', () => {
        const count = (kind: string): number => off.joints.filter(joint => joint.kind === kind).length;
        expect(['corner', 'splice', 'band-corner', 'band-splice', 'trim-corner'].map(count)).toEqual([24, 0, 4, 2, 48]);
    });

    test('hands: the mitered end, seen from the coffer', () => {
        const hand = (id: string): unknown => off.pieces.find(piece => piece.id === `parlor.${id}`)?.hand;
        // In bay 1 of line A the miter is at the east end. From the coffer north of it one looks south: east is on the left.
        expect([hand('side-A-1-north'), hand('side-A-1-south'), hand('side-A-4-north'), hand('side-A-4-south')]).toEqual(['left', 'right', 'right', 'left']);
        // In bay 1 of line 1 the miter is at the south end. From the coffer west of it one looks east: south is on the right.
        expect([hand('side-1-1-west'), hand('side-1-1-east'), hand('side-1-3-west'), hand('side-1-3-east')]).toEqual(['right', 'left', 'left', 'right']);
        expect(hand('side-A-2-north')).toBeNull();
    });

    test('a row of bottoms with the edges they meet is the room inside the band', () => {
        const row = off.pieces.filter(({ part, line }) => part === 'bottom' && line === 'A');
        expect(row.reduce((sum, piece) => sum + piece.back, 0) + 3 * ticksOf('5 1/2"')).toBe(ticksOf('218 1/2"'));
    });
});

describe('the same room, bottoms through east-west', () => {
    const { ceiling, off } = both('east-west');

    test('218 1/2" is longer than a 16\' board: spliced on the crossing at 110"', () => {
        for (const name of ['A', 'B']) {
            expect(ceiling.lines.find(line => line.name === name)?.splices).toEqual([{ at: ticksOf('110"'), place: 'on line 2' }]);
        }
        expect(ceiling.lines.filter(line => line.runs === 'north-south').flatMap(line => line.splices)).toEqual([]);
    });

    test('every piece', () => {
        expect(counted(off)).toEqual([
            '4 blocking east-west: 109 1/4", square and square', '4 bottom east-west: 109 1/4", square and square',
            '3 blocking north-south: 56 15/16", square and square', '6 blocking north-south: 56 3/16", square and square',
            '3 bottom north-south: 57", square and square', '6 bottom north-south: 56 1/4", square and square',
            ...SAME,
        ].sort());
        expect(off.pieces).toHaveLength(199);
    });

    test('12 butts and 2 splices, with biscuits in both', () => {
        const count = (kind: string): number => off.joints.filter(joint => joint.kind === kind).length;
        expect(['butt', 'splice'].map(count)).toEqual([12, 2]);
        expect(off.consumables.find(({ what }) => what === '#10 biscuits')?.count).toBe(28);
        expect(off.joints.find(({ kind }) => kind === 'splice')?.pieces).toEqual(['parlor.bottom-A-a', 'parlor.bottom-A-b']);
    });
});

test('a piece says where it goes, what is done to it, and why it is that long', () => {
    const { off } = both('north-south');
    const piece = off.pieces.find(({ id }) => id === 'parlor.side-B-3-south')!;
    expect(piece).toMatchObject({ line: 'B', bay: 3, on: 'south', coffer: 11, where: 'line B, bay 3, south side', machining: ['rabbet 1/4" x 1/4" on the lower back edge'] });
    expect(piece.why.terms.map(({ what, times }) => `${times} x ${what}`)).toEqual(['1 x coffer', '2 x side']);
    expect(sumOf(piece.why)).toBe(ticksOf('50 7/8"'));
    expect(off.pieces.find(({ id }) => id === 'parlor.cleat-B-3-south')?.machining).toEqual(['rip to 3/4" x 3/4"']);
    expect(off.pieces.find(({ id }) => id === 'parlor.bottom-2')?.machining).toEqual([
        'ease the two back edges 1/16"', 'slots for 2 #10 biscuits in both edges, centered 59" from the north end', 'slots for 2 #10 biscuits in both edges, centered 121 1/2" from the north end',
    ]);
});
