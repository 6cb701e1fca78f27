import { expect, test } from 'vitest';
import { usesOf } from '../../src/cutting/uses.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { TestWorkspace } from '../support/workspace.ts';

/**
 * Beams of 5" in a room of 144" by 110": coffers of (144 - 5) / 2 = 69 1/2" by (110 - 10) / 3 = some 33 3/8", so that mitered sides along A and B are
 * some 70" long, and those along 1 some 35".
 */
async function uses(cut: string): Promise<(readonly [name: string, use: string])[]> {
    const workspace = await TestWorkspace.open({ 'den.coffer': `edition 1
stock elm-1x4 { size 1x4; lengths 8', 16' }
stock elm-1x6 { size 1x6; lengths 8', 16' }
profile box {
  blocking { stock elm-1x4 }
  sides { stock elm-1x6 }
  bottom { stock elm-1x4 }
}
room den {
  wall north 144"
  wall east 110"
  grid { coffers-north 2; coffers-east 3; beams box; through north-south }
  measured {
    cut 16' of elm-1x6 ${cut}
  }
}
` });
    const [layout] = inspect(readFile(workspace.document('den.coffer'))).layouts;
    return [...usesOf(layout!.room, takeOffOf(layout!.ceiling!).pieces)].map(([{ value }, { use }]) => [value, use ? `${use.how} ${use.into.part} of line ${use.into.line}` : 'none']);
}

test('a side that was cut too short for its place is made into a shorter one of its room', async () => {
    expect(await uses('into side-A-1-north at 40" mitered 45°, 45°')).toEqual([['side-A-1-north', 'trim side of line 1']]);
});

test('too short for all of them it has no use; long enough for its own place it is recut for that, or for none', async () => {
    expect(await uses('into side-A-1-north at 12" mitered 45°, 45°')).toEqual([['side-A-1-north', 'none']]);
    expect(await uses('into side-A-1-north at 80" mitered 45°, 45°')).toEqual([['side-A-1-north', 'none']]);
});
