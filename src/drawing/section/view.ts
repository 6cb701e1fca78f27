import type { Ticks } from '../../quantity/ticks.ts';
import type { Point } from '../display-list.ts';

/** From the section's ticks to the sheet: `across` from the beam's middle, `down` from the ceiling. */
export interface SectionView {
    readonly pointsPerTick: number;
    readonly middle: number;
    readonly ceiling: number;
    /** Break lines left and right, between which the ceiling is shown. */
    readonly left: number; readonly right: number;
    /** Top of what is shown above the ceiling. */
    readonly top: number;
}

export function across(view: SectionView, ticks: Ticks): number {
    return view.middle + ticks * view.pointsPerTick;
}
export function down(view: SectionView, ticks: Ticks): number {
    return view.ceiling + ticks * view.pointsPerTick;
}
export function spot(view: SectionView, acrossTicks: Ticks, downTicks: Ticks): Point {
    return [across(view, acrossTicks), down(view, downTicks)];
}

/** Corners of an upright rectangle in the section; `side` -1 mirrors it to the left of the beam's middle. */
export function box(view: SectionView, [from, to]: readonly [Ticks, Ticks], [top, foot]: readonly [Ticks, Ticks], side: -1 | 1 = 1): readonly Point[] {
    return [spot(view, side * from, top), spot(view, side * to, top), spot(view, side * to, foot), spot(view, side * from, foot)];
}
