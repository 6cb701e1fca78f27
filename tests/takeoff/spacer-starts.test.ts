import { expect, test } from 'vitest';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import { runsBack } from '../../src/takeoff/lie.ts';
import { spacerStarts } from '../../src/takeoff/spacers.ts';
import { given } from '../cutting/samples.ts';

/**
 * Spacers of 3/4" and as wide as a channel of 5 1/2", in a bay that ends at something that leans: at 45 degrees its corner is half of the channel nearer than
 * its middle, so its middle stays half of its thickness and half of its width off, 3/8" + 2 3/4" = 3 1/8". Where the bay ends square, 3/8".
 */
const size = { thickness: inches('3/4'), width: inches('5 1/2') };
function centers(bay: string, leans: readonly [number, number], fromEnd: string, every = '24'): string[] {
    const from = inches(10), how = { every: given(inches(every)), fromEnd: given(inches(fromEnd)) };
    const starts = spacerStarts({ start: from, end: from + inches(bay), leans }, size, how);
    return starts.map(start => printInches(start - from + size.thickness / 2));
}

test.each<[string, readonly [number, number], string, string[]]>([
    // nearer to the end than it may stand
    ['12', [1, 0], '2', ['3 1/8"', '10"']], ['12', [0, 1], '2', ['2"', '8 7/8"']], ['12', [1, 1], '2', ['3 1/8"', '8 7/8"']],
    // as far from it as is said
    ['12', [1, 0], '4', ['4"', '8"']],
    // one in the middle of what is left between what it has to stay clear of: from 3 1/8" to 6 1/8"
    ['6 1/2', [1, 0], '6', ['4 5/8"']], ['6 1/2', [0, 1], '6', ['1 7/8"']],
    // just room for one, and a sixteenth less
    ['3 1/2', [1, 0], '6', ['3 1/8"']], ['3 7/16', [1, 0], '6', []], ['6 1/4', [1, 1], '6', ['3 1/8"']], ['6 3/16', [1, 1], '6', []],
])('in a bay of %s" whose ends lean by %j, %s" from them', (bay, leans, fromEnd, wanted) => {
    expect(centers(bay, leans, fromEnd)).toEqual(wanted);
});

// three ticks thick there is room in three; in two there is none
test('an odd tick of its thickness is no room that is lacking', () => {
    const how = { every: given(100), fromEnd: given(50) };
    const starts = (end: number): number[] => spacerStarts({ start: 0, end, leans: [0, 0] }, { thickness: 3, width: 9 }, how);
    expect([starts(3), starts(2)]).toEqual([[0], []]);
});

test('a piece is told from its west end, or of what lies nearer to north-south from its north end; at 45 degrees from the west', () => {
    const back = (...ways: [number, number][]): boolean[] => ways.map(([x, y]) => runsBack({ x, y }));
    expect(back([1, 0], [0, 1], [1, 1], [1, -1], [2, -1], [1, 2], [-1, 2])).toEqual([false, false, false, false, false, false, false]);
    expect(back([-1, 0], [0, -1], [-1, -1], [-1, 1], [-2, 1], [-1, -2], [1, -2])).toEqual([true, true, true, true, true, true, true]);
});
