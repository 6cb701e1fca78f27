import type PDFDocument from 'pdfkit';
import type { Weight } from '../../drawing/display-list.ts';
import { textWidth } from '../../drawing/text/measure-text.ts';
import { inLines } from '../../plain/in-lines.ts';
import { stretchesOf } from './letters.ts';

type Doc = InstanceType<typeof PDFDocument>;
const SIZE = 10.5, TITLE = 12, HEADING = 19;
const LEADING = 1.36;
/** Between columns. */
const GUTTER = 18;
const SIGNING = ['For the client', 'For the contractor'];

/** Words one below the other, page after page. A title never stands alone at a page's foot. */
export class Flow {
    constructor(private readonly doc: Doc) {}

    heading(words: string): void {
        this.words(words, { size: HEADING, weight: 600 });
        this.space(4);
    }

    title(words: string): void {
        this.space(11);
        this.keep(TITLE * LEADING + 2 * SIZE * LEADING);
        this.words(words, { size: TITLE, weight: 600 });
        this.space(2);
    }

    line(words: string): void {
        this.words(words, {});
    }

    /** `after`: height of what follows and must not begin a page alone; the last item goes there with it. */
    list(title: string, items: readonly string[], after = 0): void {
        if (items.length === 0) return;
        if (items.length === 1) this.keep(after + 11 + TITLE * LEADING + 2 * SIZE * LEADING);
        this.title(title);
        for (const [i, item] of items.entries()) {
            this.keep(2 * SIZE * LEADING + (i === items.length - 1 ? after : 0));
            this.words('\u2013', {}, 0, false);
            this.words(item, {}, 14);
            this.space(2);
        }
    }

    /** Words at the left, a figure at the right edge. */
    row(words: string, figure: string, strong: boolean): void {
        const weight: Weight = strong ? 600 : 400, { doc } = this, { left, right } = doc.page.margins;
        this.keep(SIZE * LEADING + 4);
        const y = doc.y;
        const width = this.widthOf(figure, weight);
        this.set(figure, doc.page.width - right - width, y, weight);
        this.words(words, { weight }, 0, true, width + 20);
        doc.moveTo(left, doc.y + 1).lineTo(doc.page.width - right, doc.y + 1).lineWidth(strong ? 0.9 : 0.3).stroke('#000000');
        this.space(5);
    }

    /** Words in the first column, figures to the right of it; over each page the heads. */
    table(head: readonly string[], rows: readonly (readonly string[])[]): void {
        const { doc } = this, { left, right } = doc.page.margins, height = SIZE * LEADING;
        const widths = head.map((word, i) => Math.max(this.widthOf(word, 600), ...rows.map(row => this.widthOf(row[i]!, 400))));
        const figures = widths.slice(1).reduce((sum, width) => sum + width + GUTTER, 0);
        const line = (cells: readonly string[], weight: Weight): void => {
            const y = doc.y;
            let edge = doc.page.width - right;
            for (const i of [...cells.keys()].slice(1).reverse()) {
                this.set(cells[i]!, edge - this.widthOf(cells[i]!, weight), y, weight);
                edge -= widths[i]! + GUTTER;
            }
            this.words(cells[0]!, { weight }, 0, true, figures);
            doc.moveTo(left, doc.y + 1).lineTo(doc.page.width - right, doc.y + 1).lineWidth(weight === 600 ? 0.9 : 0.3).stroke('#000000');
            this.space(5);
        };
        line(head, 600);
        for (const row of rows) {
            const lines = this.broken(row[0]!, doc.page.width - left - right - figures, SIZE, 400).length;
            if (doc.y + Math.max(1, lines) * height + 6 > doc.page.height - doc.page.margins.bottom) { doc.addPage(); line(head, 600); }
            line(row, 400);
        }
    }

    /** From whom and for whom, and the date, or a line for it. */
    between({ contractor, client, date }: { readonly contractor?: string; readonly client?: string; readonly date?: string }): void {
        const parts = [contractor && `from ${contractor}`, client && `for ${client}`].filter(Boolean).join(', ');
        if (parts) this.line(parts);
        this.line(date === undefined ? 'Date: ______________' : `Date: ${date}`);
    }

    /** The last lists of what is agreed, and the signatures: nobody signs a page on which nothing stands, so the last item goes over with them. */
    endings(lists: readonly (readonly [title: string, items: readonly string[]])[], isSigned: boolean, title = 'Agreed'): void {
        const after = isSigned ? this.signaturesHeight(SIGNING) : 0, last = lists.findLast(([, items]) => items.length > 0);
        for (const [title, items] of lists) this.list(title, items, items === last?.[1] ? after : 0);
        if (isSigned) this.signatures(title, SIGNING);
    }

    /** What signatures take. */
    private signaturesHeight(who: readonly string[]): number {
        return TITLE * LEADING + who.length * 56 + 20;
    }

    private signatures(title: string, who: readonly string[]): void {
        this.keep(this.signaturesHeight(who));
        this.title(title);
        for (const each of who) {
            const { doc } = this, { left } = doc.page.margins;
            this.space(30);
            doc.moveTo(left, doc.y).lineTo(left + 270, doc.y).lineWidth(0.5).stroke('#000000');
            doc.moveTo(left + 300, doc.y).lineTo(left + 420, doc.y).stroke('#000000');
            this.space(3);
            this.words(`${each}: name and signature, date`, { size: 8.5 });
        }
    }

    /** A new page where less than that is left of this one. */
    private keep(height: number): void {
        const { doc } = this;
        if (doc.y + height > doc.page.height - doc.page.margins.bottom) doc.addPage();
    }

    private space(height: number): void {
        this.doc.y += height;
    }

    /** Broken into lines at spaces, and where a word alone is wider than the page, within it. */
    private words(words: string, { size = SIZE, weight = 400 }: { size?: number; weight?: Weight }, indent = 0, advance = true, free = 0): void {
        const { doc } = this, { left, right } = doc.page.margins;
        const width = doc.page.width - left - right - indent - free;
        const begin = doc.y;
        for (const line of this.broken(words, width, size, weight)) {
            if (advance) this.keep(size * LEADING);
            this.set(line, left + indent, doc.y, weight, size);
            doc.y += size * LEADING;
        }
        if (!advance) doc.y = begin;
    }

    private broken(words: string, width: number, size: number, weight: Weight): string[] {
        const parts = words.split(/\s+/).filter(each => each !== '').flatMap(each => this.parts(each, width, size, weight));
        return inLines(parts, line => this.widthOf(line, weight, size) <= width);
    }

    private parts(word: string, width: number, size: number, weight: Weight): string[] {
        if (this.widthOf(word, weight, size) <= width) return [word];
        const letters = [...word], parts: string[] = [];
        let part = '';
        for (const letter of letters) {
            if (part !== '' && this.widthOf(part + letter, weight, size) > width) { parts.push(part); part = ''; }
            part += letter;
        }
        return [...parts, part];
    }

    private widthOf(words: string, weight: Weight, size = SIZE): number {
        return stretchesOf(words, weight).reduce((sum, { text }) => sum + textWidth(text, size, weight), 0);
    }

    private set(words: string, x: number, y: number, weight: Weight, size = SIZE): void {
        const { doc } = this;
        let left = x;
        for (const { font, text } of stretchesOf(words, weight)) {
            doc.font(font, size).fillColor('#000000');
            const width = doc.widthOfString(text);
            doc.text(text, left, y, { lineBreak: false });
            left += width;
        }
        doc.y = y;
    }
}
