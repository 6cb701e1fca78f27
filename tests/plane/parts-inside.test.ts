import { expect, test } from 'vitest';
import { partsInside } from '../../src/plane/parts-inside.ts';

/** An L: 10 by 10 without its north-east quarter. */
const ELL = [{ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 5, y: 5 }, { x: 10, y: 5 }, { x: 10, y: 10 }, { x: 0, y: 10 }];
const at = (...places: readonly (readonly [number, number])[]) => places.map(([x, y]) => ({ x, y }));

test('of a line that leaves a room and comes back into it there are the parts inside, by hand', () => {
    expect(partsInside(at([1, 1], [9, 9]), ELL)).toEqual([at([1, 1], [9, 9])]);
    // over the inner corner: out at x = 5, in again at y = 5
    expect(partsInside(at([3, 1], [9, 7]), ELL)).toEqual([at([3, 1], [5, 3]), at([7, 5], [9, 7])]);
    expect(partsInside(at([6, 1], [9, 1], [9, 4]), ELL)).toEqual([]);
    expect(partsInside(at([1, 1], [4, 1], [4, 9], [9, 9]), ELL)).toEqual([at([1, 1], [4, 1], [4, 9], [9, 9])]);
    expect(partsInside(at([2, 2], [8, 2], [8, 8]), ELL)).toEqual([at([2, 2], [5, 2]), at([8, 5], [8, 8])]);
});
