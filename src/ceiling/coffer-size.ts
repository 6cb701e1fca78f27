import { extentOf } from '../plane/polygon.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Ceiling, Coffer } from './model.ts';
import { arrangedOf } from './plan.ts';

/** The box round a coffer as it is cut: of a rectangle what it opens to, but for what is left of the run at a wall. */
export function cutSizeOf(ceiling: Ceiling, { number, ...drawn }: Coffer): { readonly width: Ticks; readonly length: Ticks } {
    const { exact, asCut } = arrangedOf(ceiling);
    const { west, east, north, south } = exact === asCut ? drawn : extentOf(asCut.coffers[number - 1]?.outline ?? drawn.outline);
    return { width: east - west, length: south - north };
}

/** Whether every line crosses every other that runs the other way: coffers then stand in rows and columns. */
export function isFullGrid({ coffers, across, down, lines }: Ceiling): boolean {
    return coffers.length === across.coffers.length * down.coffers.length && lines.length === across.lines.length + down.lines.length;
}
