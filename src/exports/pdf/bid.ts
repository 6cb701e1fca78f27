import PDFDocument from 'pdfkit';
import type { BidContent } from '../../report/bid/content.ts';
import { DRAFT } from '../../report/bid/draft.ts';
import { documentBytes, newDocument } from './document.ts';
import { Flow } from './flow.ts';
import { drawSheetOn } from './sheet.ts';

export { changeOrderPdf } from './change-order.ts';
export { invoicePdf } from './invoice.ts';
export { sheetsPdf } from './sheets.ts';

/**
 * The client's page as PDF: the same words as the printed page, its drawings as lines and letters, each on a page of its
 * own paper and at its own scale. The same bid gives the same bytes.
 */
export async function bidPdf(bid: BidContent): Promise<Uint8Array> {
    const title = `${bid.draft.length > 0 ? 'Draft of a bid' : 'Bid'}: ${bid.title}`;
    const doc = newDocument(PDFDocument, title, bid.contractor);
    const flow = new Flow(doc);
    flow.heading(title);
    if (bid.draft.length > 0) flow.list(DRAFT, bid.draft);
    flow.between(bid);
    flow.list('What is included', bid.scope);
    flow.title('Price');
    bid.price.forEach(({ what, amount, strong }) => { flow.row(what, amount, strong); });
    if (bid.allowances.length > 0) flow.line(`The price sets aside ${bid.allowances.join('; ')}. What is not used is paid back; anything over it is added.`);
    if (bid.options.length > 0) {
        flow.title('Options');
        bid.options.forEach(({ title, price }) => { flow.row(title, price, false); });
        flow.line('Each is priced by itself; combined, the price may differ.');
    }
    flow.endings([['What is not included', bid.exclusions], ['Before the work begins', bid.cautions], ['Terms', bid.terms]], bid.draft.length === 0);
    for (const sheet of bid.drawings) {
        doc.addPage({ size: [sheet.paper.width, sheet.paper.height], margin: 0 });
        drawSheetOn(doc, sheet);
    }
    return await documentBytes(doc);
}
