import type { Rabbet, Side } from '../job/model.ts';
import type { EndCut, Piece } from './model.ts';

/** What is on the left of somebody who stands in the coffer and looks at the face of a side: at its west or north end, or not. */
const LEFT_IS_FIRST_END: Readonly<Record<Side, boolean>> = {
    south: true,  // looking north, west is on the left
    west: true,   // looking east, north is on the left
    north: false, // looking south, east is on the left
    east: false,  // looking west, south is on the left
};

/**
 * The hand of a rabbeted side with one mitered end: the end that is mitered, seen with the face towards you and the
 * groove edge down. With none or two it fits either way round. A rabbet on the upper edge is looked at upside down.
 */
export function handOf(on: Side, [first, last]: readonly [EndCut, EndCut], edge: Rabbet['edge']): Piece['hand'] {
    if ((first.cut === 'miter') === (last.cut === 'miter')) return null;
    const atFirst = first.cut === 'miter';
    const asItHangs = edge.startsWith('lower');
    return (LEFT_IS_FIRST_END[on] === atFirst) === asItHangs ? 'left' : 'right';
}
