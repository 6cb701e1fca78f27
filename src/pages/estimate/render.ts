import { attributes, html, named, trusted, withCode, type Html } from '../shared/html.ts';
import { severityWord } from '../plan/render.ts';
import { NOTHING_SHOWN, type Shown } from '../shared/shown.ts';
import { t } from '../shared/words.ts';
import type { AlternateContent, AmountRow, EstimateContent, LaborRow } from './content.ts';

export interface EstimateState {
    /** Hours are shown by phase, by room, or by what they are for. */
    readonly by: 'phase' | 'room' | 'what';
    readonly [key: string]: unknown;
}
export const ESTIMATE_STATE: EstimateState = { by: 'phase' };

/** `isPrinted`: what folds away on a screen is shown open. */
export function renderEstimate(content: EstimateContent, state: EstimateState, _shown: Shown = NOTHING_SHOWN, isPrinted = false): Html {
    return html`<div class="estimate">
<p class="of">${named(content.title)}</p>
<p class="sum"><strong>${content.total}</strong> <span class="soft">${t('{0}, {1}', content.hours, content.days)}</span></p>
<p class="soft">${t('For you, not for the client: it shows what you pay and what you earn.')} ${t('Priced as if nothing were cut yet; boards: {0}.', content.boardsKnown)}</p>
${content.after ? html`<p class="missing" id="after">${content.after}</p>` : ''}
${missing(content)}
<div ${attributes({ 'class': content.alternates.length > 0 ? 'parts beside' : 'parts' })}>
<div class="costs">
<section aria-labelledby="price-title"><h2 id="price-title">${t('Price')}</h2>${price(content)}</section>
<section aria-labelledby="labor-title"><h2 id="labor-title">${t('Labor')}</h2>${by(state)}${labor(content, state)}</section>
<section aria-labelledby="boards-title"><h2 id="boards-title">${t('Boards')}</h2>${amounts(content.boards, t('Boards'))}<p class="soft">${withCode(content.spare)}</p>${content.onHand ? html`<p class="soft">${content.onHand}</p>` : ''}</section>
<section aria-labelledby="supplies-title"><h2 id="supplies-title">${t('Supplies')}</h2>${amounts(content.supplies, t('Supplies'))}</section>
</div>
${alternates(content, isPrinted)}
</div>
</div>`;
}

function missing({ missing: all }: EstimateContent): Html | '' {
    if (all.length === 0) return '';
    return html`<section class="missing" aria-labelledby="missing-title"><h2 id="missing-title">${t('Not in the price: no rate given')}</h2><ul>
${all.map(({ rate, of, at }) => html`<li>${place(at, rate)}: ${of}</li>`)}</ul></section>`;
}

function place(at: number | null, words: string): Html {
    return at === null ? html`${words}` : html`<button type="button" class="link" ${attributes({ 'data-at': at })}>${words}</button>`;
}

function price({ price: rows }: EstimateContent): Html {
    return html`<table class="amounts"><tbody>${rows.map(({ what, why, amount, at, strong }) => html`<tr class="${strong ? 'strong' : ''}"><th scope="row">${place(at, what)}</th><td class="why">${why}</td><td class="figure">${amount}</td></tr>`)}</tbody></table>`;
}

function by({ by: chosen }: EstimateState): Html {
    const ways = [['phase', t('by phase')], ['room', t('by room')], ['what', t('by work')]] as const;
    return html`<div class="ways" role="group" aria-label="${t('Group the hours')}">${ways.map(([way, words]) =>
        html`<button type="button" ${attributes({ 'data-state': 'by', 'data-value': way, 'aria-pressed': String(way === chosen) })}>${words}</button>`)}</div>`;
}

function labor({ labor: rows }: EstimateContent, { by: way }: EstimateState): Html {
    const keys = [...new Set(rows.map(row => keyOf(row, way)))];
    return html`<table class="amounts labor"><thead><tr><th scope="col">${t('Work')}</th><th scope="col">${t('Why')}</th><th scope="col" class="figure">${t('Hours')}</th><th scope="col" class="figure">${t('Cost')}</th></tr></thead>
${keys.map(key => group(key, rows.filter(row => keyOf(row, way) === key), way))}</table>`;
}

function keyOf(row: LaborRow, by: EstimateState['by']): string {
    return by === 'phase' ? row.phase : by === 'room' ? row.room || t('all rooms') : row.what;
}

function group(key: string, rows: readonly LaborRow[], way: EstimateState['by']): Html {
    const minutes = rows.reduce((sum, row) => sum + row.minutes, 0);
    return html`<tbody><tr class="group"><th scope="rowgroup">${way === 'room' ? named(key) : key}</th><td class="why"></td><td class="figure">${(minutes / 60).toFixed(1)} h</td><td></td></tr>
${rows.map(row => html`<tr><th scope="row">${place(row.at, way === 'what' ? row.phase : row.what)}${way !== 'room' && row.room !== '' ? html` <span class="soft">${named(row.room)}</span>` : ''}</th><td class="why">${row.why}</td><td class="figure">${row.hours}</td><td class="figure">${row.amount}</td></tr>`)}</tbody>`;
}

function amounts(rows: readonly AmountRow[], title: string): Html {
    if (rows.length === 0) return html`<p class="soft">${t('None.')}</p>`;
    return html`<table class="amounts" aria-label="${title}"><tbody>${rows.map(row => html`<tr><th scope="row">${place(row.at, row.what)}</th><td class="figure">${row.count}</td><td class="figure">${t('at {0}', row.each)}</td><td class="figure">${row.amount}</td></tr>`)}</tbody></table>`;
}

function alternates({ alternates: all, compared }: EstimateContent, isPrinted: boolean): Html | '' {
    if (all.length === 0) return '';
    return html`<section aria-labelledby="alternates-title"><h2 id="alternates-title">${t('Alternates')}</h2>${compared ? html`<p class="soft">${compared}</p>` : ''}<div class="alternates">${all.map(one => alternate(one, isPrinted))}</div></section>`;
}

function alternate(one: AlternateContent, isPrinted: boolean): Html {
    return html`<article class="alternate"><h3>${place(one.at, one.title)}</h3>
${one.found.length > 0 ? html`<ul class="found">${one.found.map(({ words, severity, at }) => html`<li class="${severity}"><b>${severityWord(severity)}.</b> ${place(at, words)}</li>`)}</ul>` : ''}
${one.canBeBuilt ? '' : html`<p class="wrong">${t('It cannot be built this way.')}</p>`}
<p><strong>${one.difference}</strong> <span class="soft">${t('{0} instead of {1}; {2}, {3}', one.total, one.before, one.hours, one.days)}</span></p>
${one.looks.map(({ title, before, after }) => html`<div class="looks" role="group" aria-label="${title}"><figure><figcaption>${t('as it is')}</figcaption>${trusted(before)}</figure><figure><figcaption>${t('with this')}</figcaption>${trusted(after)}</figure></div>`)}
<details ${attributes({ open: isPrinted })}><summary>${t('What changes')}</summary><table class="amounts"><thead><tr><th scope="col">${t('What')}</th><th scope="col" class="figure">${t('as it is')}</th><th scope="col" class="figure">${t('with this')}</th></tr></thead><tbody>
${one.changes.map(({ what, before, after }) => html`<tr><th scope="row">${what}</th><td class="figure">${before}</td><td class="figure">${after}</td></tr>`)}</tbody></table></details></article>`;
}
