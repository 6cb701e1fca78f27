import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { joistsOf } from '../../src/ceiling/joists.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { holdingContent } from '../../src/report/joists/content.ts';
import { holdingOf, OFF_EDGE } from '../../src/takeoff/holding.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { runs } from '../support/full.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { randomCeilings, YARD } from './random-ceilings.ts';

const BOX = `edition 1
stock flat-4 { size 1x4; species yellow-poplar }
stock flat-6 { size 1x6; species yellow-poplar }
profile box {
  blocking { stock flat-4; screws #8 x 2 1/2" every 16" }
  sides { stock flat-6 }
  bottom { stock flat-4 }
}
`;
/** Three coffers of 48" by two of 54": line 1 at 50 1/2", line 2 at 103 1/2", line A at 56 1/2"; bottoms and blocking run through north-south. */
async function hall(ceiling: string, grid = ''): Promise<Ceiling> {
    const text = `${BOX}room hall {
  wall north  12' 10"
  wall east   9' 5"
  ceiling { height 9'; ${ceiling} }
  grid { coffers-north 3; coffers-east 2; beams box; through north-south${grid} }
}
`;
    const workspace = await TestWorkspace.open({ 'hall.coffer': text });
    return inspect(readFile(workspace.document('hall.coffer'))).layouts[0]!.ceiling!;
}
const inch = (ticks: number): number => Math.round(ticks / TICKS_PER_INCH * 1000) / 1000;
const centers = (ceiling: Ceiling): (readonly number[])[] => joistsOf(ceiling)!.all.map(({ center, half }) => [inch(center), inch(2 * half)]);

describe('where the joists are', () => {
    test('from either side, in the room alone', async () => {
        expect(centers(await hall(`joists 2x10 every 24" running north-south first-center 7"`))).toEqual([[7, 1.5], [31, 1.5], [55, 1.5], [79, 1.5], [103, 1.5], [127, 1.5], [151, 1.5]]);
        // the room is 113" from north to south
        expect(centers(await hall(`joists 3x8 every 48" running east-west first-center 10" from south`))).toEqual([[7, 2.5], [55, 2.5], [103, 2.5]]);
        expect(centers(await hall(`joists 2x8 every 48" running east-west first-center 10" width 1"`))).toEqual([[10, 1], [58, 1], [106, 1]]);
    });
    test('as they were found: each of the nearest one of the row, an extra one besides', async () => {
        const ceiling = await hall(`joists 2x10 every 48" running north-south first-center 10"
    joist 12" found moved
    joist 57" found missing
    joist 106" found doubled
    joist 80" found extra
    joist 155"
    joist 11" found missing`);
        expect(centers(ceiling)).toEqual([[12, 1.5], [80, 1.5], [106, 3], [154, 1.5]]);
        expect(joistsOf(ceiling)!.astray.map(({ found: { value }, why }) => [inch(value), why])).toEqual([[155, 'outside'], [11, 'none-near']]);
    });
    test('nothing is known without the first one, or counted from a wall that they run along', async () => {
        expect(joistsOf(await hall(`joists 2x10 every 16" running north-south`))).toBeUndefined();
        expect(joistsOf(await hall(`joists 2x10 every 16" running north-south first-center 7" from north`))).toBeUndefined();
        expect(joistsOf(await hall(`joists 3x7 every 16" running north-south first-center 7"`))).toBeUndefined();
    });
});

describe('what the blocking finds', () => {
    // joists at 9", 25" … 105": line 2 at 103 1/2" runs along the last one, 1 1/2" off its center, line 1 between 41" and 57"; A's three pieces cross the rest
    test('along, across, and nothing', async () => {
        const ceiling = await hall(`joists 2x8 every 16" running north-south first-center 9"`), { held } = holdingOf(ceiling, takeOffOf(ceiling).pieces)!;
        const told = held.map(({ piece, finds, screws }) => [piece.id.replace('hall.blocking-', ''), finds.map(({ joist, along }) => `${inch(joist.center)}${along ? ' along' : ''}`), screws]);
        expect(told).toEqual([
            ['1', [], 0],
            // 113" less 3/8" at each end, 16" apart: 8 spaces and a rest of 5 1/4"
            ['2', ['105 along'], 9],
            // from the west wall to line 1's blocking at 48 3/4"; from 52 1/4" to 101 3/4"; from 105 1/4" on: the joist at 105" is under line 2
            // two abreast, since it is 3 1/2" wide
            ['A-1', ['9', '25', '41'], 6], ['A-2', ['57', '73', '89'], 6], ['A-3', ['121', '137', '153'], 6],
        ]);
    });
    test('what finds no joist has its screws in backing, and the lists count no others', async () => {
        const ceiling = await hall(`covering gypsum thickness 5/8"; joists 2x8 every 16" running north-south first-center 9"`, '; perimeter { kind half-beam; width 2 3/4" }');
        const takeOff = takeOffOf(ceiling), { beams } = holdingContent(ceiling, takeOff)!;
        const told = Object.fromEntries(beams.map(({ of, screws, intoBacking, thread }) => [of, [screws, intoBacking, thread && inch(thread)]]));
        // along the west wall the nearest joist stands at 9", along the east one there is one 1" off the wall. Both are 107 1/2" long between the other two's
        // blocking, 7 spaces of 16"; one abreast, since they are 2 3/4" wide. The other two cross the ten joists
        expect(told).toMatchObject({ east: [8, 0, 1.125], west: [0, 8, null], north: [10, 0, 1.125], south: [10, 0, 1.125] });
        const counted = takeOff.consumables.filter(({ what }) => what.endsWith('screws, blocking'));
        expect(counted.reduce((sum, { count }) => sum + count, 0)).toBe(beams.reduce((sum, { screws, intoBacking }) => sum + screws! + intoBacking!, 0));
        expect(counted.every(({ by }) => by.endsWith('and along backing where there is none'))).toBe(true);
    });
    test('blocking wider than 3" takes two abreast, and a missing joist leaves a stretch open', async () => {
        const ceiling = await hall(`joists 2x8 every 16" running north-south first-center 9"
    joist 73" found missing`), held = holdingOf(ceiling, takeOffOf(ceiling).pieces)!.held.find(({ piece }) => piece.id === 'hall.blocking-A-2')!;
        // the piece begins 1/32" (half of its relief) behind line 1's blocking
        expect(held.finds.map(({ joist }) => inch(joist.center))).toEqual([57, 89]);
        expect(Math.abs(inch(held.open.to - held.open.from) - 32)).toBeLessThan(0.01);
        expect(held.isFarApart).toBe(true);
    });
    // it lies from the west wall to 48 3/4", less 1/32" at either end: from the joist at 25" to its end is more than from joist to joist
    test('the longest stretch without a screw may be the last; as far apart as joists are is not far', async () => {
        const of = async (more: string) => {
            const ceiling = await hall(`joists 2x8 every 16" running north-south first-center 9"${more}`);
            return holdingOf(ceiling, takeOffOf(ceiling).pieces)!.held.find(({ piece }) => piece.id === 'hall.blocking-A-1')!;
        };
        const whole = await of(''), lacking = await of('\n    joist 41" found missing');
        expect([[inch(whole.open.from), inch(whole.open.to)], whole.isFarApart]).toEqual([[9 - 0.031, 25 - 0.031], false]);
        expect([inch(lacking.open.from), inch(lacking.open.to - lacking.open.from), lacking.isFarApart]).toEqual([25 - 0.031, 23.719, true]);
    });
    test('weight, thread and the published value of a screw', async () => {
        const ceiling = await hall(`covering gypsum thickness 5/8"; joists 2x8 every 16" running east-west first-center 8 1/2" of spruce-pine-fir`);
        const line = holdingContent(ceiling, takeOffOf(ceiling))!.beams.find(({ of }) => of === '2')!;
        expect(inch(line.thread!)).toBe(1.125);
        // NDS Table 12.2B: #8, G 0.42, 82 lb an inch, from memory; by its equation 82.4
        expect(line.withdrawal!.perInch).toBeCloseTo(82.4, 1);
        expect(line.withdrawal!.ofScrew).toBeCloseTo(82.4 * 1.125 * 0.9, 0);
        // blocking and bottom 3 1/2", four sides of 5 1/2" and 54" a flank, all 3/4" thick, 29.37 lb a cubic foot
        const cubic = 0.75 * (3.5 * 113 * 2 + 5.5 * (4 * 54 + 4 * 0.375)) / 1728;
        expect(line.pounds!).toBeCloseTo(cubic * 0.42 * 1.12 * 62.428, 1);
        expect(line.poundsPerFoot!).toBeCloseTo(line.pounds! / (113 / 12), 5);
        expect(line.poundsPerScrew!).toBeCloseTo(line.pounds! / line.screws!, 5);
        // every piece crosses joists, so nothing is said of backing
        expect(takeOffOf(ceiling).consumables.filter(({ what }) => what.endsWith('screws, blocking')).map(({ by }) => by))
            .toEqual(['one at every joist that the blocking crosses, two side by side where it is wider than 3"; at most 16" apart along a joist']);
    });
});

/** Whether a screw at this place of the plan, inside of the piece by 3/8" on all sides, has so much joist on all sides too. */
function isInWood(piece: Piece, s: number, t: number, ceiling: Ceiling): number | undefined {
    const [a, b, c, d] = piece.corners, start = { x: (a.x + d.x) / 2, y: (a.y + d.y) / 2 }, end = { x: (b.x + c.x) / 2, y: (b.y + c.y) / 2 };
    const long = Math.hypot(end.x - start.x, end.y - start.y);
    const u = { x: (end.x - start.x) / long, y: (end.y - start.y) / long }, at = { x: start.x + u.x * s - u.y * t, y: start.y + u.y * s + u.x * t };
    const { all, runs: way } = joistsOf(ceiling)!;
    return all.find(({ center, half }) => Math.abs(at[way === 'north-south' ? 'x' : 'y'] - center) <= half - OFF_EDGE)?.center;
}

test('whatever the room: a screw that is tried by hand in wood is in a joist that was found there, and none is found where no screw can be', async () => {
    const workspace = await TestWorkspace.open({ 'yard.coffer': YARD });
    let tried = 0, inWood = 0;
    await fc.assert(fc.asyncProperty(randomCeilings, fc.constantFrom('north-south', 'east-west'), fc.integer({ min: 4, max: 30 }), fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })), async (made, way, first, shares) => {
        await workspace.edit({ 'den.coffer': made.text.replace('room den {', `room den {\n  ceiling { height 9'; joists 2x8 every 16" running ${way} first-center ${first}" }`) });
        const ceiling = inspect(readFile(workspace.document('den.coffer'))).layouts[0]?.ceiling;
        if (!ceiling) return;
        for (const { piece, finds } of holdingOf(ceiling, takeOffOf(ceiling).pieces)!.held) {
            const [a, b, c, d] = piece.corners, room = piece.width / 2 - OFF_EDGE;
            const long = Math.hypot((b.x + c.x - a.x - d.x) / 2, (b.y + c.y - a.y - d.y) / 2);
            for (let i = 0; i < 12 && long > 3 * OFF_EDGE; i++) {
                const s = OFF_EDGE + (long - 2 * OFF_EDGE) * shares.next().value!, t = room * (2 * shares.next().value! - 1);
                const center = isInWood(piece, s, t, ceiling);
                tried++;
                if (center === undefined) continue;
                inWood++;
                expect(finds.some(find => find.joist.center === center && s >= find.from - 2 && s <= find.to + 2)).toBe(true);
            }
            for (const { joist, from, to } of finds) {
                const wood = Array.from({ length: 201 }, (_, i) => isInWood(piece, (from + to) / 2, room * (i - 100) / 100, ceiling));
                expect(wood).toContain(joist.center);
            }
        }
    }), { seed: 17, numRuns: runs(300, 25) });
    expect(inWood).toBeGreaterThan(30);
    expect(tried).toBeGreaterThan(inWood);
});
