import type { Rabbet } from '../job/model.ts';
import type { Piece } from './model.ts';

/** A hand is told with the groove edge down; a piece whose rabbet is on its upper edge is looked at upside down. */
export function handHung(hand: Piece['hand'], edge: Rabbet['edge']): Piece['hand'] {
    if (hand === null || edge === 'lower') return hand;
    return hand === 'left' ? 'right' : 'left';
}
