import type { Range } from '../../provenance/source.ts';

/** Longest piece of a line that is shown; a longer line is cut around the words. */
const WIDEST = 110;
const BEFORE = 40;

/**
 * The line that a finding is about, with marks under its words:
 *
 *      12 |     stock  poplar-1x6
 *         |            ^^^^^^^^^^
 *
 * Empty where the text has no such line. A range over several lines is marked to the end of its first.
 */
export function codeFrame(lines: readonly string[], { start, end }: Range, mark = '^'): string[] {
    const line = lines[start.line];
    if (line === undefined) return [];
    const until = end.line > start.line ? line.length : end.character;
    const cells = cellsNear(line, start.character);
    const marked = cells.map(cell => cell.at >= start.character && cell.at < until);
    if (!marked.includes(true)) marked[Math.max(0, cells.findLastIndex(cell => cell.at < start.character) + 1)] = true;
    const [from, to] = window(cells, marked.indexOf(true));
    const shown = cells.slice(from, to);
    const pad = from > 0 ? '... ' : '';
    const code = pad + shown.map(cell => cell.text).join('') + (to < cells.length ? ' ...' : '');
    const number = String(start.line + 1).padStart(5);
    const under = marked.slice(from, to + 1).map((is, i) => (is ? mark : ' ').repeat(shown[i]?.text.length === 0 ? 0 : shown[i]?.width ?? 1)).join('');
    return [`${number} | ${code}`.trimEnd(), `${' '.repeat(5)} | ${' '.repeat(pad.length)}${under}`.trimEnd()];
}

/** Lines of a text as an editor counts them. */
export function linesOf(text: string): string[] {
    return text.split(/\r\n|\r|\n/);
}

/** One visible character: where it starts in the text, what is shown for it, and how many columns that takes. */
interface Cell { readonly at: number; readonly text: string; readonly width: number }

/** What of a line may be shown when it is cut around a place, and more: a line that has many findings must not be gone through for each of them. */
function cellsNear(line: string, place: number): Cell[] {
    const near = Math.min(place, line.length);
    let from = Math.max(0, near - 2 * WIDEST - 2);
    if (/[\udc00-\udfff]/.test(line[from] ?? '')) from--;
    const cells: Cell[] = [];
    let at = from;
    for (const character of line.slice(from, near + 2 * WIDEST + 2)) {
        cells.push({ at, ...shownAs(character) });
        at += character.length;
    }
    return cells;
}

function shownAs(character: string): { text: string; width: number } {
    if (character >= ' ' && character <= '~') return { text: character, width: 1 };
    if (character === '\t') return { text: '    ', width: 4 };
    if (/[\p{Cf}\p{Mn}\p{Me}]/u.test(character)) return { text: /\p{Cf}/u.test(character) ? '' : character, width: 0 };
    if (/[\p{Cc}\p{Cs}]/u.test(character)) return { text: '\ufffd', width: 1 };
    return { text: character, width: WIDE.test(character) ? 2 : 1 };
}
const WIDE = /[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;

function window(cells: readonly Cell[], first: number): [from: number, to: number] {
    if (cells.length <= WIDEST) return [0, cells.length];
    const from = Math.max(0, Math.min(first - BEFORE, cells.length - WIDEST));
    return [from, Math.min(cells.length, from + WIDEST)];
}
