import { describe, expect, test } from 'vitest';
import { surveyNotes } from '../../src/survey/told.ts';
import type { Surveyed } from '../../src/survey/survey.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { exampleRoom } from '../support/example-room.ts';

/** A room whose sides hang level, after a search for a plane that was brought to its end or not. */
function notes(hanging: Surveyed['hanging'], proved: boolean, tilt = { east: 0, south: 0 }): string {
    const surveyed = {
        said: { scribe: { value: TICKS_PER_INCH / 4 } }, surface: { readings: [{ up: 14 * TICKS_PER_INCH }] }, hanging, sides: [{ scribes: [], unknown: [] }],
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

    test('nothing of that where the text says how they hang', () => {
        expect(notes({ kind: 'level', reading: 14 * TICKS_PER_INCH }, false)).not.toMatch(/looked at|no better/);
    });
});
