import { expect, test } from 'vitest';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import { CeilingHouse } from './look-at-ceiling.ts';

/** A line that is said to die into others as deep, bottoms of all under their sides and 1/4" beyond them. */
const ROOM = `edition 1
from "./yard.coffer" use low-under

room den {
  wall w1 240" heading east
  wall w2 130" heading south
  wall w3 240" heading west
  wall w4 130" heading north
  grid {
    lines-north 80"
    lines-east 60"
    beams low-under
    through east-west
    splices never
    perimeter { kind half-beam; width 3.5"; splices never }
  }
  line 1 { meets dies-into }
}
`;

test('the bottom of a dying line ends at the edge of a bottom that stands out beyond the face, its sides and blocking as ever', async () => {
    const { ceiling, refused } = await (await CeilingHouse.open()).look({ text: ROOM, shape: 'rectangle' }), { pieces } = takeOffOf(ceiling!);
    expect(refused).toEqual([]);
    const inches = (id: string): number => pieces.find(piece => piece.id === `den.${id}`)!.back / 16256;
    // from the half beam's face, 4 1/4" off the wall, to the face of line A, which is 5" wide: 60 - 2 1/2 - 4 1/4
    expect(inches('side-1-1-east')).toBe(53.25);
    expect(inches('bottom-1-1')).toBe(53.25 - 0.5);
    // 1/8" clear of both
    expect(inches('blocking-1-1')).toBe(53.25 - 0.25);
});
