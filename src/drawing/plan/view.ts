import type { Ticks } from '../../quantity/ticks.ts';
import type { Box } from '../../takeoff/model.ts';
import type { Extent } from '../extent.ts';

/** From the room's ticks (x east, y south, from the north-west corner) to the sheet: north is up. */
export interface PlanView { readonly pointsPerTick: number; readonly left: number; readonly top: number }

export function toX(view: PlanView, x: Ticks): number {
    return view.left + x * view.pointsPerTick;
}
export function toY(view: PlanView, y: Ticks): number {
    return view.top + y * view.pointsPerTick;
}
export function extentOf(view: PlanView, { west, east, north, south }: Pick<Box, 'west' | 'east' | 'north' | 'south'>): Extent {
    return { left: toX(view, west), right: toX(view, east), top: toY(view, north), foot: toY(view, south) };
}
