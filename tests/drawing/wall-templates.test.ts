import { expect, test } from 'vitest';
import { drawWallTemplates } from '../../src/drawing/index.ts';
import type { Point } from '../../src/drawing/display-list.ts';
import { bowedWalls } from '../../src/measure/bowed.ts';
import { wallTemplatesOf, type WallTemplate } from '../../src/measure/wall-templates.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { HALL, HALL_WITH_BAND } from '../../src/rules/support/examples.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { groups, texts } from './support/walk.ts';

async function drawn(text: string) {
    const [layout] = await layoutsOf(text), ceiling = layout!.ceiling!, walls = bowedWalls(ceiling, takeOff(ceiling).pieces);
    return { templates: wallTemplatesOf(walls), sheets: drawWallTemplates(ceiling, walls) };
}
const north = (words: string, text = HALL_WITH_BAND): string => text.replace(/wall north +12' [\d/ ]+"\n/, found => `${found.trim()} { ${words} }\n`);
const inches = (ticks: number): number => ticks / TICKS_PER_INCH;
const cutOf = ({ cut }: WallTemplate): number[][] => cut.map(({ along, depth }) => [Math.round(inches(along)), Math.round(inches(depth) * 1000) / 1000]);
const spanOf = (points: readonly Point[], axis: 0 | 1): number => (Math.max(...points.map(at => at[axis])) - Math.min(...points.map(at => at[axis]))) / 72;

test('a band is scribed from an inch before a hump to an inch behind it, as deep as the hump stands out, straight between places', async () => {
    const { templates: [template, ...others], sheets } = await drawn(north('hump 1/4" at 4\'; hollow 1/8" at 2\'; hollow 1/8" at 6\''));
    expect(others).toEqual([]);
    // from 1/8" back at 2' to 1/4" out at 4': even with the string at a third of the way
    expect([inches(template!.from), inches(template!.to), inches(template!.deepest)].map(size => Math.round(size * 1000) / 1000)).toEqual([31, 65, 0.25]);
    expect(cutOf(template!)).toEqual([[31, 0], [32, 0], [48, 0.25], [64, 0], [65, 0]]);
    // who looks up at the north wall has its west end at the left
    expect(template!.beginsLeft).toBe(true);
    const rows = sheets.flatMap(sheet => groups(sheet.items)).filter(({ id }) => id?.startsWith('template.'));
    const curves = rows.flatMap(row => row.items.flatMap(item => (item.kind === 'polyline' && !item.closed ? [item.points] : [])));
    // points of the paper: 72 to the inch
    expect(curves.reduce((sum, points) => sum + spanOf(points, 0), 0)).toBeCloseTo(34, 4);
    expect(Math.max(...curves.map(points => spanOf(points, 1)))).toBeLessThanOrEqual(0.25 + 1e-6);
    const words = sheets.flatMap(({ items }) => texts(items)).map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining([expect.stringMatching(/^band along wall north, 1 of 5: from 2' 7" to 3' 2" from the west end of the wall/)]));
});

test('the bottom of a half beam is scribed by what is left on its edge too; along a wall with nothing there is nothing to scribe', async () => {
    const half = HALL.replace('through        north-south\n', 'through        north-south\n    perimeter { kind half-beam; width 2"; scribe 1/4" }\n');
    const { templates: [template] } = await drawn(north('hump 1/4" at 4\'', half));
    expect(cutOf(template!)).toEqual([[0, 0.25], [48, 0.5], [154, 0.25]]);
    expect((await drawn(north('hump 1/4" at 4\'', HALL))).templates).toEqual([]);
});
