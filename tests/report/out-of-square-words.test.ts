import { expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { SOUND } from '../../src/pipeline/standing.ts';
import { endsText, endText } from '../../src/report/cut-list/group.ts';
import { howToRead, humanCutList } from '../../src/report/cut-list/human.ts';
import type { House } from '../../src/report/house.ts';
import { handAtSaw } from '../../src/sawing/lie.ts';
import { hasNamedEnds } from '../../src/takeoff/cut-alike.ts';
import { endsFromTheLeft, isTurned } from '../../src/takeoff/ends.ts';
import { noPaint } from '../../src/report/look.ts';
import type { Piece } from '../../src/takeoff/model.ts';
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

test('what lies says which end leans, and which edge is the longer there', () => {
    expect(LIST.filter(line => line.endsWith('west end square; east end angled 0.24, longer at the south edge')).length).toBeGreaterThan(5);
    expect(LIST.some(line => line.endsWith('north end angled 0.24, longer at the west edge; south end angled 0.24, longer at the east edge'))).toBe(true);
    for (const { part, ends, corners: [back, backEnd, faceEnd, face] } of DEN_HOUSE.rooms[0]!.takeOff!.pieces.filter(piece => piece.part === 'bottom' && hasNamedEnds(piece))) {
        // from the corners alone: how far the second edge goes beyond the first at either end
        const way = { x: backEnd.x - back.x, y: backEnd.y - back.y }, eastWest = Math.abs(way.x) > Math.abs(way.y);
        const by = [[back, face], [faceEnd, backEnd]].map(([to, from]) => (to!.x - from!.x) * way.x + (to!.y - from!.y) * way.y);
        const edges = eastWest ? ['north', 'south'] : ['west', 'east'];
        if (eastWest ? face.y < back.y : face.x < back.x) edges.reverse();
        for (const [i, end] of ends.entries()) if (isTurned(end)) expect(endText({ part }, end)).toContain(`longer at the ${edges[by[i]! > 0 ? 1 : 0]!} edge`);
    }
});

test('left and right are explained wherever a row tells them', () => {
    expect(LIST.some(line => line.endsWith('miter 45.12 left, miter 45 right'))).toBe(true);
    const { pieces } = DEN_HOUSE.rooms[0]!.takeOff!, of = (part: string) => pieces.filter(piece => piece.part === part);
    expect(howToRead(pieces)).toContain('Left, right of two unlike ends: the face towards you, as it hangs.');
    expect([of('bottom'), of('blocking')].flatMap(howToRead).some(words => words.startsWith('Left, right'))).toBe(false);
    const grooved = of('side').map((piece): Piece => ({ ...piece, work: [{ kind: 'rabbet', width: 4064, height: 4064, edge: 'lower', face: 'back' }] }));
    expect(howToRead(grooved)).toContain('Left, right of two unlike ends: the face towards you, the groove edge down.');
    // a groove tells which edge is down, so that an end that leans is the left or the right one
    const leaning = grooved.filter(({ ends }) => ends.filter(isTurned).length === 1);
    expect(leaning.length).toBeGreaterThan(0);
    for (const piece of leaning) expect([endsText(piece), handAtSaw(piece)]).toEqual([expect.stringMatching(/ left, .* right$/), isTurned(endsFromTheLeft(piece)[0]) ? 'left' : 'right']);
});
