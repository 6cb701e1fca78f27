import { biscuitOf, slotDepth } from '../../data/biscuits.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/**
 * What a biscuit sticks out of the edge or the end that it is glued into, in ticks: its width less the depth of the slot, pushed in to the bottom of
 * it. So it is least, and at most it is half of the biscuit. 0 of a size that nobody sells: then nothing is known.
 */
export function stickOut(size: string): Ticks {
    const biscuit = biscuitOf(size);
    return biscuit ? biscuit.width - slotDepth(biscuit) : 0;
}
