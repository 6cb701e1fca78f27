import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import type { Show } from '../quantity/print-length.ts';

/** A length as a number a spreadsheet can add up, in the unit the job shows. */
export function decimal(ticks: Ticks, show: Show): number {
    return show === 'millimeters' ? rounded(ticks / TICKS_PER_MM) : rounded(ticks / TICKS_PER_INCH);
}
export function unitOf(show: Show): string {
    return show === 'millimeters' ? 'mm' : 'in';
}
function rounded(value: number): number {
    return Math.round(value * 1e7) / 1e7;
}
