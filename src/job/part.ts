/** Kinds of pieces, from the ceiling down. */
export type Part = 'blocking' | 'spacer' | 'side' | 'cleat' | 'bottom' | 'band' | 'trim';
export const PARTS: readonly Part[] = ['blocking', 'spacer', 'side', 'cleat', 'bottom', 'band', 'trim'];

/** What all of them are called together, as at the head of a list. */
export const PLURAL: Readonly<Record<Part, string>> =
    { blocking: 'blocking', spacer: 'spacers', side: 'sides', cleat: 'cleats', bottom: 'bottoms', band: 'band', trim: 'trim' };

/** What one is called behind a number: `1 side`, `2 sides`, `2 bands`, `2 trim`. */
export function plural(part: Part, count: number): string {
    return count === 1 || part === 'blocking' || part === 'trim' ? part : `${part}s`;
}
