import { describe, expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { HALL } from '../../src/rules/support/examples.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { allFindings } from './found.ts';

/** What is found of a register so big, with its center so far from the west wall and 2' 3" from the north: line 1 stands from 4' to 4' 5" there. */
async function found(words: string): Promise<string[]> {
    const text = HALL.replace(`  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture grille register ${words}\n`);
    const workspace = await TestWorkspace.open({ 'hall.coffer': text });
    return allFindings(readFile(workspace.document('hall.coffer'))).map(({ rule, message }) => `${rule}: ${message}`);
}

describe('a register is a rectangle, and lies one way or the other', () => {
    // its edge at 3' 7" + 10"/2 = 4', where the beam begins; across it, at 3' 7" + 4"/2 = 3' 9"
    test('along the north wall it reaches as far as its first figure says', async () => {
        expect(await found('at 3\' 7", 2\' 3" size 10" x 4"')).toEqual([]);
        expect(await found('at 3\' 7 1/2", 2\' 3" size 10" x 4"')).toEqual([expect.stringMatching(/^fixture-in-beam: grille, 10" by 4", is where line 1 goes. It is clear 1\/2" farther west/)]);
        expect(await found('at 3\' 10", 2\' 3" size 4" x 10"')).toEqual([]);
        expect(await found('at 3\' 10 1/32", 2\' 3" size 4" x 10"')).toEqual([expect.stringMatching(/4" by 10", is where line 1 goes. It is clear 1\/32" farther west/)]);
    });

    test('what is to be kept clear comes on top of it, the way it lies', async () => {
        expect(await found('at 3\' 8", 2\' 3" size 4" x 10" keep-clear 2"')).toEqual([]);
        expect(await found('at 3\' 8 1/2", 2\' 3" size 4" x 10" keep-clear 2"')).toEqual([expect.stringMatching(/closer to line 1 than the 2" to be kept clear. It is clear 1\/2" farther west/)]);
    });

    test('a wall is reached by the side that lies towards it', async () => {
        expect(await found('at 3", 2\' 3" size 4" x 10"')).toEqual([]);
        expect(await found('at 3", 2\' 3" size 10" x 4"')).toEqual([expect.stringMatching(/^fixture-outside-room: grille, 10" by 4", reaches 2" into the west wall/)]);
        expect(await found('at 2\', 3" size 4" x 10"')).toEqual([expect.stringMatching(/^fixture-outside-room: grille, 4" by 10", reaches 2" into the north wall/)]);
    });

    test('an alarm is as far from it as from its nearest edge', async () => {
        // 3' 6" from center to center, 5" to the edge of the register and 3" of the alarm: 34"; across it 37"
        const alarm = '\n  fixture smoke smoke-alarm at 2\', 5\' 9" diameter 6"';
        expect(await found(`at 2', 2' 3" size 4" x 10"${alarm}`)).toEqual([expect.stringMatching(/^alarm-in-draft: smoke is 2' 10" from grille/)]);
        expect(await found(`at 2', 2' 3" size 10" x 4"${alarm}`)).toEqual([]);
    });

    test('one that says its width alone is taken to be square, and one that says a diameter to be round', async () => {
        // 39 1/2" east and 22" south of it, 3" of the alarm: from the corner of a square of 10" hypot(34 1/2, 17) - 3 = 35 15/32", from a circle 37 7/32"
        const alarm = '\n  fixture smoke smoke-alarm at 5\' 3 1/2", 4\' 1" diameter 6"';
        expect(await found(`at 2', 2' 3" width 10"${alarm}`)).toEqual([expect.stringMatching(/^alarm-in-draft: smoke is ~2' 11 15\/32" from grille/)]);
        expect(await found(`at 2', 2' 3" diameter 10"${alarm}`)).toEqual([]);
        expect(await found('at 3\' 7 1/2", 2\' 3" width 10"')).toEqual([expect.stringMatching(/^fixture-in-beam: grille, 10" across, is where line 1 goes. It is clear 1\/2" farther west/)]);
    });

    test('its size takes the place of another one', async () => {
        expect((await found('at 2\', 2\' 3" width 10" size 10" x 4"')).length).toBe(1);
    });
});
