import { expect, test } from 'vitest';
import { CeilingHouse } from './look-at-ceiling.ts';

/** An L whose inner corner lies 195" from the west: a line at 191" is 2 3/4" to the back of its sides, and 1 1/4" or 3/4" more to their faces. */
const room = (beams: string, center: string): string => `edition 1
from "./yard.coffer" use deep-unlike, deep-unlike-molded

room den {
  wall w1 245.625" heading east
  wall w2 108" heading south
  wall w3 50.625" heading west
  wall w4 12" heading south
  wall w5 195" heading west
  wall w6 120" heading north
  grid { lines-north ${center}; coffers-east 1; beams ${beams}; through north-south; perimeter { kind none } }
}
`;

test('a molding that stands out into a wall, although the face goes past its corner, is told', async () => {
    const house = await CeilingHouse.open(), told = async (beams: string, center: string): Promise<readonly string[]> => (await house.look({ text: room(beams, center), shape: 'L' })).refused;
    expect(await told('deep-unlike', '191"')).toEqual([]);
    expect(await told('deep-unlike-molded', '191"')).toContain('line-goes-nowhere');
    // farther off there is room for the trim beside it, too
    expect(await told('deep-unlike-molded', '188"')).toEqual([]);
});
