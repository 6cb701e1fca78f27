import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { itemsExtent } from '../../src/drawing/extent.ts';
import { drawSheets, type Sheet } from '../../src/drawing/index.ts';
import { placeIn } from '../../src/plane/polygon.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { outside, touching } from './support/checks.ts';
import { groupOf, groups, leaves, texts } from './support/walk.ts';

/** Plans of rooms of any walls, and of lines that run part way or askew. */
const BEAM = `edition 1

stock plank { thickness 3/4"; width 5 1/2"; lengths 22' }
stock wide-plank { thickness 3/4"; width 7 1/4"; lengths 22' }
stock lath { thickness 3/4"; width 1 1/2"; lengths 22' }

profile box {
  blocking { stock plank; relief 0" }
  sides { stock wide-plank }
  cleats { rip 3/4" x 3/4" from lath }
  bottom { stock plank; gap 0" to 0" }
  trim { stock lath }
}
`;
const grid = (count: number) => `grid { coffers-north ${count}; coffers-east ${count}; beams box; through north-south; splices never; perimeter { kind band; stock wide-plank; splices never } }`;
const GARDEN_HALL = `${BEAM}
room garden-hall {
  wall hearth 18'
  wall garden 7'
  wall porch 8'
  wall stair 8' heading south
  wall door 10'
  wall street 15'
  ${grid(1)}
  line 1 { at 5' from wall-street }
  line A { at 4' 6" from wall-hearth }
  line stub-north { at 13' 6" from wall-street; until A }
  line lintel-by-the-door { at 3' 6" from wall-door; from 1 }
}`;
const CARD_ROOM = `${BEAM}
room card-room {
  wall north 16'
  wall east 13'
  ${grid(1)}
  line A { at 4' 6" from wall-north }
  line B { at 4' 6" from wall-south }
  line juniper { at 6' from wall-west; until A }
  line south-of-juniper { at 6' from wall-west; from B }
}`;

interface Drawn { readonly ceiling: Ceiling; readonly plan: Sheet }
async function drawn(text: string): Promise<Drawn> {
    const [layout] = await layoutsOf(text), ceiling = layout!.ceiling!;
    return { ceiling, plan: drawSheets(ceiling, takeOff(ceiling))[0]! };
}
const worked = (name: string) => readFile(new URL(`../takeoff/worked/${name}.coffer`, import.meta.url), 'utf8');
const wordsOf = (plan: Sheet, id: string) => texts([groupOf(plan, id)]).map(run => run.text);

const ALL: Readonly<Record<string, () => Promise<string>>> = {
    'garden hall': async () => GARDEN_HALL, 'card room': async () => CARD_ROOM,
    ...Object.fromEntries(['supper-room', 'angle-parlor', 'lantern-room', 'hearth-and-window', 'crooked-parlor'].map(name => [name, () => worked(name)])),
};
describe.each(Object.entries(ALL))('%s', (_name, text) => {
    test('every line is named once, no two texts touch, all stands on the sheet, and coffers are named inside themselves', async () => {
        const { ceiling, plan } = await drawn(await text());
        for (const { name } of ceiling.lines) expect(wordsOf(plan, `line.${name}`)).toEqual([name]);
        expect(touching(plan)).toEqual([]);
        expect(outside(plan)).toEqual([]);
        const { pointsPerTick, origin: [left, foot] } = plan.measured!;
        for (const { number, outline } of ceiling.coffers) {
            const runs = texts([groupOf(plan, `coffer.${number}`)]);
            expect(runs[0]!.text).toBe(String(number));
            for (const { at: [x, y] } of runs) {
                expect(placeIn(outline, { x: Math.round((x - left) / pointsPerTick), y: Math.round((y - foot) / pointsPerTick + ceiling.length) })).toBe('inside');
            }
        }
    });
});

test('a line that runs part way has its center line over its own stretch alone', async () => {
    const { plan, ceiling } = await drawn(CARD_ROOM), { pointsPerTick, origin: [, foot] } = plan.measured!;
    const far = (name: string) => leaves([groupOf(plan, `line.${name}`)]).flatMap(item => (item.kind === 'line' ? [item.from[1], item.to[1]] : []));
    const face = (name: string) => ceiling.lines.find(line => line.name === name)!;
    const at = (ticks: number) => foot + (ticks - ceiling.length) * pointsPerTick;
    expect(Math.max(...far('juniper'))).toBeCloseTo(at(face('A').low) + 4, 1);
    expect(Math.min(...far('south-of-juniper'))).toBeCloseTo(at(face('B').high) - 4, 1);
});

test('strings go by all places at which lines stand, and the walls tell their lengths', async () => {
    const { plan } = await drawn(GARDEN_HALL);
    expect(wordsOf(plan, 'dimensions.across.centers')).toEqual([`5'`, `8' 6"`, `4' 6"`]);
    expect(wordsOf(plan, 'dimensions.across.parts').sort()).toEqual([`4' 7 3⁄4"`, `7"`, `7' 11"`, `7"`, `4' 1 3⁄4"`, `3⁄4"`, `3⁄4"`].sort());
    expect(wordsOf(plan, 'dimensions.down.centers')).toEqual([`3' 6"`, `7'`, `4' 6"`]);
    const walls = groups(plan.items).filter(({ id }) => id.startsWith('wall.')).map(({ id }) => [id, ...wordsOf(plan, id)]);
    expect(walls).toEqual([['wall.garden', `7'`], ['wall.porch', `8'`], ['wall.stair', `8'`], ['wall.door', `10'`]]);
    const { plan: card } = await drawn(CARD_ROOM);
    expect(wordsOf(card, 'dimensions.across.centers')).toEqual([`6'`, `10'`]);
});

test('lines at 45 degrees: by their centers along the wall at which they begin; lengths are turned along them', async () => {
    const { plan } = await drawn(await worked('lantern-room'));
    // a room of 14', lines 2/3 and 1/3 along its walls: worked out by hand
    expect(wordsOf(plan, 'dimensions.wall.hearth.lines')).toEqual([`4' 8"`, `9' 4"`]);
    expect(wordsOf(plan, 'dimensions.wall.street.lines')).toEqual([`4' 8"`, `4' 8"`, `4' 8"`]);
    expect(groups(plan.items).some(({ id }) => id.startsWith('dimensions.across'))).toBe(false);
    const turns = groups(plan.items).filter(({ id }) => id.startsWith('length.')).flatMap(group => texts([group]).map(run => Math.abs(run.turned)));
    expect(turns.length).toBeGreaterThan(6);
    expect([...new Set(turns)]).toEqual([45]);
    const words = texts(plan.items).map(run => run.text).join(' ');
    expect(words).toContain('along the wall at which they begin');
    expect(words).not.toContain('from the west and the north wall');
});

test('a coffer round a ring has its number beside the ring, and no other coffer has it', async () => {
    const { plan } = await drawn(`${BEAM}
room gallery {
  wall north 16'
  wall east 14'
  ${grid(3)}
  line 1 { from A; until B }
  line 2 { from A; until B }
  line A { from 1; until 2 }
  line B { from 1; until 2 }
}`);
    const ring = groups(plan.items).filter(({ piece }) => piece?.includes('.side-')).flatMap(each => itemsExtent([each]) ?? []);
    const west = Math.min(...ring.map(({ left }) => left)), east = Math.max(...ring.map(({ right }) => right));
    const north = Math.min(...ring.map(({ top }) => top)), south = Math.max(...ring.map(({ foot }) => foot));
    const inRing = (number: number) => texts([groupOf(plan, `coffer.${number}`)]).map(({ at: [x, y] }) => x > west && x < east && y > north && y < south);
    expect([inRing(1), inRing(2)]).toEqual([[false, false], [true, true]]);
});
