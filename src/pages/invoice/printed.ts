import { DRAFT } from '../../report/bid/draft.ts';
import type { InvoiceContent } from '../../report/invoice/content.ts';
import { titleOf, WORK_HEAD } from '../../report/invoice/title.ts';
import type { HtmlText } from '../../text/fit.ts';
import { html, type Html } from '../shared/html.ts';
import { printable } from '../shared/printable.ts';
import { between, list, priceTable, signatures, STYLE } from '../signed/printed.ts';

/** A bill as one HTML file that prints well: the contract to date, what is done of it, what is due. */
export function printedInvoice(invoice: InvoiceContent): HtmlText {
    const lists = [list('Payment', invoice.terms), list('Please note', invoice.cautions)].filter(each => each !== false);
    return printable({
        title: titleOf(invoice), notice: invoice.draft.length > 0 ? [`${DRAFT}:`, ...invoice.draft] : [], style: `${STYLE}\n.work td,.work th{vertical-align:top}`,
        body: html`
${between(invoice)}
<section><h2>The contract</h2>${priceTable(invoice.contract)}</section>
<section><h2>What is done</h2>${invoice.known.map(words => html`<p>${words}</p>`)}
<table class="work"><thead><tr>${WORK_HEAD.map((word, i) => html`<th scope="col" class="${i === 0 ? '' : 'figure'}">${word}</th>`)}</tr></thead>
<tbody>${invoice.work.map(rowMarkup)}</tbody></table></section>
<section><h2>What is due</h2>${priceTable(invoice.sums)}</section>
<section><h2>After this bill</h2>${priceTable(invoice.after)}</section>
${lists.slice(0, -1)}
<div class="together">${lists.at(-1) ?? false}${invoice.draft.length === 0 && signatures('Approved')}</div>`,
    });
}

function rowMarkup({ what, value, done, earned }: InvoiceContent['work'][number]): Html {
    return html`<tr><th scope="row">${what}</th>${[value, done, earned].map(figure => html`<td class="figure">${figure}</td>`)}</tr>`;
}
