import { group, text, type Sheet, type TextRun } from '../display-list.ts';
import { isCalm } from '../../plain/notice.ts';
import { cleanText } from '../../text/clean-text.ts';
import { textWidth } from '../text/measure-text.ts';
import { wrapText } from '../text/fit-text.ts';
import { MARGIN } from './frame.ts';

const HEAD = 9, SIZE = 7;
/** Baselines of the two lines that the margin of every sheet has room for. */
const LINES = [10, 18.5];
const MORE = ' … `cofferwright check` shows all of it';

/**
 * A sheet with the words that say why it is not to be built from, or calmly what it leaves aside, in the margin over its border; the first of them stands out.
 * All of them are in its description. The same sheet where there are none.
 */
export function withNotice(sheet: Sheet, notice: readonly string[]): Sheet {
    const [head, ...rest] = notice.map(cleanText);
    if (head === undefined) return sheet;
    const tone = isCalm(notice) ? 'soft' : 'accent';
    const width = sheet.paper.width - 2 * MARGIN, indent = textWidth(head.toUpperCase(), HEAD, 600) + 8;
    const lines = linesOf(rest.join('  ·  '), [width - indent, width]);
    const items: TextRun[] = [
        text([MARGIN, LINES[0]!], head.toUpperCase(), { size: HEAD, weight: 600, tone }),
        ...lines.map((words, i) => text([MARGIN + (i === 0 ? indent : 0), LINES[i]!], words, { size: SIZE, tone })),
    ];
    return { ...sheet, title: isCalm(notice) ? sheet.title : `${sheet.title} (${head.replace(/:$/, '').toLowerCase()})`, description: `${[head, ...rest].join(' ')} ${sheet.description}`, items: [...sheet.items, group('notice', { title: head }, items)] };
}

/** Two lines of these widths; what does not fit is said to be more. */
function linesOf(words: string, [first, second]: readonly [number, number]): string[] {
    const start = wrapText(words, first, SIZE)[0] ?? '';
    const rest = words.slice(start.length).trim();
    if (rest === '') return [start];
    const whole = wrapText(rest, second, SIZE);
    return [start, whole.length === 1 ? whole[0]! : `${wrapText(rest, second - textWidth(MORE, SIZE), SIZE)[0]}${MORE}`];
}
