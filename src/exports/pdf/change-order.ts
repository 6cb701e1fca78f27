import PDFDocument from 'pdfkit';
import { DRAFT } from '../../report/bid/draft.ts';
import type { ChangeOrderContent } from '../../report/change-order/content.ts';
import { titleOf } from '../../report/change-order/title.ts';
import { documentBytes, newDocument } from './document.ts';
import { Flow } from './flow.ts';
import { drawSheetOn } from './sheet.ts';

/** A change order as PDF: the same words as the printed page, its plans as lines and letters. The same order gives the same bytes. */
export async function changeOrderPdf(order: ChangeOrderContent): Promise<Uint8Array> {
    const title = titleOf(order), doc = newDocument(PDFDocument, title, order.contractor), flow = new Flow(doc);
    flow.heading(title);
    if (order.draft.length > 0) flow.list(DRAFT, order.draft);
    flow.between(order);
    if (order.reason !== undefined) flow.line(`Reason: ${order.reason}`);
    flow.list('What is changed', order.changed);
    flow.list('The rooms as they are to be', order.scope);
    flow.title('Price');
    order.price.forEach(({ what, amount, strong }) => { flow.row(what, amount, strong); });
    flow.endings([['Before the work begins', order.cautions], ['Terms', order.terms]], order.draft.length === 0);
    for (const sheet of order.drawings) {
        doc.addPage({ size: [sheet.paper.width, sheet.paper.height], margin: 0 });
        drawSheetOn(doc, sheet);
    }
    return await documentBytes(doc);
}
