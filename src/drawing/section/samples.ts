import { line, polygon, type Item, type Point } from '../display-list.ts';
import { endGrain } from '../fill/end-grain.ts';
import { hatch } from '../fill/hatch.ts';
import type { PenName } from '../pens.ts';
import { SAMPLE_WIDTH, type StripRow } from '../sheet/strip.ts';
import { SHEET_SPACING } from './wood.ts';

/** What sections are drawn in, for the keys beside them. */
export function sample(words: string, draw: (left: number, middle: number) => readonly Item[]): StripRow {
    return { kind: 'sample', words, draw };
}
export function field(left: number, middle: number): readonly [Point, Point, Point, Point] {
    return [[left, middle - 6], [left + SAMPLE_WIDTH, middle - 6], [left + SAMPLE_WIDTH, middle + 6], [left, middle + 6]];
}
export function stretch(words: string, pen: PenName): StripRow {
    return sample(words, (left, middle) => [line([left, middle], [left + SAMPLE_WIDTH, middle], pen)]);
}

export const ACROSS_GRAIN = sample('wood cut across the grain', (left, middle) =>
    [...endGrain([field(left, middle)], { pith: [left + 11, middle + 40], spacing: 4.6, seed: 'key' }), polygon(field(left, middle), 'edge')]);
export const SHEET_MATERIAL = sample('sheet material, cut', (left, middle) => [...hatch(field(left, middle), SHEET_SPACING, true), polygon(field(left, middle), 'edge')]);
export const WALL = sample('wall', (left, middle) => [polygon(field(left, middle), null, 'tint'), ...hatch(field(left, middle), 4.6, false)]);
export function blocking(words: string): StripRow {
    return sample(words, (left, middle) => {
        const [a, b, c, d] = field(left, middle);
        return [polygon([a, b, c, d], 'edge'), line(a, c, 'thin'), line(b, d, 'thin')];
    });
}
