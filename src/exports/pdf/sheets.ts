import PDFDocument from 'pdfkit';
import type { Sheet } from '../../drawing/display-list.ts';
import { documentBytes, newDocument } from './document.ts';
import { drawSheetOn } from './sheet.ts';

/** Sheets as PDF, each on a page of its own paper at its true size: a template is as long as the wood. The same sheets give the same bytes. */
export async function sheetsPdf(title: string, sheets: readonly Sheet[]): Promise<Uint8Array> {
    const doc = newDocument(PDFDocument, title, undefined, false);
    for (const sheet of sheets) {
        doc.addPage({ size: [sheet.paper.width, sheet.paper.height], margin: 0 });
        drawSheetOn(doc, sheet);
    }
    return await documentBytes(doc);
}
