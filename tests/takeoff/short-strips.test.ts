import { expect, test } from 'vitest';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { layoutsOf } from '../support/layouts-of.ts';

const inches = (ticks: number): number => ticks / TICKS_PER_INCH;
const house = (lengths: string): string => `edition 1
job "Short strips" { cut-to 1/32"; end-trim 1" }
stock board-1x6 { size 1x6; lengths 12' }
stock board-1x8 { size 1x8; lengths 12' }
stock board-1x10 { size 1x10; lengths 12' }
stock strip-1x2 { size 1x2; lengths ${lengths} }
profile low {
  blocking { stock board-1x6; screws #8 x 2 1/2" every 16" }
  sides { stock board-1x8; corners mitered; nails 16 ga x 2" every 12" }
  cleats { rip 3/4" x 3/4" from strip-1x2; nails 18 ga x 1 1/4" every 8" }
  bottom { stock board-1x6; ease 1/16" }
}
profile deep like low { sides.stock board-1x10 }
room hall "Hall" {
  wall north 15'
  wall east 20'
  grid {
    coffers-north 2
    coffers-east  4
    beams         low
    through       north-south
    perimeter { kind half-beam; width 2 1/2"; beams deep }
  }
  line 1 { beams deep }
}
`;

test('cleats on a wall come in pieces as long as their boards are, which close', async () => {
    const [layout] = await layoutsOf(house('8\'')), ceiling = layout!.ceiling!, list = takeOff(ceiling);
    const onWalls = list.pieces.filter(({ part, id }) => part === 'cleat' && id.includes('-wall'));
    // 15' and 20' from wall to wall, the latter less the two others, of strips with 7' 11" in them
    expect(Object.fromEntries(['north', 'south', 'east', 'west'].map(wall => [wall, onWalls.filter(({ id }) => id.includes(`${wall}-wall`)).length]))).toEqual({ north: 2, south: 2, east: 3, west: 3 });
    for (const wall of ['north', 'east']) {
        const own = onWalls.filter(({ id }) => id.includes(`${wall}-wall`));
        expect(inches(own.reduce((sum, { overall }) => sum + overall, 0))).toBeCloseTo(wall === 'north' ? 180 : 240 - 1.5, 1);
        expect(Math.max(...own.map(({ overall }) => inches(overall)))).toBeLessThanOrEqual(95);
    }
    expect(dryFit(ceiling, list).faults).toEqual([]);
});

test('where the strips are long enough they are spliced where the bottom is', async () => {
    const [layout] = await layoutsOf(house('20\' 2"')), { pieces } = takeOff(layout!.ceiling!);
    const ofHalfBeams = (part: 'cleat' | 'bottom') => pieces.filter(piece => piece.part === part && piece.line === null && piece.bay === null);
    expect(ofHalfBeams('cleat')).toHaveLength(8);
    expect(ofHalfBeams('bottom')).toHaveLength(8);
});

test('a deeper beam that runs through is spliced where others die into it', async () => {
    const [layout] = await layoutsOf(house('8\'')), ceiling = layout!.ceiling!, [line] = ceiling.lines.filter(({ name }) => name === '1');
    expect(line!.splices.map(({ place }) => place)).toEqual(['on line B']);
    const bottoms = takeOff(ceiling).pieces.filter(({ part, line: of }) => part === 'bottom' && of === '1');
    expect(bottoms).toHaveLength(2);
    expect(Math.max(...bottoms.map(({ overall }) => inches(overall)))).toBeLessThanOrEqual(143);
});

test('a spacer that stands across the splices of both sides has its place', async () => {
    const spaced = house('8\'').replace('spacers', '').replace('profile deep like low { sides.stock board-1x10 }',
        'profile deep like low { sides.stock board-1x10; spacers { stock board-1x6; height 6"; every 6"; from-end 3" } }');
    const [layout] = await layoutsOf(spaced), ceiling = layout!.ceiling!, list = takeOff(ceiling);
    const [line] = ceiling.lines.filter(({ name }) => name === '1'), { left, right } = line!.sideSplices!;
    const spacers = list.pieces.filter(({ part, line: of }) => part === 'spacer' && of === '1');
    const across = (at: number): boolean =>
        spacers.some(({ corners }) => Math.min(...corners.map(({ y }) => y)) < at && at < Math.max(...corners.map(({ y }) => y)));
    expect(left.filter(({ at }) => right.some(other => other.at === at) && across(at))).not.toEqual([]);
    expect(dryFit(ceiling, list).faults).toEqual([]);
});
