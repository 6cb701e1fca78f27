import type PDFDocument from 'pdfkit';
import type { Circle, Item, Line, Polyline, Sheet, TextRun } from '../../drawing/display-list.ts';
import { penOf, type PenName } from '../../drawing/pens.ts';
import { THEMES, type Tone } from '../../drawing/themes.ts';
import { stretchesOf } from './letters.ts';

type Doc = InstanceType<typeof PDFDocument>;

/** Draws a sheet on the page that is open, at its true size: a point of the list is a point of the page. Lines stay lines and letters letters. */
export function drawSheetOn(doc: Doc, sheet: Sheet): void {
    for (const item of sheet.items) drawItem(doc, item);
}

function drawItem(doc: Doc, item: Item): void {
    switch (item.kind) {
        case 'group': item.items.forEach(inner => { drawItem(doc, inner); }); break;
        case 'line': drawLine(doc, item); break;
        case 'polyline': drawPolyline(doc, item); break;
        case 'circle': drawCircle(doc, item); break;
        case 'text': drawText(doc, item); break;
    }
}

function drawLine(doc: Doc, { from, to, pen }: Line): void {
    doc.moveTo(...pair(from)).lineTo(...pair(to));
    paint(doc, pen, null);
}

function drawPolyline(doc: Doc, { points, closed, pen, fill }: Polyline): void {
    const [first, ...rest] = points;
    if (!first) return;
    doc.moveTo(...pair(first));
    for (const point of rest) doc.lineTo(...pair(point));
    if (closed) doc.closePath();
    paint(doc, pen, fill);
}

function drawCircle(doc: Doc, { center, radius, pen, fill }: Circle): void {
    doc.circle(...pair(center), radius);
    paint(doc, pen, fill);
}

function paint(doc: Doc, name: PenName | null, fill: Tone | null): void {
    const color = fill && THEMES.print[fill];
    if (name === null) { if (color) doc.fill(color); return; }
    const pen = penOf(name), line = THEMES.print[pen.tone];
    doc.lineWidth(pen.width).lineCap('butt').lineJoin('miter');
    if (pen.dashes) doc.dash(pen.dashes[0]!, { space: pen.dashes[1]!, ...pen.dashes.length > 2 && { dash: [...pen.dashes] } });
    else doc.undash();
    if (color) doc.fillAndStroke(color, line); else doc.stroke(line);
}

function drawText(doc: Doc, { at: [x, y], text, size, weight, anchor, turned, tone, spaced }: TextRun): void {
    const stretches = stretchesOf(text, weight).map(stretch => {
        doc.font(stretch.font, size);
        return { ...stretch, width: doc.widthOfString(stretch.text, { characterSpacing: spaced }) };
    });
    const whole = stretches.reduce((sum, { width }) => sum + width, 0);
    doc.save();
    doc.translate(x, y);
    if (turned !== 0) doc.rotate(-turned);
    let left = anchor === 'start' ? 0 : anchor === 'middle' ? -whole / 2 : -whole;
    for (const { font, text: letters, width } of stretches) {
        doc.font(font, size).fillColor(THEMES.print[tone]).text(letters, left, 0, { baseline: 'alphabetic', lineBreak: false, characterSpacing: spaced });
        left += width;
    }
    doc.restore();
}

function pair([x, y]: readonly [number, number]): [number, number] {
    return [x, y];
}
