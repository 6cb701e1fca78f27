import { expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { SOUND } from '../../src/pipeline/standing.ts';
import { humanCutList } from '../../src/report/cut-list/human.ts';
import type { House } from '../../src/report/house.ts';
import { isTurned } from '../../src/takeoff/ends.ts';
import { noPaint } from '../../src/report/look.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { house } from './samples.ts';

/** A room whose south wall is 5/8" too long, so that what ends along its east wall leans by a quarter of a degree. */
const DEN = `edition 1
stock board-4 { thickness 3/4"; width 3 1/2"; lengths 16' }
stock board-6 { thickness 3/4"; width 5 1/2"; lengths 16' }
stock strip-2 { thickness 3/4"; width 1 1/2"; lengths 16' }
profile box {
  blocking { stock board-4 }
  sides { stock board-6; corners butted past north-south }
  cleats { rip 3/4" x 3/4" from board-6 }
  bottom { stock board-4 }
  trim { stock strip-2 }
}
room den {
  wall north 14' 7 1/4"
  wall east 12' 3"
  wall south 14' 7 7/8"
  wall west 12' 3"
  diagonal north-west to south-east measures 19' 1 7/32"
  grid { coffers-north 3; coffers-east 3; beams box; through north-south; perimeter { kind half-beam; width 2 3/4" } }
}
`;

const DEN_HOUSE = await (async (): Promise<House> => {
    const workspace = await TestWorkspace.open({ 'room.coffer': DEN });
    const { layouts: [layout] } = inspect(readFile(workspace.document('room.coffer'))), { room } = layout!;
    return { ...house, job: room.job, rooms: [{ room, takeOff: takeOffOf(layout!.ceiling!), standing: SOUND }] };
})();
/** As it is printed, every row of a batch in one line. */
const LIST = humanCutList([DEN_HOUSE], noPaint).replaceAll(/ {2,}/g, ' ').split('\n').map(line => line.trim());

test('what is square at both ends has one length, whatever whole ticks leave of its corners', () => {
    const square = LIST.filter(line => line.endsWith('square both ends'));
    expect(square.length).toBeGreaterThan(5);
    for (const row of square) expect(row).toMatch(/^\d+ x [^a-z]+ square both ends$/);
    expect(DEN_HOUSE.rooms[0]!.takeOff!.pieces.some(({ ends, cutBack, cutFace }) => ends.every(end => !isTurned(end)) && cutBack !== cutFace)).toBe(true);
});
