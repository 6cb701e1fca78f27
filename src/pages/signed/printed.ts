import { html, named, type Content, type Html } from '../shared/html.ts';

/** What the pages that a client signs have in common. */

/** From whom and for whom, and the date, or a line for it. */
export function between({ contractor, client, date }: { readonly contractor?: string; readonly client?: string; readonly date?: string }): Html {
    const parts = [contractor && html`from ${named(contractor)}`, client && html`for ${named(client)}`].filter(part => part !== undefined && part !== '');
    return html`<p class="between">${parts.map((part, i) => html`${i > 0 && ', '}${part}`)}</p>
<p class="between">Date: ${date ?? html`<span class="blank"></span>`}</p>`;
}

export function list(title: string, words: readonly string[]): Content {
    return words.length > 0 && html`<section><h2>${title}</h2><ul>${words.map(item)}</ul></section>`;
}
function item(words: string): Html {
    return html`<li>${words}</li>`;
}

export function priceTable(lines: readonly { readonly what: string; readonly amount: string; readonly strong: boolean }[]): Html {
    return html`<table class="price"><tbody>${lines.map(line => html`<tr class="${line.strong ? 'strong' : ''}"><th scope="row">${line.what}</th><td class="figure">${line.amount}</td></tr>`)}</tbody></table>`;
}

export function signatures(title = 'Agreed'): Html {
    return html`<section class="sign"><h2>${title}</h2>
${['For the client', 'For the contractor'].map(who => html`<p><span class="blank long"></span> <span class="blank"></span><br><span class="soft">${who}: name and signature, date</span></p>`)}
</section>`;
}

export const STYLE = `.between{margin:.1em 0}
section{margin-top:1.2em;break-inside:avoid}.together{break-inside:avoid}
ul{margin:.2em 0;padding-inline-start:1.2em}li{margin:.25em 0;max-width:75ch}
.price,.work{width:min(100%,46em)}:is(.price,.work) tbody th{font-weight:400}:is(.price,.work) :is(td,th):last-child{padding-inline-end:0}tbody .strong :is(th,td){font-weight:600;border-bottom:2px solid var(--ink)}
.blank{display:inline-block;width:9em;border-bottom:1px solid var(--ink)}.blank.long{width:22em;max-width:60%;height:2.4em}
.drawing{break-before:page}.drawing svg{width:100%;height:auto}`;
