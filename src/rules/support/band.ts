import type { Band, Layout } from '../../ceiling/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** How far below the ceiling the band's upper edge hangs; negative where it would stand above the ceiling. */
export function bandTop({ lowerEdge, height }: Band): Ticks {
    return lowerEdge.ticks - height.ticks;
}

/** Height of the trim that goes round the coffers: that of the grid's beams. */
export function trimHeightOf({ room, sections }: Layout): Ticks | undefined {
    const beams = room.grid?.beams?.value;
    return beams && sections.get(beams.key)?.trimHeight?.ticks;
}
