import type { Ceiling } from '../../ceiling/model.ts';
import type { BottomOrder } from '../../takeoff/closing/bottoms.ts';
import { closingAmong, type Closing } from '../../takeoff/closing/pieces.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { takeOffOf } from '../../takeoff/take-off.ts';

/** The closing pieces of a ceiling, as its bottoms stand in the cut list. */
export function closingPieces(ceiling: Ceiling, order: BottomOrder = {}, takeOff: TakeOff = takeOffOf(ceiling)): Closing[] {
    return closingAmong(ceiling, takeOff.pieces, order);
}
