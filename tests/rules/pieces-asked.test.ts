import { expect, test } from 'vitest';
import { isLaidOut, layOut } from '../../src/ceiling/layout.ts';
import type { Layout } from '../../src/ceiling/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { RULES } from '../../src/rules/index.ts';
import { changed, HALL } from '../../src/rules/support/examples.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { TestWorkspace } from '../support/workspace.ts';

/** The rules that ask for the pieces of the hall, which takes longer than all else that is done at a keystroke. */
async function asking(text: string): Promise<string[]> {
    const workspace = await TestWorkspace.open({ 'hall.coffer': text }), asked = new Set<string>();
    const [layout] = readFile(workspace.document('hall.coffer')).rooms.map(layOut) as [Layout];
    for (const { name, check } of RULES) {
        const pieces = () => { asked.add(name); return isLaidOut(layout) ? takeOff(layout.ceiling).pieces : []; };
        check.room?.({ layout, job: layout.room.job, pieces }, () => {});
    }
    return [...asked];
}
const said = (words: string): string => changed(HALL, '    through        north-south\n  }\n', `    through        north-south\n  }\n  ${words}\n`);
const OF_RECORDS = ['cut-from-other-stock', 'cut-no-longer-fits', 'cut-twice', 'cut-without-record', 'no-such-piece', 'offcut-too-short'];

test.each<[string, string, string[]]>([
    ['nothing asks for it', HALL, []],
    ['a name asks for it', said('measured { spoiled side-A-1-north }'), ['no-such-piece']],
    ['a board that was cut', said(`measured { cut 8' of poplar-1x4 into bottom-A-1 at 48 3/4" }`), OF_RECORDS],
    ['a board that was measured', said('measured { board b1 poplar-1x4 { width 3 3/8" } }'), ['board-off-size']],
    ['an order', said('put-up { order sides before bottoms }'), ['order-names-nothing', 'order-of-itself']],
    ['an order of rooms and days alone', said('put-up { from-day 2 }'), ['order-names-nothing']],
    ['joists whose first one is known', said(`ceiling { height 9'; joists 2x8 every 16" running east-west first-center 8 1/2" }`), ['blocking-misses-joist', 'hangs-by-one-edge']],
    ['joists of which nobody knows where they are', said(`ceiling { height 9'; joists 2x8 every 16" running east-west }`), []],
    // the longest is 9' 5", and 1" is trimmed off
    ['boards that are as long as the room', changed(HALL, 'stock poplar-1x4 { size 1x4 }', `stock poplar-1x4 { size 1x4; lengths 12' 11 1/32" }`), []],
])('pieces are made where a rule needs them: %s', async (_, text, rules) => {
    expect(await asking(text)).toEqual(rules);
});
