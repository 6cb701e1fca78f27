import { describe, expect, test } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import { slotStepsOf } from '../../src/sawing/machining.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';

/** Boards of 12' give pieces of 11' 11". Every biscuit sits in two slots, one in each of the pieces that it joins. */
const LONG = `wall north 17' 6" { splice 9' }
  wall east 14' { splice 7' }
  wall south 17' 6" { splice 9' }
  wall west 14' { splice 7' }`;
const layouts = await layoutsOf(`${PLAIN_BEAM.replaceAll('lengths 8\', 12\', 16\'', 'lengths 8\', 12\'')}
profile one like plain { bottom.biscuits 1 x #10 }
profile two like plain { bottom.biscuits 2 x #10 }
room crossed {
  ${LONG}
  grid { coffers-north 3; coffers-east 2; beams one; through north-south; perimeter { kind band; stock eight } }
}
room teed {
  ${LONG}
  grid { coffers-north 3; coffers-east 2; beams two; through north-south; perimeter { kind band; stock eight } }
  line A { until 2 }
}
room aside {
  ${LONG}
  grid { coffers-north 3; coffers-east 2; beams one; through north-south; perimeter { kind band; stock eight } }
  line 1 { splice 6' 10" }
  line 2 { splice 3' }
}
room walled {
  wall north 17' 6"
  wall east 9'
  grid { coffers-north 2; coffers-east 2; beams one; through east-west; perimeter { kind half-beam; width 2 1/2"; beams one } }
}`);
function off(name: string): { slots(id: string): string[]; count: number; biscuits: number } {
    const { ceiling } = layouts.find(layout => layout.room.name === name) as Required<Layout>, { pieces, joints } = takeOffOf(ceiling);
    return {
        slots: id => pieces.find(piece => piece.id === `${name}.${id}`)!.work.flatMap(work => (work.kind === 'slots' ? `${work.places} x ${work.count}: ${work.where}` : [])),
        count: slotStepsOf(pieces).reduce((sum, step) => sum + step.count, 0), biscuits: joints.reduce((sum, { biscuits }) => sum + (biscuits?.count ?? 0), 0),
    };
}

describe('slots at a splice that others butt against', () => {
    test('are cut once, when it is together, and count for the first of its pieces', () => {
        const { slots, count, biscuits } = off('crossed');
        expect(slots('bottom-1-a')).toEqual(['1 x 1: in the south end', '2 x 1: in both edges at line A, once piece b is spliced on']);
        expect(slots('bottom-1-b')).toEqual(['1 x 1: in the north end']);
        // by hand: 4 butts and 2 splices
        expect([biscuits, count]).toEqual([6, 12]);
    });
    test('where a line ends at it, in the one edge', () => {
        const { slots, count, biscuits } = off('teed');
        expect(slots('bottom-2-a')).toEqual(['1 x 2: in the south end', '1 x 2: in the west edge at line A, once piece b is spliced on']);
        expect(slots('bottom-2-b')).toEqual(['1 x 2: in the north end']);
        // 3 butts and 2 splices, two biscuits each
        expect([biscuits, count]).toEqual([10, 20]);
    });
    test('beside its middle they count for the piece that has more of them; clear of it they have their place', () => {
        // line A is 84" from the north wall and its bottom 4" wide or more: a splice at 82" is under it, before its middle
        const { slots, count, biscuits } = off('aside');
        expect(slots('bottom-1-a')).toEqual(['1 x 1: in the south end']);
        expect(slots('bottom-1-b')).toEqual(['1 x 1: in the north end', '2 x 1: in both edges at line A, once piece a is spliced on']);
        expect(slots('bottom-2-b')).toEqual(['1 x 1: in the north end', '2 x 1: in both edges, centered 48" from the north end']);
        expect([biscuits, count]).toEqual([6, 12]);
    });
    test('along a wall as well', () => {
        const { slots, count, biscuits } = off('walled');
        expect(slots('bottom-north-a').at(-1)).toBe('1 x 1: in the edge to the room at line 1, once piece b is spliced on');
        // what is left there is the bottom along the east wall
        expect(slots('bottom-north-b')).toEqual(['1 x 1: in the west end', '1 x 1: in the edge to the room, centered 103 3/4" from the west end']);
        expect(count).toBe(2 * biscuits);
    });
});
