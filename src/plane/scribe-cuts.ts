import type { DeepStretch } from './stretches.ts';

/** A stretch that is scribed, with a little to lay it on by at either end, and the line to cut to: how deep, from place to place; straight between. */
export interface ScribeCut {
    readonly from: number; readonly to: number;
    readonly cut: readonly { readonly along: number; readonly depth: number }[];
    readonly deepest: number;
}

/**
 * The lines to cut to along an edge that is straight before, over all stretches of it; stretches so near to each other that they would overlap are one.
 * @param depths how deep it is scribed from place to place; less than nothing where it is not
 * @param beside what a cut is longer than its stretches at either end, where the edge has as much
 */
export function scribeCuts(depths: ScribeCut['cut'], stretches: readonly DeepStretch[], length: number, beside: number): ScribeCut[] {
    const groups: DeepStretch[][] = [];
    for (const stretch of stretches) {
        const last = groups.at(-1);
        if (last && stretch.from - last.at(-1)!.to < 2 * beside) last.push(stretch);
        else groups.push([stretch]);
    }
    return groups.map(group => {
        const from = Math.max(0, group[0]!.from - beside), to = Math.min(Math.round(length), group.at(-1)!.to + beside);
        return { from, to, cut: cutOf(depths, group, from, to), deepest: Math.max(...group.map(({ deepest }) => deepest.ticks)) };
    });
}

/** Beside the stretches the edge stays as it is. */
function cutOf(depths: ScribeCut['cut'], stretches: readonly DeepStretch[], from: number, to: number): ScribeCut['cut'] {
    const places = stretches.flatMap(stretch => {
        const inside = depths.filter(({ along }) => along > stretch.from && along < stretch.to)
            .map(({ along, depth }) => ({ along, depth: Math.max(0, depth) }));
        const depthAt = (end: number): number => Math.max(0, depths.find(({ along }) => Math.abs(along - end) <= 1)?.depth ?? 0);
        return [{ along: stretch.from, depth: depthAt(stretch.from) }, ...inside, { along: stretch.to, depth: depthAt(stretch.to) }];
    });
    return [...from < places[0]!.along ? [{ along: from, depth: 0 }] : [], ...places, ...to > places.at(-1)!.along ? [{ along: to, depth: 0 }] : []];
}
