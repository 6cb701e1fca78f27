import { expect, test } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import type { SurveyPoint } from '../../src/job/survey.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Found } from '../../src/rules/rule.ts';
import { surveyUnclear } from '../../src/rules/survey-unclear.ts';
import { job, nowhere } from '../cutting/samples.ts';

type Row = readonly [x: string, y: string, up: string, row?: number];
const at = (line: number) => ({ ...nowhere, range: { start: { line, character: 0 }, end: { line, character: 5 } } });

/** What is told of readings in a room of 154" x 113", each on a line of its own, or in a row of `hall.csv`; and which lines stand beside it. */
function told(rows: readonly Row[], lacks = false): string[] {
    const found: Found[] = [], corners = [[0, 0], [154, 0], [154, 113], [0, 113]].map(([x, y]) => ({ x: inches(x!), y: inches(y!) }));
    const points = rows.map(([x, y, up, row], i): SurveyPoint => (
        { x: inches(x), y: inches(y), up: inches(up), at: at(i), ...row !== undefined && { inFile: { name: 'hall.csv', row, from: 'north-west' } } }
    ) as SurveyPoint);
    const ceiling = { width: inches(154), length: inches(113), walls: corners.map(from => ({ from })) }, room = { survey: { at: at(99), points, lacks } };
    surveyUnclear.check.room!({ layout: { room, ceiling } as unknown as Layout, job: job(), pieces: () => [] }, one => found.push(one));
    return found.flatMap(({ at: { range }, message, related = [] }) => [`${range.start.line}: ${message}`, ...related.map(one => `  ${one.at.range.start.line}: ${one.message}`)]);
}
const SOUND: readonly Row[] = [['0', '0', '14', 2], ['154', '0', '14', 3], ['154', '113', '14', 4]];
const BEYOND = 'the room is 12\' 10" along the north wall and 9\' 5" along the east wall. From which corner was it measured, and which way first?';

test('up to an inch beyond a wall a reading is taken at it, more is told with the wall that it is farthest beyond', () => {
    expect(told([...SOUND, ['155', '50', '14'], ['-1', '50', '14']])).toEqual([]);
    expect(told([...SOUND, ['155 1/64', '50', '14']])).toEqual([`3: This reading lies 1 1/64" beyond the east wall: ${BEYOND}`]);
    expect(told([...SOUND, ['50', '115', '14'], ['-2', '50', '14'], ['50', '-2', '14'], ['160', '116', '14']])).toEqual([
        `3: This reading lies 2" beyond the south wall: ${BEYOND}`, `4: This reading lies 2" beyond the west wall: ${BEYOND}`,
        `5: This reading lies 2" beyond the north wall: ${BEYOND}`, `6: This reading lies 6" beyond the east wall: ${BEYOND}`,
    ]);
});

test('rows of a file are told by their number, three of a kind one by one', () => {
    const far = (row: number): Row => ['160', `${row}`, '14', row];
    const one = (row: number): string => `${row - 2}: Row ${row} of \`hall.csv\`: this reading lies 6" beyond the east wall: ${BEYOND}`;
    expect(told([...SOUND, far(5), far(6), far(7)])).toEqual([one(5), one(6), one(7)]);
    expect(told([...SOUND, far(5), far(6), far(7), far(8)])).toEqual([one(5), one(6), one(7), '6: Rows of `hall.csv` that lie outside of the room too: 1, the first of them row 8.']);
    // lines of the text are told each
    expect(told([...SOUND, far(5), far(6), far(7), ['160', '8', '14'], ['160', '9', '14']])).toHaveLength(5);
});

test('a place that is read again is told with the first reading of it, wherever each of them stands', () => {
    const again = (row: number): Row => ['0', '0', '14 1/8', row];
    const words = (row: number): string[] => [
        `${row - 2}: Row ${row} of \`hall.csv\`: this place was read before in row 2: 1' 2" and now 1' 2 1/8", 1/8" apart. Read it again and keep one of the rows.`,
        '  0: row 2: the first reading here is 1\' 2"',
    ];
    expect(told([...SOUND, again(5)])).toEqual(words(5));
    expect(told([...SOUND, again(5), again(6), again(7), again(8), again(9)]))
        .toEqual([...[5, 6, 7].flatMap(words), '6: Rows of `hall.csv` that read a place again too: 2, the first of them row 8.']);
    expect(told([['0', '0', '14'], ['154', '0', '14'], ['154', '113', '14'], ['0', '0', '13 3/4']])).toEqual([
        '3: This place was read before: 1\' 2" and now 1\' 1 3/4", 1/4" apart. Read it again and keep one of the lines.', '  0: the first reading here is 1\' 2"',
    ]);
    expect(told([...SOUND, ['0', '0', '14', 5]])).toEqual([]);
});

test('what makes no surface: fewer than three places, or all in a row; where a file could not be read nobody knows', () => {
    expect(told([])).toEqual(['99: 0 readings can make no surface: nothing follows from this survey. Read three places at least, not in one row.']);
    expect(told([['0', '0', '14']])).toEqual(['99: 1 reading can make no surface: nothing follows from this survey. Read three places at least, not in one row.']);
    expect(told([['0', '0', '14'], ['10', '10', '14'], ['20', '20', '14']])[0]).toContain('3 readings in one row make no surface');
    expect(told([['0', '0', '14']], true)).toEqual([]);
});
