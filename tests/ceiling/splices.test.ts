import { SIDES } from '../../src/job/model.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { areWithin, spliceAnywhere, spliceOnCrossings } from '../../src/ceiling/splices.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { exampleRoom } from '../support/example-room.ts';
import { ticksOf, type RoomWords } from '../support/job-builder.ts';
import { runs } from '../support/full.ts';

const at = (...positions: number[]) => positions.map((position, i) => ({ at: position, place: `on line ${i + 1}` }));
const chosen = (to: number, most: number, crossings: number[], neighbor: number[] = []) =>
    spliceOnCrossings({ from: 0, to, most, crossings: at(...crossings), neighbor: at(...neighbor), step: 1 })?.map(splice => splice.at);

describe('splices on the crossings', () => {
    test('none where the board is long enough', () => expect(chosen(100, 100, [50])).toEqual([]));
    test('one in the middle', () => expect(chosen(218, 191, [53, 109, 165])).toEqual([109]));
    test('as few as the boards allow, and then the longest piece as short as can be', () => {
        expect(chosen(300, 160, [50, 100, 150, 200, 250])).toEqual([150]);
        expect(chosen(300, 120, [50, 100, 150, 200, 250])).toEqual([100, 200]);
        expect(chosen(300, 100, [50, 100, 150, 200, 250])).toEqual([100, 200]);
    });
    test('where two are as good, away from the neighboring line\'s', () => {
        const apart = ticksOf('60"');
        expect(chosen(3 * apart, 2 * apart, [apart, 2 * apart])).toEqual([apart]);
        expect(chosen(3 * apart, 2 * apart, [apart, 2 * apart], [apart])).toEqual([2 * apart]);
    });
    test('on the marks of the tape, counted from where the run starts', () => {
        // centers at 105 and 203 from a run that starts at 7 are 98 and 196 along it; the tape has marks at 96 and 200
        const run = { from: 7, to: 307, most: 120, crossings: at(105, 203), neighbor: [], step: 8 };
        expect(spliceOnCrossings(run)?.map(splice => splice.at)).toEqual([7 + 96, 7 + 200]);
    });
    test('two choices whose longest pieces differ by a step of the tape at most are as good: then away from the neighboring line\'s', () => {
        // breaking 300" at 148" or at 160" leaves 152" or 160" as the longest piece: 8" apart
        const inch = ticksOf('1"'), breaks = (step: number) => spliceOnCrossings({
            from: 0, to: 300 * inch, most: 190 * inch, crossings: at(148 * inch, 160 * inch), neighbor: at(148 * inch), step: step * inch,
        })?.map(splice => splice.at / inch);
        expect(breaks(4)).toEqual([148]);
        expect(breaks(8)).toEqual([160]);
    });
    test('a stretch that is just as long as the board is within it', () => {
        expect([areWithin([0, 100, 150], 100), areWithin([0, 100, 201], 100), areWithin([7, 107], 100), areWithin([0], 1)]).toEqual([true, false, true, true]);
    });
    test('anywhere: a run that is no longer than the board needs none, wherever it starts', () => {
        const inch = ticksOf('1"'), run = { neighbor: [], step: 1, isClear: () => true, place: () => '' };
        expect(spliceAnywhere({ ...run, from: 40 * inch, to: 135 * inch, most: 95 * inch })).toEqual([]);
        // an inch more: in two of 48", the middle of the run
        expect(spliceAnywhere({ ...run, from: 40 * inch, to: 136 * inch, most: 95 * inch })?.map(({ at }) => at / inch)).toEqual([88]);
    });
    test('no choice will do', () => expect(chosen(300, 90, [100, 200])).toBeUndefined());
    test('never a piece longer than the board, never a splice more than needed', () => {
        fc.assert(fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 999 }), { maxLength: 10 }), fc.integer({ min: 50, max: 1000 }), (crossings, most) => {
            const sorted = [...crossings].sort((a, b) => a - b);
            const splices = chosen(1000, most, sorted);
            const stops = [0, ...sorted, 1000];
            if (!splices) { expect(stops.some((stop, i) => i > 0 && stop - stops[i - 1]! > most)).toBe(true); return; }
            const ends = [0, ...splices, 1000];
            ends.forEach((end, i) => { if (i > 0) expect(end - ends[i - 1]!).toBeLessThanOrEqual(most); });
            expect(splices.every(splice => sorted.includes(splice))).toBe(true);
            expect(splices.length).toBe(fewestByTrying(stops, most) - 1);
        }), { seed: 10, numRuns: runs(300) });
    });
});

/** Breadth first: the least number of pieces, with nothing clever about it. */
function fewestByTrying(stops: readonly number[], most: number): number {
    let reached = new Set([0]);
    for (let pieces = 1; ; pieces++) {
        const next = new Set<number>();
        for (const from of reached) for (const to of stops) if (to > from && to - from <= most) next.add(to);
        if (next.has(stops.at(-1)!)) return pieces;
        reached = next;
    }
}

describe('splices of a room', () => {
    const laid = (words: RoomWords) => layOut(exampleRoom({ through: 'east-west', ...words }));
    const of = (words: RoomWords, name: string) =>
        laid(words).ceiling?.lines.find(line => line.name === name)?.splices.map(splice => [printInches(splice.at), splice.place]);

    test('the band breaks on the center of a line too; north and south run full', () => {
        const { around } = laid({}).ceiling!;
        expect(SIDES.map(side => around[side]!.splices)).toEqual([at(0, ticksOf('110"')).slice(1), [], at(0, ticksOf('110"')).slice(1), []]);
    });
    test('neighboring lines are staggered where two crossings are as good', () => {
        // 238 1/2" inside the band: in pieces of 79" and 159 1/2", or the other way round
        const three: RoomWords = { north: { coffers: 3 }, width: `20'` };
        expect([of(three, 'A'), of(three, 'B')]).toEqual([[['79 3/32"', 'on line 1']], [['160 29/32"', 'on line 2']]]);
    });
    test('where the line says so', () => {
        expect(of({ lines: { B: { splices: [{ at: '110"', from: 'east' }] } } }, 'B')).toEqual([['110"', 'on line 2']]);
        expect(of({ lines: { B: { splices: ['140"', '60"'] } } }, 'B')).toEqual([['60"', 'in bay 2'], ['140"', 'in bay 3']]);
    });
    test('from whatever the line meets, and a line that stops at lines from its own ends', () => {
        // lines 1, 2, 3 of the example stand at 53 5/8", 110" and 166 3/8"
        const from = (name: string) => of({ lines: { B: { splices: [{ at: '6"', from: name }] } } }, 'B')?.map(([at]) => at);
        expect(['west', 'wall-west', 'east', '1', '3'].map(from)).toEqual([['6"'], ['6"'], ['214"'], ['59 5/8"'], ['172 3/8"']]);
        const partWay = (splice: { at: string; from?: string }) => of({ lines: { B: { from: '1', until: '3', splices: [splice] } } }, 'B')?.map(([at]) => at);
        expect([{ at: '40"' }, { at: '40"', from: 'west' }, { at: '40"', from: 'east' }, { at: '40"', from: '3' }, { at: '0"', from: '2' }].map(partWay))
            .toEqual([['93 5/8"'], ['93 5/8"'], ['126 3/8"'], ['126 3/8"'], ['110"']]);
    });
    test('from what it does not meet: that is told, with what there is', () => {
        expect(laid({ lines: { B: { splices: [{ at: '60"', from: 'north' }] } } }).troubles).toMatchObject([{ kind: 'unknown-meeting', name: 'north', has: ['west', 'east', '1', '2', '3'] }]);
    });
    test.each([
        [{ lines: { 2: { splices: ['60"'] } } }, 'cut anyway'],
        [{ lines: { B: { splices: ['300"'] } } }, `25'`],
    ] as [RoomWords, string][])('a splice that cannot be: %j', (words, what) => {
        expect(laid(words).troubles.filter(trouble => trouble.kind === 'not-supported')).toMatchObject([{ what: expect.stringContaining(what) }]);
    });
});
