import { expect, test } from 'vitest';
import type { Group, Item } from '../../src/drawing/display-list.ts';
import { drawPanePlan } from '../../src/drawing/index.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { TestWorkspace } from '../support/workspace.ts';

const ROOM = `edition 1
stock board-6 { thickness 3/4"; width 5 1/2"; lengths 16' }
stock board-8 { thickness 3/4"; width 7 1/4"; lengths 16' }
profile box { blocking { stock board-6 }; sides { stock board-8 }; bottom { stock board-6 } }
room den {
  wall north 14'
  wall east 11'
  ceiling { height 9' }
  fixture press cabinet on south at 2' width 4' depth 2' height 7'
  fixture win casing on east at 3' width 3' height 7'
  grid { coffers-north 3; coffers-east 2; beams box; through north-south; perimeter { kind none } }
}
`;

test('what stands at a wall is on the plan, where it stands and as far out, with its name', async () => {
    const workspace = await TestWorkspace.open({ 'den.coffer': ROOM });
    const { ceiling } = inspect(readFile(workspace.document('den.coffer'))).layouts[0]!;
    const { items } = drawPanePlan(ceiling!, takeOffOf(ceiling!), { width: 900, height: 700 });
    const groups = items.flatMap(groupsIn), find = (id: string): Group => groups.find(group => group.id === id)!;
    const outline = (id: string) => {
        const [shape] = find(id).items.flatMap(item => (item.kind === 'polyline' ? [item.points] : []));
        const [xs, ys] = [shape!.map(([x]) => x), shape!.map(([, y]) => y)];
        return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), foot: Math.max(...ys) };
    };
    const press = outline('fixture.press'), win = outline('fixture.win'), perFoot = (press.right - press.left) / 4;
    expect((press.foot - press.top) / perFoot).toBeCloseTo(2, 3);
    expect((win.foot - win.top) / perFoot).toBeCloseTo(3, 3);
    // the press begins 2' from the west end of the south wall, the casing 3' from the north end of the east wall: corners of the room are 11' and 14' apart
    expect([(win.right - press.left) / perFoot, (press.foot - win.top) / perFoot]).toEqual([expect.closeTo(12, 3), expect.closeTo(8, 3)]);
    const words = [find('fixture.press'), find('fixture.win')].map(({ items: own }) => own.flatMap(item => (item.kind === 'text' ? [item.text] : [])).join());
    expect(words).toEqual(['press', 'win']);
});

function groupsIn(item: Item): Group[] {
    return item.kind === 'group' ? [item, ...item.items.flatMap(groupsIn)] : [];
}
