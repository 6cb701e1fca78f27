import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Ceiling } from '../../src/ceiling/model.ts';
import type { Path } from '../../src/putup/model.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { runs } from '../support/full.ts';
import { replayed } from './replayed.ts';
import { ready } from './swept.ts';

beforeAll(ready);

interface Words {
    readonly overhang?: string; readonly trim?: string; readonly order?: string;
    readonly north?: string; readonly coffers?: number; readonly east?: number; readonly perimeter?: string;
}

/** Beams with their bottoms under the sides, standing out as a lip below the coffers, and trim at the ceiling above it. */
function capped({ overhang = '1/2"', trim = '1 1/2"', order = 'trim after bottoms', north = `12' 10"`, coffers = 3, east = 2, perimeter = '' }: Words = {}): string {
    return `edition 1

stock board-6 { thickness 3/4"; width 5 1/2"; lengths 8', 16' }
stock wide { thickness 3/4"; width 11 1/4"; lengths 8', 16' }
stock strip { thickness 3/4"; width ${trim}; lengths 16' }
profile capped {
  blocking { stock board-6 }
  sides { stock board-6 }
  bottom { stock wide; place under-sides overhang ${overhang} }
  trim { stock strip }
}
room den {
  wall north ${north}
  wall east 9' 5"
  grid {
    coffers-north ${coffers}
    coffers-east ${east}
    beams capped
    through north-south
    ${perimeter}
  }
  put-up { ${order === '' ? '' : `order ${order}`} }
}
`;
}
async function ceilingOf(words: Words): Promise<Ceiling> {
    return (await layoutsOf(capped(words)))[0]!.ceiling!;
}
function paths(ceiling: Ceiling): ReadonlyMap<string, Path | null> {
    return new Map(putUp(ceiling).steps.flatMap(({ placings }) => placings.map(({ piece, path }) => [piece.id.replace('den.', ''), path] as const)));
}
const shapeOf = (path: Path | null | undefined): string | undefined => path?.moves[0]!.from.shape;

describe('trim above lips that hang out under it', () => {
    it('goes up straight before the bottoms where nobody says otherwise', async () => {
        const ceiling = await ceilingOf({ order: '' }), kinds = putUp(ceiling).steps.map(({ kind }) => kind);
        expect(kinds.lastIndexOf('trim')).toBeLessThan(kinds.lastIndexOf('bottoms'));
        expect([...paths(ceiling).values()].every(path => path && !path.around)).toBe(true);
        replayed(ceiling);
    });
    it('goes up after them where the text wants it: turned on the plan where it is longer than there is between the lips', async () => {
        const ceiling = await ceilingOf({}), found = paths(ceiling);
        // 3' 10 21/32" between lines 1 and 2, with 3' 9 21/32" between their lips: turned by 10 degrees it still takes 46.66 cos 10 + 0.75 sin 10 = 46.08
        expect(shapeOf(found.get('trim-2-north'))).toBe('turned');
        const { angle } = found.get('trim-2-north')!.moves[0]!.from;
        expect(46.65 * Math.cos(angle) + 0.75 * Math.sin(Math.abs(angle))).toBeLessThan(45.66);
        expect([...found.values()].filter(path => path?.around).length).toBe(24);
        expect(putUp(ceiling)).toMatchObject({ stuck: [], cycle: null });
        replayed(ceiling, ({ around }) => around === true);
    });
    it('is pushed in level, lower than its neighbors are, where only its own beam hangs out under it', async () => {
        const ceiling = await ceilingOf({ order: 'trim-2-east after bottom-2', east: 1 }), path = paths(ceiling).get('trim-2-east')!;
        expect([shapeOf(path), path.moves.map(({ kind }) => kind), path.around]).toEqual(['straight', ['lift', 'push', 'lift'], true]);
        replayed(ceiling, ({ around }) => around === true);
    });
    it('has one end swung up past a lip at that end, where it is low enough', async () => {
        const ceiling = await ceilingOf({ overhang: '1/8"', trim: '3/4"' }), path = paths(ceiling).get('trim-3-north')!;
        expect([shapeOf(path), path.moves.slice(0, 2).map(({ kind }) => kind)]).toEqual(['tipped', ['lift', 'swing']]);
        replayed(ceiling, ({ moves: [first] }) => first!.from.shape === 'tipped');
    });
    it('has no way in where there is not as much room over the lips as it is high, and that is told of all of it', async () => {
        const placings = putUp(await ceilingOf({ trim: '5"' })).steps.flatMap(step => step.placings), lost = placings.filter(({ path }) => !path);
        expect(lost.length).toBeGreaterThan(0);
        expect(lost.every(({ piece: { part }, blockedBy }) => part === 'trim' && blockedBy.every(id => id.includes('bottom')))).toBe(true);
    });
    it('is turned or tipped as meshes go too, whatever the sizes', async () => {
        const some = fc.record({
            overhang: fc.constantFrom('1/8"', '3/8"', '3/4"', '1"'), trim: fc.constantFrom('3/4"', '1 1/2"', '2 1/2"'), coffers: fc.integer({ min: 2, max: 4 }),
            north: fc.integer({ min: 9, max: 15 }).map(feet => `${feet}' 7"`), perimeter: fc.constantFrom('', 'perimeter { kind band; stock board-6 }', 'perimeter { kind half-beam; width 5" }'),
        });
        const shapes = new Set<string>();
        await fc.assert(fc.asyncProperty(some, async words => {
            const ceiling = await ceilingOf(words), found = [...paths(ceiling).values()];
            for (const path of found) if (path?.around) shapes.add(shapeOf(path)!);
            if (found.every(path => path)) replayed(ceiling, ({ around }) => around === true);
        }), { seed: 7, numRuns: runs(30, 4) });
        expect(shapes.size).toBeGreaterThan(0);
    });
});
