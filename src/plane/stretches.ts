/** A stretch along a run over which something is more than nothing, with the most of it and where that is. */
export interface DeepStretch { readonly from: number; readonly to: number; readonly deepest: { readonly ticks: number; readonly along: number } }

/**
 * Where something is more than nothing along a run, and how much at most, in whole numbers; what comes to no more than `least` is left out. Between neighboring
 * spots it runs straight.
 */
export function stretchesOver(spots: readonly { readonly along: number; readonly depth: number }[], least: number): DeepStretch[] {
    const found: { from: number; to: number; deepest: { ticks: number; along: number } }[] = [];
    let open: (typeof found)[number] | undefined;
    spots.forEach((spot, i) => {
        const before = spots[i - 1];
        const crossing = before && before.depth !== spot.depth
            ? before.along + (spot.along - before.along) * before.depth / (before.depth - spot.depth) : spot.along;
        if (spot.depth > 0) {
            if (!open) found.push(open = { from: crossing, to: spot.along, deepest: { ticks: spot.depth, along: spot.along } });
            open.to = spot.along;
            if (spot.depth > open.deepest.ticks) open.deepest = { ticks: spot.depth, along: spot.along };
        } else if (open) {
            open.to = crossing;
            open = undefined;
        }
    });
    return found.filter(({ deepest }) => deepest.ticks > least).map(({ from, to, deepest }) => ({
        from: Math.round(from), to: Math.round(to), deepest: { ticks: Math.round(deepest.ticks), along: Math.round(deepest.along) },
    }));
}
