import { WOODS } from '../drawing/view/woods.ts';
import type { Part } from '../takeoff/model.ts';

/** What the pieces of a part are called together. */
export const PART_WORDS: Readonly<Record<Part, string>> = {
    blocking: 'Blocking', spacer: 'Spacers', side: 'Sides', cleat: 'Cleats', bottom: 'Bottoms', band: 'Band', trim: 'Ceiling trim',
};

/** Colors by part: red, green, blue from 0 to 255. */
export function partColor(part: Part): readonly number[] {
    return [1, 3, 5].map(i => parseInt(WOODS.light[part].slice(i, i + 2), 16));
}
