import PDFDocument from 'pdfkit';
import { DRAFT } from '../../report/bid/draft.ts';
import type { InvoiceContent } from '../../report/invoice/content.ts';
import { titleOf, WORK_HEAD } from '../../report/invoice/title.ts';
import { documentBytes, newDocument } from './document.ts';
import { Flow } from './flow.ts';

/** A bill as PDF: the same words as the printed page. The same bill gives the same bytes. */
export async function invoicePdf(invoice: InvoiceContent): Promise<Uint8Array> {
    const title = titleOf(invoice), doc = newDocument(PDFDocument, title, invoice.contractor), flow = new Flow(doc);
    const rows = (heading: string, lines: InvoiceContent['sums']): void => {
        flow.title(heading);
        lines.forEach(({ what, amount, strong }) => { flow.row(what, amount, strong); });
    };
    flow.heading(title);
    if (invoice.draft.length > 0) flow.list(DRAFT, invoice.draft);
    flow.between(invoice);
    rows('The contract', invoice.contract);
    flow.title('What is done');
    invoice.known.forEach(words => { flow.line(words); });
    flow.table(WORK_HEAD, invoice.work.map(({ what, value, done, earned }) => [what, value, done, earned]));
    rows('What is due', invoice.sums);
    rows('After this bill', invoice.after);
    flow.endings([['Payment', invoice.terms], ['Please note', invoice.cautions]], invoice.draft.length === 0, 'Approved');
    return await documentBytes(doc);
}
