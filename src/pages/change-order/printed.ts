import { toSvg } from '../../drawing/index.ts';
import { DRAFT } from '../../report/bid/draft.ts';
import type { ChangeOrderContent } from '../../report/change-order/content.ts';
import { titleOf } from '../../report/change-order/title.ts';
import type { HtmlText } from '../../text/fit.ts';
import { between, list, priceTable, signatures, STYLE } from '../signed/printed.ts';
import { html, trusted } from '../shared/html.ts';
import { printable } from '../shared/printable.ts';

/** A change order as one HTML file that prints well: what is otherwise, for how much, the plans before and after last. */
export function printedChangeOrder(order: ChangeOrderContent): HtmlText {
    const lists = [list('Before the work begins', order.cautions), list('Terms', order.terms)].filter(each => each !== false);
    return printable({
        title: titleOf(order), notice: order.draft.length > 0 ? [`${DRAFT}:`, ...order.draft] : [], style: STYLE,
        body: html`
${between(order)}
${order.reason !== undefined && html`<p class="between">Reason: ${order.reason}</p>`}
${list('What is changed', order.changed)}
${list('The rooms as they are to be', order.scope)}
<section><h2>Price</h2>${priceTable(order.price)}</section>
${lists.slice(0, -1)}
<div class="together">${lists.at(-1) ?? false}${order.draft.length === 0 && signatures()}</div>
${order.drawings.map(sheet => html`<section class="drawing">${trusted(toSvg(sheet, { as: 'part of a page', theme: 'print' }))}</section>`)}`,
    });
}
