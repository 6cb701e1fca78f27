import { printedInvoice } from '../../pages/invoice/printed.ts';
import { isSound } from '../../pipeline/standing.ts';
import { csvInvoices } from '../../report/invoice/csv.ts';
import { faultsOf, invoiceOf, type Billing, type Invoice, type InvoiceContent } from '../../report/invoice/content.ts';
import { jsonInvoices } from '../../report/invoice/json.ts';
import { invoiceLeaf } from '../../report/invoice/leaf.ts';
import { addressOf, fileNameOfHouse, titleOfHouse, type House } from '../../report/house.ts';
import { humanLeaves } from '../../report/leaf.ts';
import { standingLines, standingOfRooms, unusedLines } from '../../report/standing.ts';
import { USED_NOWHERE } from '../../plain/notice.ts';
import { fileName } from '../../text/file-name.ts';
import { asAgreed } from '../agreed.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { FileNames } from '../file-names.ts';
import type { Asked } from '../input.ts';
import { OutputFolder, type OutputOptions } from '../output-folder.ts';
import type { World } from '../world.ts';
import { housesAsked } from './lists.ts';

export const INVOICE_FORMATS = ['pdf', 'html', 'human', 'json', 'csv'] as const;
export interface InvoiceOptions extends Asked, OutputOptions, Billing { readonly format: (typeof INVOICE_FORMATS)[number] }

/**
 * The bill of every house by the contract of its job: printed, or as a file `invoice-3-JOB.pdf`. Where there is none to send it is said why. What is not fit to
 * be sent says so on it: then the code is 1.
 */
export async function invoice(options: InvoiceOptions, world: World): Promise<ExitCode> {
    const { houses, files, code } = await housesAsked({ ...options, format: 'human', room: [] }, world), { terminal } = world;
    const invoices: { readonly house: House; readonly invoice: Invoice }[] = [];
    for (const house of houses) invoices.push({ house, invoice: invoiceOf(house, options, await asAgreed(house, world)) });
    const made = invoices.flatMap(({ house, invoice: one }) => ('none' in one ? [] : [{ house, content: one.content }]));
    for (const { invoice: one } of invoices) if ('none' in one) terminal.say(one.none);
    // a house without a contract is none of these beside one that has it
    const isFit = ({ house: { rooms }, invoice: one }: (typeof invoices)[number]): boolean => {
        if ('none' in one && one.because !== 'nothing due') return one.because === 'no contract' && made.length > 0;
        return faultsOf(one).length === 0 && isSound(standingOfRooms(rooms));
    };
    const worstCode = worst(code, invoices.every(isFit) ? EXIT.clean : EXIT.findings);
    switch (options.format) {
        case 'human': if (made.length > 0) terminal.result(humanLeaves(made.map(({ house, content }) => invoiceLeaf(content, house)), 'nothing of it is known to be cut', terminal.paint)); return worstCode;
        case 'json': terminal.result(jsonInvoices(invoices, files)); return worstCode;
        case 'csv': terminal.result(csvInvoices(invoices, options)); return worstCode;
        case 'pdf': case 'html': return worst(worstCode, await written(made, options.format, options, world));
    }
}

async function written(made: readonly { readonly house: House; readonly content: InvoiceContent }[], format: 'pdf' | 'html', options: InvoiceOptions, world: World): Promise<ExitCode> {
    const { terminal } = world;
    const folder = new OutputFolder(options, world), names = new FileNames();
    for (const { house, content } of made) {
        const standing = standingOfRooms(house.rooms), unused = unusedLines(standing);
        if (content.draft.length > 0) [`The invoice of ${titleOfHouse(house)} is a draft: ${content.draft.join(' ')}`, ...standingLines(standing).map(line => `  ${line}`)].forEach(line => terminal.say(line));
        if (unused.length > 0) [`${USED_NOWHERE}:`, ...unused.map(line => `  ${line}`)].forEach(line => terminal.say(line));
        const title = fileNameOfHouse(house), stem = `invoice ${options.number}`;
        const name = names.free(n => fileName(stem, n === 1 ? title : `${title} ${n}`, format));
        await folder.write([{ name, content: format === 'pdf' ? await pdfOf(content) : printedInvoice(content) }], addressOf(house));
    }
    return folder.code;
}

/** The library that writes PDF is large, so it is read only when it is wanted. */
async function pdfOf(content: InvoiceContent): Promise<Uint8Array> {
    const { invoicePdf } = await import('../../exports/pdf/bid.ts');
    return await invoicePdf(content);
}
