import { expect, test } from 'vitest';
import { readFile } from '../../../src/language/read-file.ts';
import { printLength } from '../../../src/quantity/print-length.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const DETAIL = `edition 1
stock poplar-1x4 { size 1x4; lengths 8', 16' }
stock poplar-1x6 { size 1x6; lengths 8', 16' }
profile box(deep: Stock = poplar-1x6) {
  blocking { stock poplar-1x4 }
  sides { stock deep; rabbet 1/4" x 1/4" on lower-back; corners mitered }
  cleats { rip 3/4" x 3/4" from poplar-1x4 }
  bottom { stock poplar-1x4 }
}
profile plain like box { sides.held-down 3/8" }
`;
const DEN = `edition 1
from "./box.coffer" use box
room den {
  wall north 15'
  wall east 12'
  grid { lines-north 5', 10'; coffers-east 2; beams box; through north-south }
  line A { beams box }
  fixture lamp light at 3', 3'
}
`;
const house = (...alternates: string[]): string => `edition 1
from "./box.coffer" use plain, poplar-1x4
from "./den.coffer" use den
job "Pear Row 3" { currency "USD" }
${alternates.join('\n')}
`;
const read = async (...alternates: string[]) => {
    const workspace = await TestWorkspace.open({ 'box.coffer': DETAIL, 'den.coffer': DEN, 'house.coffer': house(...alternates) });
    return { workspace, content: readFile(workspace.document('house.coffer')), den: readFile(workspace.document('den.coffer')).rooms[0]! };
};

test('a change reaches the grid, a wall, a line, a fixture and what is within the profile, and nothing else', async () => {
    const { content, den } = await read(`alternate wide "Three by three" {
  den.grid.coffers-north 3
  den.grid { coffers-east 3 }
  den.grid.beams.sides.corners butted
  den.grid.beams.sides.rabbet 3/8" x 1/4" on lower-back
  den.north 16'
  den.A.beams plain
  den.lamp light at 4', 4'
}`);
    expect(content.findings).toEqual([]);
    const [alternate] = content.alternates;
    const { instead, room, findings } = alternate!.rooms[0]!;
    expect([alternate!.name, alternate!.title, instead]).toEqual(['wide', 'Three by three', den]);
    expect(findings).toEqual([]);
    expect([room.grid!.north, room.grid!.east]).toMatchObject([{ by: 'number', coffers: { value: 3 } }, { by: 'number', coffers: { value: 3 } }]);
    expect(room.walls[0]!.length!.value.ticks).not.toBe(den.walls[0]!.length!.value.ticks);
    expect(room.lines[0]!.beams!.value.name).toBe('plain');
    expect(printLength(room.fixtures[0]!.x!)).toBe(`4'`);
    const { value: profile } = room.grid!.beams!;
    expect([profile.sides!.corners.value, printLength(profile.sides!.rabbet!.value.width.ticks), profile.isDefault, profile.label]).toEqual(['butted', '3/8"', false, 'box, changed']);
    expect(profile.key).not.toBe(den.grid!.beams!.value.key);
    // the room itself is as it was
    expect(den.grid).toMatchObject({ north: { by: 'lines' }, east: { by: 'number', coffers: { value: 2 } } });
    expect(den.grid!.beams!.value.sides!.corners.value).toBe('mitered');
});

test('what reading a changed room finds and the room itself has not stays with the alternate', async () => {
    const { content } = await read('alternate odd { den.grid.coffers-east 2.5; den.grid.beams.bottom.gap 1/16" to 1/32" }');
    expect(content.findings.map(({ rule }) => rule)).toEqual([]);
    expect(content.alternates[0]!.rooms[0]!.findings.map(({ rule, at }) => [rule, at.uri.endsWith('house.coffer')])).toEqual([['range-upside-down', true]]);
});

test('a room of its own may say something otherwise within its profile too', async () => {
    const { workspace } = await read();
    await workspace.edit({ 'den.coffer': DEN.replace('beams box;', 'beams box; beams.sides.corners butted;') });
    const { rooms: [room], findings } = readFile(workspace.document('den.coffer'));
    expect([room!.grid!.beams!.value.sides!.corners.value, findings.map(one => one.message)]).toEqual(['butted', []]);
});

test('a change of the room reaches the alternates of another file', async () => {
    const { workspace } = await read('alternate wide { den.grid.coffers-north 4 }');
    await workspace.edit({ 'den.coffer': DEN.replace(`wall east 12'`, `wall east 13'`) });
    const { alternates } = readFile(workspace.document('house.coffer'));
    expect(printLength(alternates[0]!.rooms[0]!.room.walls[1]!.length!.value.ticks)).toBe(`13'`);
});
