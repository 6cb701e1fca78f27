import { group, line, text, type Group, type Item } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { fitText, wrapText } from '../text/fit-text.ts';
import { textWidth } from '../text/measure-text.ts';
import { atKey } from '../../plain/at-key.ts';

/** A block of the strip beside a drawing: a heading and its rows. */
export interface StripBlock {
    readonly id: string; readonly heading: string; readonly rows: readonly StripRow[];
    /** May lose its last rows where the strip is full; `more` then says where the rest is found. */
    readonly more?: string;
}
export type StripRow =
    /** A sample of how something is drawn, on a field of SAMPLE_WIDTH points (or SYMBOL_WIDTH) from the middle left point given to `draw`. */
    | { readonly kind: 'sample' | 'symbol'; readonly draw: (left: number, middle: number) => readonly Item[]; readonly words: string }
    | { readonly kind: 'note'; readonly mark: string; readonly words: string }
    | { readonly kind: 'pair'; readonly left: string; readonly right: string; readonly total?: boolean }
    /** Short rows set beside each other, two to a line. */
    | { readonly kind: 'beside'; readonly rows: readonly [StripRow] | readonly [StripRow, StripRow] };

export const SAMPLE_WIDTH = 30;
export const SYMBOL_WIDTH = 16;
/** Of its words, where there is room for all. */
export const SIZE = 8.4;
const FACTORS = [1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7];

/** Sets the blocks one under the other: as large as goes, then with fewer rows where a block may lose some. */
export function strip(blocks: readonly StripBlock[], room: Extent): Group {
    const height = heightsIn(room);
    let shown: readonly StripBlock[] = blocks.filter(block => block.rows.length > 0);
    const fits = (factor: number): boolean => footOf(shown, room, factor, height) <= room.foot;
    let factor = FACTORS.find(fits);
    while (factor === undefined && shown.length > 0) {
        shown = shorter(shown);
        factor = FACTORS.find(fits);
    }
    return group('strip', { title: 'Key and notes' }, layBlocks(shown, room, factor ?? FACTORS[0]!));
}

type HeightOf = (row: StripRow, factor: number) => number;

/** How high a row is does not depend on where it stands: found once, however often a long strip is shortened. */
function heightsIn(room: Extent): HeightOf {
    const known = new Map<StripRow, Map<number, number>>();
    return (row, factor) => atKey(atKey(known, row, () => new Map<number, number>()), factor, () => layRow(row, room, 0, factor).height);
}

/** The longest block that may lose rows loses one; where none may, the last block goes. */
function shorter(blocks: readonly StripBlock[]): readonly StripBlock[] {
    const longest = Math.max(...blocks.map(block => (block.more === undefined ? 0 : block.rows.length)));
    if (longest <= 1) return blocks.slice(0, -1);
    const at = blocks.findIndex(block => block.more !== undefined && block.rows.length === longest);
    return blocks.map((block, i) => {
        if (i !== at) return block;
        const last = block.rows.at(-1)!, said = last.kind === 'note' && last.words === block.more;
        return { ...block, rows: said ? [...block.rows.slice(0, -2), last] : [...block.rows.slice(0, -1), { kind: 'note', mark: '', words: block.more! }] };
    });
}

const TOP = 20, UNDER_HEADING = { sample: 18, other: 14 }, BETWEEN = 16, LAST = 10;

function footOf(blocks: readonly StripBlock[], room: Extent, factor: number, height: HeightOf): number {
    let y = room.top + TOP;
    for (const { rows } of blocks) {
        y += underHeading(rows) * factor;
        for (const row of rows) y += height(row, factor);
        y += BETWEEN * factor;
    }
    return y - LAST * factor;
}

function underHeading([first]: readonly StripRow[]): number {
    return first!.kind === 'sample' ? UNDER_HEADING.sample : UNDER_HEADING.other;
}

function layBlocks(blocks: readonly StripBlock[], room: Extent, factor: number): readonly Item[] {
    let y = room.top + TOP;
    return blocks.map((block, i) => {
        const rule = i === 0 ? [] : [line([room.left - 12, y - 14 * factor], [room.right + 12, y - 14 * factor], 'thin')];
        const heading = text([room.left, y], block.heading, { size: 6.4, tone: 'soft', spaced: 0.8 });
        y += underHeading(block.rows) * factor;
        const rows = block.rows.flatMap(row => {
            const laid = layRow(row, room, y, factor);
            y += laid.height;
            return laid.items;
        });
        y += BETWEEN * factor;
        return group(`strip.${block.id}`, {}, [...rule, heading, ...rows]);
    });
}

/** Short rows two to a line, down the first column and then the second. */
export function inTwoColumns(rows: readonly StripRow[]): readonly StripRow[] {
    const half = Math.ceil(rows.length / 2);
    return rows.slice(0, half).map((row, i) => ({ kind: 'beside', rows: rows[half + i] === undefined ? [row] : [row, rows[half + i]!] }));
}

interface LaidRow { readonly items: readonly Item[]; readonly height: number }

function layRow(row: StripRow, room: Extent, y: number, factor: number): LaidRow {
    const size = SIZE * factor;
    const step = 10.6 * factor;
    switch (row.kind) {
        case 'sample':
        case 'symbol': {
            const words = column(row.words, room.left + (row.kind === 'sample' ? SAMPLE_WIDTH + 10 : SYMBOL_WIDTH + 4), room.right, y, size, step);
            return { items: [...row.draw(room.left, y - size * 0.34), ...words.items], height: words.height + 6 * factor };
        }
        case 'note': {
            const mark = row.mark === '' ? [] : [text([room.left, y], row.mark, { size, weight: 600 })];
            const words = column(row.words, room.left + 13 * factor, room.right, y, size, step);
            return { items: [...mark, ...words.items], height: words.height + 3.2 * factor };
        }
        case 'beside': {
            const gap = 14;
            const half = (room.right - room.left - gap) / 2;
            const laid = row.rows.map((each, i) =>
                layRow(each, { ...room, left: room.left + i * (half + gap), right: room.left + i * (half + gap) + half }, y, factor));
            return { items: laid.flatMap(each => each.items), height: Math.max(...laid.map(each => each.height)) };
        }
        case 'pair': {
            const weight = row.total ? 600 : 400;
            const right = fitText(row.right, (room.right - room.left) * 0.6, size, size * 0.7, weight);
            const left = fitText(row.left, room.right - room.left - textWidth(right.text, right.size, weight) - 6, size, size * 0.7, weight);
            const rule = row.total ? [line([room.left, y - size * 0.95], [room.right, y - size * 0.95], 'thin')] : [];
            return {
                items: [...rule, text([room.left, y], left.text, { size: left.size, weight }), text([room.right, y], right.text, { size: right.size, weight, anchor: 'end' })],
                height: step + (row.total ? 2 : 0.6) * factor,
            };
        }
    }
}

function column(words: string, left: number, right: number, y: number, size: number, step: number): LaidRow {
    const lines = wrapText(words, right - left, size);
    return { items: lines.map((each, i) => text([left, y + i * step], each, { size })), height: lines.length * step };
}
