import type { Weight } from '../display-list.ts';
import { inLines } from '../../plain/in-lines.ts';
import { cleanText } from '../../text/clean-text.ts';
import { textWidth } from './measure-text.ts';

interface Fitted { readonly text: string; readonly size: number }

/** Shrinks a line until it is no wider than `width` points, but not below `least`; then cuts it and says so with an ellipsis. */
export function fitText(words: string, width: number, size: number, least: number, weight: Weight = 400): Fitted {
    const line = cleanText(words).trim();
    const natural = textWidth(line, size, weight);
    if (natural <= width) return { text: line, size };
    const shrunk = Math.floor(size * width / natural * 10) / 10;
    if (shrunk >= least) return { text: line, size: shrunk };
    return { text: cutText(line, width, least, weight), size: least };
}

/** Breaks text into lines of at most `width` points, at spaces but not within a length; a word wider than a line is cut. */
export function wrapText(words: string, width: number, size: number, weight: Weight = 400): readonly string[] {
    const parts = cleanText(words).trim().split(/(?<!\d') (?!\d+\u2044)/u).map(word => cutText(word, width, size, weight));
    return inLines(parts, line => textWidth(line, size, weight) <= width);
}

const LETTERS = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Cuts between whole characters as a reader sees them, never between a letter and its accent. */
function cutText(line: string, width: number, size: number, weight: Weight): string {
    if (textWidth(line, size, weight) <= width) return line;
    let kept = '';
    for (const { segment } of LETTERS.segment(line)) {
        if (textWidth(`${kept}${segment}…`, size, weight) > width) break;
        kept += segment;
    }
    return `${kept.trimEnd()}…`;
}
