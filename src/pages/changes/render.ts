import { severityWord } from '../plan/render.ts';
import { attributes, html, named, trusted, type Content, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import type { ChangesContent, FoundContent, Place } from './content.ts';
import type { NoText } from './known.ts';
import { WHAT_CHANGED } from '../view/changed-key.ts';
import { noHistory, sinceWords } from './since.ts';

/** What a reader has set: whether the list of pieces is open; and the commit that was chosen, by its whole hash, or `signed`. */
export interface ChangesState { readonly list: boolean; readonly against?: string }
export const CHANGES_STATE: ChangesState = { list: false };

export function renderChanges(content: ChangesContent, state: ChangesState): Html {
    const { none, isWorking, found, isSigned } = content;
    return html`<div class="changes" id="changes">
${none === undefined ? '' : html`<p class="calm" id="none">${noHistory[none]()}</p>${none === 'unknown-commit' || none === 'not-signed' ? backToLast() : ''}`}
${isWorking ? html`<p class="soft" id="comparing">${t('The earlier state is being read …')}</p>` : ''}
${found ? foundMarkup(found, state, isSigned) : ''}
</div>`;
}

const noText: Readonly<Record<NoText, () => string>> = {
    link: () => t('it was a link, which is not followed'), 'too-large': () => t('it was too large for a job file'), 'not-text': () => t('it was no text'), unreadable: () => t('git could not read it'),
};

function foundMarkup(found: FoundContent, state: ChangesState, isSigned: boolean): Html {
    const { isLooking, isBehind, unread, before, isNew, isSame, costs, said, lacks } = found;
    return html`${since(found, isSigned)}
${costs ? html`<p class="sum"><strong id="costs">${costs}</strong> <span class="soft">${t('Both are priced on a first plan of boards.')}${lacks.length > 0 ? ` ${t('What is not in it stands with the price.')}` : ''}</span></p>` : ''}
${isNew ? html`<p id="is-new">${t('The house was not there then.')}</p>` : ''}
${isBehind ? html`<p class="missing" id="behind">${t('A room is half written now: this is what had changed before.')}</p>` : ''}
${isLooking ? html`<p class="soft" id="looking">${t('What does not go together is still being looked for.')}</p>` : ''}
${unread.map(({ file, why }) => html`<p class="missing">${named(file)}: ${noText[why]()}</p>`)}
${before.length === 0 ? '' : html`<section class="missing" aria-labelledby="then-title"><h2 id="then-title">${t('As it was then:')} ${before[0]}</h2><ul>${before.slice(1).map(line => html`<li>${line}</li>`)}</ul></section>`}
${isSame ? html`<p id="same">${said.length === 0 ? t('Nothing changed.') : ''} ${t('Every piece, board, hour and sum is as it was.')}</p>` : ''}
${saidMarkup(found)}
${isSame ? '' : html`${ceilings(found)}<div class="beside"><div>${pieces(found, state)}${cut(found)}</div><div>${price(found)}${numbers(found)}</div></div>${findings('come', t('Found now, and not before'), found)}${findings('gone', t('Found before, and not now'), found)}`}`;
}

/** Which commit, and how to come to another. */
function since(found: FoundContent, isSigned: boolean): Html {
    const { against } = found;
    return html`<div class="since" id="since"><p>${sinceWords(found)}</p>
<span class="ways"><button type="button" id="another" data-act="against" data-to="pick">${t('Another commit …')}</button>${against === 'last' ? '' : backToLast()}${isSigned && against !== 'signed' ? html`<button type="button" id="signed" data-act="against" data-to="signed">${t('What was signed')}</button>` : ''}</span></div>`;
}

function backToLast(): Html {
    return html`<button type="button" id="back-to-last" data-act="against" data-to="last">${t('The last commit')}</button>`;
}

/** A button that leads to the words; where they are there no more, to the text as it was. */
function link({ at, was }: Place, commit: string, words: Content, more: Readonly<Record<string, string>> = {}): Html {
    return html`<button type="button" class="link" ${attributes({ 'data-at': at, 'data-was': was && commit, title: was ? t('In the text as it was') : undefined, ...more })}>${words}</button>`;
}

function saidMarkup({ said, commit }: FoundContent): Html | '' {
    if (said.length === 0) return '';
    return html`<section aria-labelledby="said-title"><h2 id="said-title">${t('What is said')}</h2><table class="said"><thead><tr><th scope="col">${t('What')}</th><th scope="col" class="value">${t('Before')}</th><th scope="col" class="value">${t('Now')}</th><th scope="col" class="where">${t('Where')}</th></tr></thead><tbody>
${said.map(row => html`<tr><th scope="row">${link(row, commit, row.what)}</th><td>${value(row.before, !row.after && row.was ? t('was there') : row.was ? '' : '–')}</td><td>${row.was ? html`<span class="soft">${t('gone')}</span>` : value(row.after, t('is there'))}</td><td class="where soft">${row.where}</td></tr>`)}</tbody></table></section>`;
}

function value(words: string, none: string): Html {
    return words === '' ? html`<span class="soft">${none}</span>` : html`<bdi>${words}</bdi>`;
}

function ceilings({ ceilings: all, commit }: FoundContent): Html | '' {
    if (all.length === 0) return '';
    return html`<section aria-labelledby="ceiling-title"><h2 id="ceiling-title">${t('The ceiling')}</h2>${all.map(({ room, title, isThere, changes, plans }) => html`<article class="ceiling"><h3>${named(title)} ${isThere ? html`<span class="ways">${find('view', `${room}.${WHAT_CHANGED}`, t('Marked in 3D'), title)}</span>` : ''}</h3>
<ol>${changes.map(change => html`<li ${attributes({ 'data-key': change.key, 'data-lights': change.key })}>${link(change, commit, change.words)}</li>`)}</ol>
${plans.length === 0 ? '' : html`<div class="plans">${plans.map(({ when, svg }) => html`<figure ${attributes({ id: `plan-${room}-${when}` })}><figcaption>${when === 'before' ? t('before') : t('now')}</figcaption>${trusted(svg)}</figure>`)}</div><p class="soft">${t('Ringed and numbered: what changed.')}</p>`}</article>`)}</section>`;
}

const fares: Readonly<Record<string, () => string>> = {
    'the same': () => t('the same'), elsewhere: () => t('elsewhere'), 'from an old one': () => t('from an old one'), new: () => t('new'), 'no longer wanted': () => t('no longer wanted'),
};

function pieces({ fares: heads, pieces: rows, lines, isProved, commit }: FoundContent, state: ChangesState): Html {
    return html`<section aria-labelledby="pieces-title"><h2 id="pieces-title">${t('Pieces')}</h2><div class="wide" tabindex="0" role="group" aria-labelledby="pieces-title"><table class="fares"><thead><tr><td></td>${heads.map(head => html`<th scope="col" class="figure">${fares[head]?.() ?? head}</th>`)}</tr></thead><tbody>
${rows.map(({ part, counts }, i) => html`<tr ${attributes({ 'class': i === rows.length - 1 ? 'strong' : undefined })}><th scope="row">${part}</th>${counts.map(count => html`<td class="figure">${count === 0 ? '' : count}</td>`)}</tr>`)}</tbody></table></div>
${lines.length === 0 ? '' : html`<label class="check ways"><input type="checkbox" id="list" ${attributes({ 'data-state': 'list', checked: state.list })}>${t('Piece by piece')}</label>`}
${lines.length === 0 || !state.list ? '' : html`<ul class="lines" id="lines">${lines.map(line => html`<li>${link(line, commit, html`${line.count} × ${line.words}`)}${line.key ? html`<span class="finds ways">${find('plan', line.key, t('On the plan'), line.words)}${find('view', line.key, t('3D'), line.words)}</span>` : ''}</li>`)}</ul>`}
${isProved ? '' : html`<p class="soft">${t('There are more pieces than is looked through: another use of old ones may save more wood.')}</p>`}</section>`;
}

function find(kind: 'plan' | 'view', key: string, words: string, what: string): Html {
    return html`<button type="button" class="small" ${attributes({ 'data-find': kind, 'data-key': key, 'aria-label': `${words}: ${what}` })}>${words}</button>`;
}

function cut({ cut: rows }: FoundContent): Html | '' {
    if (rows.length === 0) return '';
    return html`<section aria-labelledby="cut-title"><h2 id="cut-title">${t('Cut already')}</h2><ul class="cut">${rows.map(({ name, length, fate, worth, saved }) => html`<li><b>${name}</b> ${length}: ${fate}${worth ? html`; <span class="soft">${saved ? t('its wood {0}, saved {1}', worth, saved) : worth}</span>` : ''}</li>`)}</ul></section>`;
}

function price({ price: rows, lacks }: FoundContent): Html | '' {
    if (rows.length === 0) return '';
    return html`<section aria-labelledby="price-title"><h2 id="price-title">${t('The price of the change')}</h2><table class="amounts"><tbody>
${rows.map(({ what, why, amount, strong }) => html`<tr ${attributes({ 'class': strong ? 'strong' : undefined })}><th scope="row">${what}${why ? html` <span class="soft">${why}</span>` : ''}</th><td class="figure">${amount}</td></tr>`)}</tbody></table>
${lacks.map(words => html`<p class="missing">${t('Not in it: {0}.', words)}</p>`)}</section>`;
}

function numbers({ numbers: rows }: FoundContent): Html | '' {
    if (rows.length === 0) return '';
    return html`<section aria-labelledby="numbers-title"><h2 id="numbers-title">${t('Boards, hours, money')}</h2><table class="amounts"><thead><tr><td></td><th scope="col" class="figure">${t('Before')}</th><th scope="col" class="figure">${t('Now')}</th></tr></thead><tbody>
${rows.map(({ what, before, after }) => html`<tr><th scope="row">${what}</th><td class="figure">${before}</td><td class="figure">${after}</td></tr>`)}</tbody></table></section>`;
}

function findings(id: 'come' | 'gone', title: string, found: FoundContent): Html | '' {
    const rows = found[id];
    if (rows.length === 0) return '';
    return html`<section ${attributes({ 'aria-labelledby': `${id}-title` })}><h2 ${attributes({ id: `${id}-title` })}>${title}</h2><ul class="found">
${rows.map(row => html`<li class="${row.severity}"><b>${severityWord(row.severity)}.</b> ${link(row, found.commit, row.words)}</li>`)}</ul></section>`;
}
