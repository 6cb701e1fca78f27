/** Kinds of pieces, from the ceiling down. */
export type Part = 'blocking' | 'spacer' | 'side' | 'cleat' | 'bottom' | 'band' | 'trim';
export const PARTS: readonly Part[] = ['blocking', 'spacer', 'side', 'cleat', 'bottom', 'band', 'trim'];

/** What several of them are called. */
export const PLURAL: Readonly<Record<Part, string>> =
    { blocking: 'blocking', spacer: 'spacers', side: 'sides', cleat: 'cleats', bottom: 'bottoms', band: 'band', trim: 'trim' };
