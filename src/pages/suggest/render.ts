import { attributes, html, trusted, withCode, type Html } from '../shared/html.ts';
import { NOTHING_SHOWN, type Shown } from '../shared/shown.ts';
import { t } from '../shared/words.ts';
import type { GridCard, OfferCard, SuggestContent } from './content.ts';

/** Nothing is set in it. */
export type SuggestState = Readonly<Record<string, never>>;
export const SUGGEST_STATE: SuggestState = {};

/** `isPrinted`: nothing can be taken over from paper. */
export function renderSuggest(content: SuggestContent, _state: SuggestState, _shown: Shown = NOTHING_SHOWN, isPrinted = false): Html {
    const { isLooking, nothing, tried, notTried, present, offers, ranked, caution } = content;
    return html`<div class="suggest" ${attributes({ 'aria-busy': isLooking ? 'true' : undefined })}>
${isLooking ? html`<p id="looking">${t('Trying other grids …')}</p>` : ''}
${nothing ? html`<p id="nothing">${nothing}</p>` : ''}
${tried.map(words => html`<p>${words}</p>`)}
<div class="grids">${present && asItIs(present)}
${offers.map((offer, i) => offered(offer, i, isPrinted))}</div>
${notTried.map(words => html`<p class="soft">${words}</p>`)}
${offers.length > 0 && html`<p class="soft">${ranked}</p><p class="care">${caution}</p>`}
</div>`;
}

function asItIs(present: GridCard): Html {
    return html`<article class="grid now" aria-labelledby="grid-now-title"><h2 id="grid-now-title">${t('As it is: {0}', present.grid)}</h2>${card(present)}</article>`;
}

function offered(offer: OfferCard, i: number, isPrinted: boolean): Html {
    const { grid, says, moved, warnings, canBeTaken, key } = offer, id = `grid-${i}-title`;
    return html`<article class="grid" ${attributes({ id: `grid-${i}`, 'aria-labelledby': id })}><h2 ${attributes({ id })}>${i + 1}. ${grid}</h2>${card(offer)}
${moved ? html`<p>${moved}.</p>` : ''}
${warnings.length > 0 ? html`<ul class="warnings">${warnings.map(words => html`<li><b>${t('Warning')}.</b> ${withCode(words)}</li>`)}</ul>` : ''}
<p class="says">${says.map(words => html`<code>${words}</code>`)}</p>
${isPrinted ? '' : canBeTaken ? button(key, i, id) : html`<p class="soft">${t('What divides the grid stands elsewhere: write it by hand.')}</p>`}</article>`;
}

function button(key: string, i: number, title: string): Html {
    const own = attributes({ 'data-act': 'take', 'data-offer': key, id: `take-${i}`, 'aria-describedby': title });
    return html`<button type="button" ${own}>${t('Write it into the text')}</button>`;
}

function card({ sizes, facts, svg }: GridCard): Html {
    return html`${trusted(svg)}<p class="sizes">${sizes}</p><dl>${facts.map(({ what, value }) => html`<div><dt>${what}</dt><dd>${value}</dd></div>`)}</dl>`;
}
