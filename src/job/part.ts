import { capitalized } from '../plain/words.ts';

/** Kinds of pieces, from the ceiling down. */
export type Part = 'panel' | 'blocking' | 'spacer' | 'side' | 'cleat' | 'bottom' | 'timber' | 'molding' | 'band' | 'trim';
export const PARTS: readonly Part[] = ['panel', 'blocking', 'spacer', 'side', 'cleat', 'bottom', 'timber', 'molding', 'band', 'trim'];

/** What all of them are called together, as at the head of a list. */
export const PLURAL: Readonly<Record<Part, string>> =
    { panel: 'panels', blocking: 'blocking', spacer: 'spacers', side: 'sides', cleat: 'cleats', bottom: 'bottoms', timber: 'timbers', molding: 'moldings', band: 'band', trim: 'trim' };

/** What one is called over it, as on a label, and what all of them are: there is other trim in a room. */
export function partTitle(part: Part): string {
    return part === 'trim' ? 'Ceiling trim' : capitalized(part);
}
export function partsTitle(part: Part): string {
    return part === 'trim' ? 'Ceiling trim' : capitalized(PLURAL[part]);
}

/** What one is called behind a number: `1 side`, `2 sides`, `2 bands`, `2 trim`. */
export function plural(part: Part, count: number): string {
    return count === 1 || part === 'blocking' || part === 'trim' ? part : `${part}s`;
}
