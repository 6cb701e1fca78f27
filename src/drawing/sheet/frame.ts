import { group, line, rectangle, text, type Group, type Item } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import type { Paper } from '../paper.ts';
import { fitText, wrapText } from '../text/fit-text.ts';

/** What the title block says. No date: the same job gives the same sheet on any day. */
export interface TitleBlock {
    readonly job: string; readonly room: string; readonly client?: string;
    readonly drawing: readonly string[];
    /** A line under the drawing's name: which of several it is. */
    readonly detail?: string;
    readonly scale: string; readonly cutTo: string; readonly lengths: string;
    readonly sheet: string; readonly of: string;
}
interface Frame {
    readonly group: Group;
    /** Where the drawing stands, inside the border. */
    readonly area: Extent;
    /** Key, notes and tables, above the title block. */
    readonly strip: Extent;
}

export const MARGIN = 22;
const STRIP = 176;
const PAD = 12;

/** The sheet's border with a strip down its right side; the title block stands at the strip's foot, where a folded sheet is read. */
export function frame(paper: Paper, title: TitleBlock): Frame {
    const border: Extent = { left: MARGIN, top: MARGIN, right: paper.width - MARGIN, foot: paper.height - MARGIN };
    const left = border.right - STRIP;
    const block = new Block(left, border.right, border.foot);
    block.sheet(title);
    block.halves(['LENGTHS', title.lengths], ['CUT TO', title.cutTo]);
    block.halves(['SCALE', title.scale], ['PAPER', paper.label]);
    block.lines('DRAWING', [
        ...title.drawing.map(words => ({ words, size: 12, bold: true })),
        ...detailLines(title.detail),
    ]);
    block.lines('JOB', [
        { words: title.job, size: 13, bold: true }, { words: title.room, size: 9.4, bold: false },
        ...(title.client === undefined ? [] : [{ words: `for ${title.client}`, size: 8, bold: false }]),
    ]);
    const items = [rectangle(border.left, border.top, border.right, border.foot, 'border'), line([left, border.top], [left, border.foot], 'edge'), ...block.items];
    return {
        group: group('frame', { title: 'Border and title block' }, items),
        area: { left: border.left, top: border.top, right: left, foot: border.foot },
        strip: { left: left + PAD, top: border.top, right: border.right - PAD, foot: block.top },
    };
}

/** In one line where it has room, at most a little smaller; else in as many as it takes, up to six. */
function detailLines(detail = ''): readonly { readonly words: string; readonly size: number; readonly bold: boolean }[] {
    const width = STRIP - 2 * PAD, most = 6, fits = !fitText(detail, width, 9.4, 7.5).text.endsWith('…'), lines = fits ? [detail] : wrapText(detail, width, 8);
    const shown = lines.length <= most ? lines : [...lines.slice(0, most - 1), lines.slice(most - 1).join(' ')];
    return detail === '' ? [] : shown.map(words => ({ words, size: fits ? 9.4 : 8, bold: false }));
}

/** Fields stacked from the foot upward. */
class Block {
    readonly items: Item[] = [];
    constructor(private readonly left: number, private readonly right: number, public top: number) {}

    sheet(title: TitleBlock): void {
        this.field(60);
        const number = fitText(title.sheet, this.right - this.left - 2 * PAD - 50, 38, 12, 600);
        this.label(this.left + PAD, 'SHEET');
        this.items.push(
            text([this.right - PAD, this.top + 48], number.text, { size: number.size, weight: 600, anchor: 'end' }),
            text([this.left + PAD, this.top + 48], title.of, { size: 8, tone: 'soft' }),
        );
    }

    halves(...fields: readonly (readonly [string, string])[]): void {
        this.field(34);
        const middle = (this.left + this.right) / 2;
        this.items.push(line([middle, this.top], [middle, this.top + 34], 'thin'));
        for (const [i, [label, words]] of fields.entries()) {
            const x = i === 0 ? this.left + PAD : middle + 9;
            const fitted = fitText(words, (i === 0 ? middle : this.right) - x - 5, 9.4, 6);
            this.label(x, label);
            this.items.push(text([x, this.top + 26], fitted.text, { size: fitted.size }));
        }
    }

    lines(label: string, lines: readonly { readonly words: string; readonly size: number; readonly bold: boolean }[]): void {
        const fitted = lines.map(({ words, size, bold }) =>
            ({ ...fitText(words, this.right - this.left - 2 * PAD, size, Math.min(size, 7.5), bold ? 600 : 400), full: size, bold }));
        this.field(18 + fitted.reduce((sum, { full }) => sum + full * 1.22, 0) + 6);
        this.label(this.left + PAD, label);
        let y = this.top + 16;
        for (const { text: words, size, full, bold } of fitted) {
            y += full * 1.22;
            this.items.push(text([this.left + PAD, y - full * 0.1], words, { size, weight: bold ? 600 : 400, tone: full < 9 ? 'soft' : 'ink' }));
        }
    }

    private field(height: number): void {
        this.top -= height;
        this.items.push(line([this.left, this.top], [this.right, this.top], 'thin'));
    }

    private label(x: number, words: string): void {
        this.items.push(text([x, this.top + 12], words, { size: 6.4, tone: 'soft', spaced: 0.8 }));
    }
}
