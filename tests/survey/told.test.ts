import { describe, expect, test } from 'vitest';
import { surveyNotes } from '../../src/survey/told.ts';
import type { Surveyed } from '../../src/survey/survey.ts';
import { soundReadings } from '../../src/survey/readings.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import type { Survey } from '../../src/job/survey.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { exampleRoom } from '../support/example-room.ts';

/** A room whose sides hang level, after a search for a plane that was brought to its end or not. */
function notes(hanging: Surveyed['hanging'], proved: boolean, tilt = { east: 0, south: 0 }, moved = 0): string {
    const surveyed = {
        said: { scribe: { value: TICKS_PER_INCH / 4 } }, surface: { readings: [{ up: 14 * TICKS_PER_INCH }] }, hanging, moved,
        sides: [{ scribes: [], unknown: [] }],
        chosen: { plane: { at: 14 * TICKS_PER_INCH, ...tilt }, scribed: 0, deepest: 0, proved },
    } as unknown as Surveyed;
    return surveyNotes(surveyed, exampleRoom().job).join(' ');
}

describe('what is said of the plane that was chosen', () => {
    const following = { kind: 'following', slope: 1 / 480 } as const;

    test('that no other is better only where every plane was looked at', () => {
        expect(notes(following, true)).toContain('tilted, they would hang no better');
        expect(notes(following, false)).not.toContain('no better');
        expect(notes(following, false)).toContain('Not every plane was looked at: another may leave less to scribe.');
    });

    test('which way it rises, as far as a rule shows it', () => {
        expect(notes(following, true, { east: 1 / 480, south: -1e-7 })).toContain('held down as from one that rises 1/4" in 10\' to the east. ');
        expect(notes(following, true, { east: -1 / 480, south: 1 / 960 })).toContain('rises 1/4" in 10\' to the west and 1/8" in 10\' to the south');
    });

    /** ANSI/AWI 0620-2018, 3.4: installed work is level to 3.2 mm in 2438 mm, by its steepest way: sqrt(2) of both ways alike. */
    test('farther out of level than installed work may be it is told', () => {
        const words = 'Installed work is level to 1/8" in 8\' (ANSI/AWI 0620-2018, 3.4, plumb and level), and this is not';
        expect(notes(following, true, { east: 3.21 / 2438, south: 0 })).toContain(words);
        expect(notes(following, true, { east: 3.19 / 2438, south: 0 })).not.toContain('Installed work');
        expect(notes(following, true, { east: -2.3 / 2438, south: 2.3 / 2438 })).toContain(words);
        expect(notes(following, true, { east: -2.2 / 2438, south: 2.2 / 2438 })).not.toContain('Installed work');
        expect(notes({ kind: 'level' }, true)).not.toContain('Installed work');
    });

    test('nothing of that where the text says how they hang', () => {
        expect(notes({ kind: 'level', reading: 14 * TICKS_PER_INCH }, false)).not.toMatch(/looked at|no better/);
    });
});

test('how many places lay just outside of a wall', () => {
    const told = (moved: number): string => notes({ kind: 'level' }, true, { east: 0, south: 0 }, moved);
    expect(told(0)).not.toContain('outside');
    expect(told(1)).toContain('above the level line. 1 place lies outside of a wall by no more than 1/8", as a tape may be off: taken as on the wall.');
    expect(told(2)).toContain('2 places lie outside');
});

/** An L: the step stands 77" from the west and goes down from 65" to 113" from the north. */
test('a reading outside of a wall that stands back by no more than 1/8" is on it; one at a corner is in the corner', () => {
    const corners = [[0, 0], [154, 0], [154, 65], [77, 65], [77, 113], [0, 113]].map(([x, y]) => ({ x: inches(x!), y: inches(y!) }));
    const walls = corners.map((from, i) => ({ from, to: corners[(i + 1) % corners.length]! })) as unknown as Ceiling['walls'];
    const read = (...places: readonly (readonly [string, string])[]) => soundReadings({ width: inches(154), length: inches(113), walls }, {
        points: places.map(([x, y], i) => ({ x: inches(x), y: inches(y), up: inches(14) + i, at: undefined as never })),
    } as unknown as Survey);
    const inside: (readonly [string, string])[] = [['1', '1'], ['40', '2'], ['30', '100']];
    const found = read(...inside, ['100', '65 1/8'], ['77 1/16', '90'], ['154 1/16', '30'], ['154 1/16', '65 1/16']);
    expect(found.points.slice(3).map(({ x, y }) => [x, y].map(printInches).join())).toEqual(['100",65"', '77",90"', '154",30"', '154",65"']);
    expect([found.moved, found.troubles]).toEqual([4, []]);
    const beyond = read(...inside, ['100', '65 3/16'], ['77 3/16', '90']);
    expect([beyond.moved, beyond.troubles.map(({ kind }) => kind), beyond.points.length]).toEqual([0, ['outside', 'outside'], 3]);
});
