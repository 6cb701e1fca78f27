import DxfParser, { type ILwpolylineEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { drawPanePlan, drawSheets, toSvg } from '../../src/drawing/index.ts';
import { toDxf } from '../../src/exports/dxf/dxf.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { HALL, HALL_WITH_BAND } from '../../src/rules/support/examples.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { outside, touching } from './support/checks.ts';
import { groupOf, groups, texts } from './support/walk.ts';

const north = (words: string, text = HALL_WITH_BAND): string => text.replace(/wall north +12' [\d/ ]+"\n/, found => `${found.trim()} { ${words} }\n`);

async function drawn(text: string, forClient = false) {
    const [layout] = await layoutsOf(text), ceiling = layout!.ceiling!;
    const taken = takeOff(ceiling);
    return { ceiling, plan: drawSheets(ceiling, taken, { forClient })[0]!, pane: () => drawPanePlan(ceiling, taken, { width: 900, height: 700 }) };
}

describe('a wall that bows', () => {
    test('is drawn as it was found, over what lies along it, with its figures where it stands farthest in and back', async () => {
        const { plan } = await drawn(north('hump 1/4" at 4\'; hump 1/8" at 6\'; hollow 3/16" at 10\'')), { pointsPerTick, origin: [left] } = plan.measured!;
        const [face] = groupOf(plan, 'found.north').items;
        if (face?.kind !== 'polyline') throw new Error('no face is drawn');
        const [first] = face.points, inches = (points: number): number => Math.round(points / pointsPerTick / TICKS_PER_INCH * 1e4) / 1e4;
        expect(face.points.map(([x, y]) => [inches(x - left), inches(y - first![1])])).toEqual([[0, 0], [48, 0.25], [72, 0.125], [120, -0.1875], [155.5, 0]]);
        expect(texts(groupOf(plan, 'found.north').items).map(run => run.text)).toEqual(['1\u20444" in', '3\u204416" back']);
        const ids = groups(plan.items).map(({ id }) => id);
        expect(ids.indexOf('found.north')).toBeGreaterThan(ids.findLastIndex(id => id.startsWith('band-')));
        expect(ids.filter(id => id.startsWith('found'))).toEqual(['found.north', 'found-deeper.north']);
    });

    test('is drawn once more so many times as deep, which the line, the key and the notes say', async () => {
        const { plan } = await drawn(north('hump 1/4" at 4\'')), { pointsPerTick } = plan.measured!;
        const [deeper] = groupOf(plan, 'found-deeper.north').items, words = texts(plan.items).map(run => run.text);
        if (deeper?.kind !== 'polyline') throw new Error('no bow is drawn');
        const depth = deeper.points[1]![1] - deeper.points[0]![1], times = Math.round(depth / (TICKS_PER_INCH / 4 * pointsPerTick));
        expect(depth).toBeCloseTo(times * TICKS_PER_INCH / 4 * pointsPerTick, 6);
        // seen, and less than a band is wide: between a pen's width and an eighth of an inch
        expect(times).toBeGreaterThan(1);
        expect(depth).toBeGreaterThan(3);
        expect(depth).toBeLessThanOrEqual(9);
        expect(words).toContain(`bow × ${times}`);
        expect(words.join(' ')).toContain(`wall as found, its bow ${times} times as deep`);
        expect(words.join(' ')).toContain(`its bow ${times} times as deep, not in files at true size`);
    });

    test('in a file at true size is where it was found, to the hair, and nowhere deeper', async () => {
        const { plan, ceiling } = await drawn(north('hump 1/4" at 4\'; hollow 3/16" at 10\''));
        const { entities } = new DxfParser().parseSync(toDxf(plan, 'feet-inches'))!;
        const lines = entities.filter(({ type, layer }) => type === 'LWPOLYLINE' && layer.startsWith('WALLS-')) as unknown as ILwpolylineEntity[];
        const length = ceiling.length / TICKS_PER_INCH, offs = lines.filter(({ layer }) => layer === 'WALLS-CUT')
            .map(({ vertices }) => vertices.map(({ x, y }) => [Math.round(x * 1e4) / 1e4, Math.round((length - y) * 1e4) / 1e4]));
        expect(offs).toContainEqual([[0, 0], [48, 0.25], [120, -0.1875], [155.5, 0]]);
        expect(lines.filter(({ layer }) => layer === 'WALLS-NAIL')).toEqual([]);
        expect(entities.filter(({ layer }) => layer === 'WALLS-TEXT').map(each => (each as unknown as { text: string }).text)).toEqual(['1/4" in', '3/16" back']);
    });

    test('is in the pane too; a plan for the client shows its face alone, and that of a straight wall is what it was', async () => {
        const { pane } = await drawn(north('leans-in 3/8"'));
        expect(groupOf(pane(), 'found.north').title).toBe('Wall north as found: 3\u20448" in at 6\' 5 3\u20444"');
        expect(groupOf(pane(), 'found-deeper.north').items.length).toBeGreaterThan(2);
        const client = await drawn(north('hump 1/4" at 4\''), true);
        expect(groups(client.plan.items).filter(({ id }) => id.startsWith('found'))).toEqual([]);
        const straight = await drawn(HALL);
        expect(groups(straight.plan.items).filter(({ id }) => id.startsWith('found'))).toEqual([]);
        expect(texts(straight.plan.items).map(run => run.text).join(' ')).not.toContain('as found');
    });

    test('is drawn with no words on each other, in a room of five walls that all bow or lean', async () => {
        const room = HALL.replace(/  wall north[^\n]*\n  wall east[^\n]*\n/, `  wall north      10' 10" { hump 1/4" at 3'; hollow 1/4" at 8' }
  wall north-east 2' 9 15/16" turn 45 deg { hump 1/8" at 1' 4" }
  wall east       7' 5" { leans-in 1/4" }
  wall south      12' 10" { hump 1/2" at 6' }
  wall west { hollow 3/8" at 4' }
`);
        const { plan } = await drawn(room);
        expect(groups(plan.items).filter(({ id }) => id.startsWith('found.')).map(({ id }) => id)).toEqual(['north', 'north-east', 'east', 'south', 'west'].map(name => `found.${name}`));
        expect([touching(plan), outside(plan)]).toEqual([[], []]);
        expect(toSvg(plan)).toBe(toSvg((await drawn(room)).plan));
    });
});
