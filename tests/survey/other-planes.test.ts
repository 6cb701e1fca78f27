import { describe, expect, test } from 'vitest';
import { surveyedHall } from '../../src/rules/support/examples.ts';
import { inches } from '../../src/quantity/rational.ts';
import { surveyContent } from '../../src/report/survey/content.ts';
import { surveyLeaf } from '../../src/report/survey/leaf.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';

/** The hall, 12' 10" by 9' 5", under a ceiling that rises 2" from west to east and is flat otherwise. */
const TILTED = surveyedHall('15"', '\n    plane  following fall 1" over 10\'')
    .replaceAll(/(point {2}0', \S+(?: \S+)?) up 14 1\/4"/g, '$1 up 14"').replaceAll(/(point {2}12' 10", \S+(?: \S+)?) up 14 1\/4"/g, '$1 up 16"');

async function told(text: string) {
    const [layout] = await layoutsOf(text), ceiling = layout!.ceiling!, { room } = ceiling;
    const pieces = takeOff(ceiling), content = surveyContent(ceiling, pieces)!;
    const standing = { errors: [], lacks: [], notUsed: [] } as never;
    return { content, leaf: surveyLeaf({ job: room.job, rooms: [{ room, takeOff: pieces, standing }], alternates: [] }, () => content).sections[0]! };
}

describe('what a tilt would spare', () => {
    test('level, and by planes of more and more slope: never more to scribe, and none by one as steep as the ceiling', async () => {
        const { content: { planes, surveyed }, leaf } = await told(TILTED);
        expect(planes.map(({ slope }) => slope * 120)).toEqual([0, 0.25, 0.5, 1, 2].map(each => expect.closeTo(each, 9)));
        const counts = planes.map(({ chosen }) => chosen.scribed);
        expect(counts[0]).toBeGreaterThan(0);
        expect([...counts].sort((a, b) => b - a)).toEqual(counts);
        // 2" in 12' 10" is 1.56" in 10': of the slopes that are tried 2" alone is as steep
        expect(counts.at(-1)).toBe(0);
        expect(planes[3]!.chosen).toEqual(surveyed.chosen);
        expect(leaf.after!.at(-1)).toMatch(/^By the best plane of each slope: level: \d+ sides, .* deep; up to 1\/4" in 10': .*up to 2" in 10': none scribed\.$/);
    });

    test('what is level is told where the beams are not: a cabinet by its name, and the walls', async () => {
        const { content, leaf } = await told(TILTED.replace('  grid {', `  fixture press cabinet on north at 2' from north-west width 5' depth 12" below-ceiling 20"\n\n  grid {`));
        const { east } = content.surveyed.chosen!.plane, length = inches(154);
        expect(Math.abs(east)).toBeGreaterThan(1 / 480);
        const ofPress = content.level.find(({ fixture }) => fixture?.name === 'press')!;
        expect(ofPress.by / ofPress.over).toBeCloseTo(Math.abs(east), 4);
        const ofWall = content.level.find(({ fixture, wall }) => fixture === null && wall.name === 'north')!;
        expect(ofWall.by).toBe(Math.round(Math.abs(east) * length));
        expect(leaf.words.join(' ')).toMatch(/Over cabinet press at the north wall the beams run [\d /]+" out of level/);
        expect(leaf.words.join(' ')).toMatch(/Along the north wall they run 1[\d /]*" out of level, in 12' 10"\./);
    });

    test('nothing of it where they hang level, and nothing is scribed', async () => {
        const { content, leaf } = await told(surveyedHall('14 1/4"'));
        expect(content.level).toEqual([]);
        expect(content.planes.map(({ slope }) => slope)).toEqual([0]);
        expect(leaf.after).toEqual([]);
    });
});
