import { describe, expect, test } from 'vitest';
import { drawSheets, toSvg } from '../../src/drawing/index.ts';
import { drawSurvey } from '../../src/drawing/survey/sheet.ts';
import { surveyedHall } from '../../src/rules/support/examples.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { outside, touching } from './support/checks.ts';
import { groupOf, groups, leaves, texts } from './support/walk.ts';

async function laid(text: string) {
    const [layout] = await layoutsOf(text), ceiling = layout!.ceiling!;
    return { ceiling, pieces: takeOff(ceiling) };
}
/** The hall, 12' 10" by 9' 5", with a hump of 1/4" in its middle, one corner low and one high. */
const HUMP = surveyedHall('14"').replace(`9' 5" up 14 1/4"`, `9' 5" up 14 3/8"`);

/** A room whose south-west stands back by 77" by 48"; three readings make a triangle over that, low on one side of it. */
const STEPPED = HUMP.replace(/ {2}wall north[^]*?\n(?= {2}\w+ \{)/, `  wall north  12' 10"
  wall east   9' 5"
  wall south  6' 5"
  wall step   4' heading north
  wall inner  heading west
  wall west   heading north
`).replace(/ {4}point [^]*?\n {2}\}/, `    point  0', 0' up 14 3/8"
    point  12' 10", 0' up 14 3/8"
    point  12' 10", 9' 5" up 14 3/8"
    point  6' 5", 9' 5" up 14 1/8"
    point  0', 5' 5" up 14 1/8"
    point  7' 6", 4' up 14 1/2"
    plane  level at 14 1/4"
  }`).replace(/grid \{[^}]*?through/, `grid {
    lines-north    9' 6"
    coffers-east   2
    beams          hall-box
    through`);

describe('a ceiling that was surveyed, as a sheet', () => {
    test('has contours with figures, humps and hollows by their number, readings, what is known; no two texts touch, nothing is beyond the border', async () => {
        const { ceiling, pieces } = await laid(HUMP), sheet = drawSurvey(ceiling, pieces, { sheet: 'C-4', of: 'of 4' })!;
        expect(groups(sheet.items).map(({ id }) => id)).toEqual(expect.arrayContaining(['unknown', 'humps', 'known', 'contours', 'readings', 'hump.1', 'hollow.1', 'walls', 'strip']));
        expect(leaves([groupOf(sheet, 'readings')]).length).toBe(5);
        const words = texts(sheet.items).map(run => run.text);
        expect(words.filter(each => each.startsWith('hump 1 '))).toEqual([expect.stringMatching(/^hump 1 −\d+⁄\d+"$/u)]);
        expect(words).toContain('hump 1: 6\' 5" east, 4\' 8 1⁄2" south');
        expect(words.filter(each => /^[+−]\d+⁄\d+"$/u.test(each)).length).toBeGreaterThan(3);
        expect(touching(sheet)).toEqual([]);
        expect(outside(sheet)).toEqual([]);
        expect(JSON.stringify(leaves(sheet.items))).not.toMatch(/null,null|NaN/u);
        expect(sheet.description).toContain('Hump 1: −');
        expect(toSvg(sheet)).toContain('hollow.1');
    });

    test('a side that is scribed is marked, and beyond the readings nothing is drawn but that nothing is known', async () => {
        const { ceiling, pieces } = await laid(HUMP.replace('up 14"', 'up 13 3/4"')), sheet = drawSurvey(ceiling, pieces)!;
        expect(leaves([groupOf(sheet, 'scribed')]).length).toBeGreaterThan(0);
        expect(texts(sheet.items).map(run => run.text)).toContain('face of a side that is scribed');
        const half = await laid(HUMP.replace(/ {4}point {2}0', 9' 5".*\n/, '')), triangle = drawSurvey(half.ceiling, half.pieces)!;
        const [known] = leaves([groupOf(triangle, 'known')]);
        // the reading in the middle lies on the line between two corners
        expect(known?.kind === 'polyline' && known.points.length).toBe(4);
        expect(outside(triangle)).toEqual([]);
    });

    test('where walls stand back, nothing of it is drawn outside of the walls: no contour, no hump, no edge of the survey', async () => {
        const { ceiling, pieces } = await laid(STEPPED), sheet = drawSurvey(ceiling, pieces)!, drawn = (id: string) => leaves([groupOf(sheet, id)]);
        const [inner] = drawn('unknown'), room = inner?.kind === 'polyline' ? inner.points : [];
        expect(room).toHaveLength(6);
        for (const id of ['humps', 'contours', 'known']) {
            const places = drawn(id).flatMap(item => (item.kind === 'polyline' && item.fill !== 'paper' ? item.points.flatMap((at, i) => {
                const next = item.points[i + 1] ?? at;
                return [at, [(at[0] + next[0]) / 2, (at[1] + next[1]) / 2] as const];
            }) : []));
            expect([id, places.length > 3]).toEqual([id, true]);
            expect([id, places.filter(at => !isIn(at, room))]).toEqual([id, []]);
        }
        // from the corner of the step to the south-west, 77" by 48", nothing is ceiling, and the two readings there would make a triangle over it
        const [left, foot] = [Math.min(...room.map(([x]) => x)), Math.max(...room.map(([, y]) => y))], notch = [left + 2, foot - 2] as const;
        expect([isIn(notch, room), drawn('humps').some(item => item.kind === 'polyline' && isIn(notch, item.points))]).toEqual([false, false]);
    });

    test('tilted, it tells how high the plane is over each corner', async () => {
        const tilted = surveyedHall('14 1/4"', '\n    plane  following fall 1" over 10\'')
            .replace(`point  0', 0' up 14 1/4"`, `point  0', 0' up 13 1/2"`).replace(`point  0', 9' 5" up 14 1/4"`, `point  0', 9' 5" up 13 1/2"`);
        const { ceiling, pieces } = await laid(tilted), words = texts(drawSurvey(ceiling, pieces)!.items).map(run => run.text);
        expect(words).toEqual(expect.arrayContaining(['THE PLANE, ABOVE ITS LOWEST CORNER', 'north-east', 'south-west']));
    });

    test('is the last of a room’s sheets; nobody who has the ceiling built gets it, and without readings there is none', async () => {
        const { ceiling, pieces } = await laid(HUMP), sheets = drawSheets(ceiling, pieces);
        expect(sheets.at(-1)!.title).toMatch(/^Ceiling survey/);
        expect(sheets.at(-1)!.id).toBe(`C-${sheets.length}`);
        expect(drawSheets(ceiling, pieces, { forClient: true })).toHaveLength(sheets.length - 1);
        const bare = await laid(HUMP.replace(/ {4}point .*\n/g, ''));
        expect(drawSurvey(bare.ceiling, bare.pieces)).toBeUndefined();
        expect(drawSheets(bare.ceiling, bare.pieces)).toHaveLength(sheets.length - 1);
    });
});

/** Whether a place lies in a polygon or on its edge, by a ray to the east and by how far it is from every edge. */
function isIn([x, y]: readonly [number, number], polygon: readonly (readonly [number, number])[]): boolean {
    let inside = false;
    for (const [i, [ax, ay]] of polygon.entries()) {
        const [bx, by] = polygon[(i + 1) % polygon.length]!, square = (bx - ax) ** 2 + (by - ay) ** 2;
        const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square));
        if (Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay)) < 0.01) return true;
        if (ay > y !== by > y && x < ax + (bx - ax) * (y - ay) / (by - ay)) inside = !inside;
    }
    return inside;
}
