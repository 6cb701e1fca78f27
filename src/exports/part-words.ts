import type { Part } from '../takeoff/model.ts';

/** What the pieces of a part are called together. */
export const PART_WORDS: Readonly<Record<Part, string>> = {
    blocking: 'Blocking', spacer: 'Spacers', side: 'Sides', cleat: 'Cleats', bottom: 'Bottoms', band: 'Band', trim: 'Ceiling trim',
};

/** Colors by part, as light woods of different kinds look beside each other: red, green, blue from 0 to 255. */
export const PART_COLORS: Readonly<Record<Part, readonly [number, number, number]>> = {
    blocking: [176, 146, 102], spacer: [158, 163, 142], side: [222, 201, 164], cleat: [196, 165, 112], bottom: [236, 221, 190], band: [211, 187, 148], trim: [244, 234, 211],
};
