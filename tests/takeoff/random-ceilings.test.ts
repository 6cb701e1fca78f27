import fc from 'fast-check';
import { expect, test } from 'vitest';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { runs } from '../support/full.ts';
import { CeilingHouse, wrongIn } from './look-at-ceiling.ts';
import { randomCeilings } from './random-ceilings.ts';

/** The same ones at every run; `npm run fuzz` looks at others, by the hundred thousand where it is asked to. */
test('ceilings of all kinds cover their room, go together and add up; where there is none it is told why', async () => {
    const house = await CeilingHouse.open(), COUNT = runs(1000, 45);
    const built = new Map<string, number>(), refused = new Set<string>();
    await fc.assert(fc.asyncProperty(randomCeilings, async made => {
        const { ceiling, refused: told } = await house.look(made);
        if (ceiling) built.set(made.shape, (built.get(made.shape) ?? 0) + 1);
        else for (const rule of told) refused.add(rule);
    }), { seed: 61, numRuns: COUNT });
    expect([...built.keys()].sort()).toEqual(['L', 'U', 'bay', 'breast', 'parted', 'rectangle', 'taper', 'turned-bay']);
    expect([...built.values()].reduce((sum, each) => sum + each, 0)).toBeGreaterThan(COUNT / 3);
    expect(refused.has('line-goes-nowhere')).toBe(true);
});

test('a piece that is missing, named twice, too long, or stands elsewhere is seen', async () => {
    const house = await CeilingHouse.open(), samples = fc.sample(randomCeilings, { seed: 62, numRuns: 300 });
    let ceiling;
    for (const made of samples) if (made.shape === 'L' && / beams (?:low|deep)\n/.test(made.text)) ceiling ??= (await house.look(made)).ceiling;
    const off = takeOffOf(ceiling!), i = off.pieces.findIndex(({ part }) => part === 'side'), side = off.pieces[i]!;
    const others: (readonly Piece[])[] = [
        off.pieces.toSpliced(i, 1), [...off.pieces, side], off.pieces.toSpliced(i, 1, { ...side, back: side.back + 9 }),
        off.pieces.toSpliced(i, 1, { ...side, cutBack: side.cutBack + 2000, cutFace: side.cutFace + 2000 }),
        off.pieces.toSpliced(i, 1, { ...side, corners: side.corners.map(({ x, y }) => ({ x: x + 500, y })) as unknown as Piece['corners'] }),
    ];
    expect(wrongIn(ceiling!, off)).toBeUndefined();
    for (const pieces of others) expect(wrongIn(ceiling!, { ...off, pieces })).toBeDefined();
});
