import { toSvg } from '../../drawing/index.ts';
import { html, named, trusted, type Content, type Html } from '../shared/html.ts';
import { printable } from '../shared/printable.ts';
import { DRAFT, type BidContent } from '../../report/bid/content.ts';
import type { HtmlText } from '../../text/fit.ts';

/** The client's page as one HTML file that prints well: what is done, for how much, on which terms, the drawings last. */
export function printedBid(bid: BidContent): HtmlText {
    // nobody signs a page on which nothing stands: the last list goes over with the signatures
    const lists = [list('What is not included', bid.exclusions), list('Before the work begins', bid.cautions), list('Terms', bid.terms)].filter(each => each !== false);
    const others = lists.slice(0, -1), last = lists.at(-1) ?? false;
    return printable({
        title: `${bid.draft.length > 0 ? 'Draft of a bid' : 'Bid'}: ${bid.title}`, notice: bid.draft.length > 0 ? [`${DRAFT}:`, ...bid.draft] : [], style: STYLE,
        body: html`
<p class="between">${[bid.contractor && html`from ${named(bid.contractor)}`, bid.client && html`for ${named(bid.client)}`].filter(part => part !== undefined && part !== '').map((part, i) => html`${i > 0 && ', '}${part}`)}</p>
<p class="between">Date: ${bid.date ?? html`<span class="blank"></span>`}</p>
${list('What is included', bid.scope)}
<section><h2>Price</h2>
<table class="price"><tbody>${bid.price.map(line => html`<tr class="${line.strong ? 'strong' : ''}"><th scope="row">${line.what}</th><td class="figure">${line.amount}</td></tr>`)}</tbody></table>
${bid.allowances.length > 0 && html`<p>The price sets aside ${bid.allowances.map((words, i) => html`${i > 0 && '; '}${words}`)}. What is not used is paid back; anything over it is added.</p>`}
</section>
${bid.options.length > 0 && html`<section><h2>Options</h2>
<table class="price"><tbody>${bid.options.map(({ title, price }) => html`<tr><th scope="row">${named(title)}</th><td class="figure">${price}</td></tr>`)}</tbody></table>
<p class="soft">Each is priced by itself; combined, the price may differ.</p></section>`}
${others}
<div class="together">${last}${bid.draft.length === 0 && html`<section class="sign"><h2>Agreed</h2>
${['For the client', 'For the contractor'].map(who => html`<p><span class="blank long"></span> <span class="blank"></span><br><span class="soft">${who}: name and signature, date</span></p>`)}
</section>`}</div>
${bid.drawings.map(sheet => html`<section class="drawing">${trusted(toSvg(sheet, { as: 'part of a page', theme: 'print' }))}</section>`)}`,
    });
}

function list(title: string, words: readonly string[]): Content {
    return words.length > 0 && html`<section><h2>${title}</h2><ul>${words.map(item)}</ul></section>`;
}
function item(words: string): Html {
    return html`<li>${words}</li>`;
}

const STYLE = `.between{margin:.1em 0}
section{margin-top:1.2em;break-inside:avoid}.together{break-inside:avoid}
ul{margin:.2em 0;padding-inline-start:1.2em}li{margin:.25em 0;max-width:75ch}
.price{min-width:min(100%,32em)}.price th{font-weight:400}.price td{padding-inline-end:0}.strong th,.strong td{font-weight:600;border-bottom:2px solid var(--ink)}
.blank{display:inline-block;width:9em;border-bottom:1px solid var(--ink)}.blank.long{width:22em;max-width:60%;height:2.4em}
.drawing{break-before:page}.drawing svg{width:100%;height:auto}`;
