import { toSvg } from '../../drawing/index.ts';
import { html, named, trusted } from '../shared/html.ts';
import { printable } from '../shared/printable.ts';
import type { BidContent } from '../../report/bid/content.ts';
import { DRAFT } from '../../report/bid/draft.ts';
import { between, list, priceTable, signatures, STYLE } from '../signed/printed.ts';
import type { HtmlText } from '../../text/fit.ts';

/** The client's page as one HTML file that prints well: what is done, for how much, on which terms, the drawings last. */
export function printedBid(bid: BidContent): HtmlText {
    // nobody signs a page on which nothing stands: the last list goes over with the signatures
    const lists = [list('What is not included', bid.exclusions), list('Before the work begins', bid.cautions), list('Terms', bid.terms)].filter(each => each !== false);
    const others = lists.slice(0, -1), last = lists.at(-1) ?? false;
    return printable({
        title: `${bid.draft.length > 0 ? 'Draft of a bid' : 'Bid'}: ${bid.title}`, notice: bid.draft.length > 0 ? [`${DRAFT}:`, ...bid.draft] : [], style: STYLE,
        body: html`
${between(bid)}
${list('What is included', bid.scope)}
<section><h2>Price</h2>
${priceTable(bid.price)}
${bid.allowances.length > 0 && html`<p>The price sets aside ${bid.allowances.map((words, i) => html`${i > 0 && '; '}${words}`)}. What is not used is paid back; anything over it is added.</p>`}
</section>
${bid.options.length > 0 && html`<section><h2>Options</h2>
<table class="price"><tbody>${bid.options.map(({ title, price }) => html`<tr><th scope="row">${named(title)}</th><td class="figure">${price}</td></tr>`)}</tbody></table>
<p class="soft">Each is priced by itself; combined, the price may differ.</p></section>`}
${others}
<div class="together">${last}${bid.draft.length === 0 && signatures()}</div>
${bid.drawings.map(sheet => html`<section class="drawing">${trusted(toSvg(sheet, { as: 'part of a page', theme: 'print' }))}</section>`)}`,
    });
}
