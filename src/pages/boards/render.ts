import { attributes, html, named, trusted, withCode, type Html } from '../shared/html.ts';
import type { Shown } from '../shared/shown.ts';
import { t } from '../shared/words.ts';
import type { Proving } from '../page.ts';
import type { BoardOnPage, BoardsContent, PieceOnPage, StageOnPage, StockOnPage } from './content.ts';

/** What a reader of the boards has set: what is shown, and the piece that was clicked. */
export interface BoardsState { readonly shows: 'boards' | 'steps'; readonly piece: string; readonly hideDone: boolean }
export const BOARDS_STATE: BoardsState = { shows: 'boards', piece: '', hideDone: false };

export function renderBoards(content: BoardsContent, state: BoardsState, shown: Shown): Html {
    const all = content.stocks.flatMap(stock => stock.boards);
    const steps = content.stages.flatMap(stage => stage.steps);
    const [done, of] = state.shows === 'boards'
        ? [all.filter(board => isDone(board, shown)).length, all.length]
        : [steps.filter(step => shown.ticks.has(step.key)).length, steps.length];
    return html`<div class="boards-page" id="boards-page">
<div class="bar" role="toolbar" ${attributes({ 'aria-label': t('Boards') })}>
${choice(state, 'boards', t('Boards'))}${choice(state, 'steps', t('Order of the saw'))}
<label class="check"><input type="checkbox" id="hide-done" ${attributes({ 'data-state': 'hideDone', checked: state.hideDone })}>${t('Hide what is done')}</label>
<span class="done" id="done">${state.shows === 'boards' ? t('{0} of {1} boards cut', done, of) : t('{0} of {1} steps done', done, of)}</span>
</div>
${troubles(content)}${purchase(content)}
${state.shows === 'boards' ? content.stocks.map(stock => stockSection(stock, state, shown)) : stagesSection(content, state, shown)}
</div>`;
}

/** A board is cut when all that comes out of it is ticked off, here or in the cut list. */
export function isDone(board: BoardOnPage, { ticks }: Shown): boolean {
    return board.from === 'already cut' || board.pieces.length > 0 && board.pieces.every(({ tick }) => ticks.has(tick));
}

function choice(state: BoardsState, value: BoardsState['shows'], name: string): Html {
    return html`<button type="button" ${attributes({ 'data-state': 'shows', 'data-value': value, 'aria-pressed': String(state.shows === value), id: `shows-${value}` })}>${name}</button>`;
}

function troubles({ troubles: said }: BoardsContent): Html | '' {
    return said.length === 0 ? '' : html`<ul class="troubles" id="troubles">${said.map(words => html`<li>${words}</li>`)}</ul>`;
}

/** What to buy, and in plain words how good the plan is known to be. */
export function purchase(content: BoardsContent, isPrinted = false): Html {
    const { buy, total, known, isProven, spare, proving, stopped, leftovers, setUps } = content;
    if (buy.length === 0 && content.stocks.length === 0) return html`<p class="none" id="nothing">${t('There is nothing to cut.')}</p>`;
    return html`<section class="purchase" id="purchase" aria-labelledby="purchase-heading"><h2 id="purchase-heading">${t('To buy for {0}', content.title)}</h2>
<table><thead class="unseen"><tr><th scope="col">${t('Stock')}</th><th scope="col">${t('Boards')}</th><th scope="col">${t('Each')}</th><th scope="col">${t('Cost')}</th></tr></thead><tbody>
${buy.map((row, i) => html`<tr ${attributes({ 'class': row.from === 'on hand' ? 'soft' : undefined })}><th scope="row">${buy[i - 1]?.stock === row.stock ? html`<span class="unseen">${named(row.stock)}</span>` : named(row.stock)}</th><td class="figure">${row.count} × ${row.length}</td><td class="figure">${row.from === 'on hand' ? t('on hand') : row.each || t('no price')}</td><td class="figure">${row.cost}</td></tr>
`)}</tbody>${total ? html`<tfoot><tr><th scope="row" colspan="3">${t('In all')}</th><td class="figure">${total}</td></tr></tfoot>` : ''}</table>
<p ${attributes({ 'class': isProven ? 'known proven' : 'known', id: 'known' })}>${known}</p>
<p class="soft" id="spare">${withCode(spare)}</p>
${proving ? lookingFor(proving) : stopped ? html`<p class="proving" id="stopped">${t('The search was stopped: these are the best boards found so far.')}</p>` : ''}
${leftovers.length > 0 ? html`<details ${attributes({ 'class': 'left', id: 'left', open: isPrinted })}><summary>${t('Left over to keep: {0}', leftovers.length)}</summary><ul>${leftovers.map(words => html`<li>${words}</li>`)}</ul></details>` : ''}
<p class="soft" id="set-ups">${setUps}</p></section>`;
}

function lookingFor({ done, of, percent }: Proving): Html {
    const words = percent === undefined ? t('Looking for a cheaper plan: {0} of {1} stocks done', done, of)
        : t('Looking for a cheaper plan: {0} of {1} stocks done, the next at most {2} % above the cheapest', done, of, percent.toFixed(1));
    return html`<p class="proving" id="proving"><label for="proof">${words}</label> <progress id="proof" ${attributes({ value: done, max: of })}></progress>
<button type="button" id="stop-looking" ${attributes({ 'data-act': 'stop-looking', title: t('Keeps the best boards found so far') })}>${t('Stop')}</button></p>`;
}

function stockSection(stock: StockOnPage, state: BoardsState, shown: Shown): Html {
    const boards = stock.boards.filter(board => !state.hideDone || !isDone(board, shown));
    if (boards.length === 0) return html``;
    return html`<section class="stock" ${attributes({ 'aria-label': stock.name, id: `stock-${stock.at}` })}>
<header><h2><button type="button" class="link" ${attributes({ 'data-at': stock.at, 'data-key': `stock.${stock.name}` })}>${named(stock.name)}</button></h2><span class="soft">${stock.size}</span><span class="soft known">${stock.known}</span></header>
${stock.choice === '' ? '' : html`<p class="soft">${stock.choice}</p>`}
${boards.map(board => boardFigure(board, state, shown))}</section>`;
}

function boardFigure(board: BoardOnPage, state: BoardsState, shown: Shown): Html {
    const cut = isDone(board, shown);
    const name = t('Board {0}, {1}', board.number, board.length);
    const picked = board.pieces.find(piece => piece.id === state.piece);
    return html`<figure ${attributes({ 'class': cut ? 'board done' : 'board', id: board.key })}>
<figcaption><label class="check"><input type="checkbox" ${attributes({ 'data-act': 'tick-board', 'data-board': board.key, id: `tick-${board.key}`, checked: cut, disabled: board.from === 'already cut', 'aria-label': t('{0}: cut', name) })}><b>#${board.number}</b> ${board.length}</label>
${board.from === 'bought' ? '' : html`<span class="soft">${board.from === 'on hand' ? t('on hand') : t('already cut')}${board.there === '' ? '' : `, ${board.there}`}</span>`}
${board.from === 'already cut' || board.pieces.length === 0 ? '' : html`<button type="button" class="write" ${attributes({ 'data-act': 'mark-cut', 'data-board': board.key, title: t('Writes it into the job: the rest is planned again') })}>${t('Write as cut')}</button>`}</figcaption>
${board.svg === '' ? '' : html`<div class="lies" data-lies ${attributes({ tabindex: 0, role: 'group', 'aria-label': name })}>${trusted(board.svg)}</div>`}
${board.small.length > 0 ? html`<p class="small-pieces soft">${board.svg === '' ? t('Not drawn, since there are so many boards:') : t('Too small for their names:')} ${board.small.map((words, i) => html`${i > 0 && '; '}<span>${words}</span>`)}</p>` : ''}
${picked ? pieceCard(picked) : ''}</figure>`;
}

/** What is known of the piece that was clicked, and what can be done with it. */
function pieceCard(piece: PieceOnPage): Html {
    const rows: [string, string][] = [
        [t('Long points'), piece.length], [t('Face'), piece.face], [t('Hand'), piece.hand], [t('Marks'), piece.marks], [t('To measure'), piece.measure], [t('Then'), piece.then],
    ];
    return html`<div class="card" id="card"><h3>${named(piece.name)} <span class="soft">${named(piece.where)}</span></h3>
<dl>${rows.filter(([, words]) => words !== '').map(([name, words]) => html`<div><dt>${name}</dt><dd>${words}</dd></div>`)}</dl>
<p><button type="button" ${attributes({ 'data-at': piece.at })}>${t('Show in the text')}</button>
<button type="button" ${attributes({ 'data-find': 'plan', 'data-key': piece.id })}>${t('Find on the plan')}</button>
<button type="button" ${attributes({ 'data-act': 'mark-spoiled', 'data-piece': piece.id, 'data-ticked': piece.tick, title: t('Writes it into the job: it is planned again') })}>${t('Spoiled')}</button>
<button type="button" ${attributes({ 'data-act': 'close' })}>${t('Close')}</button></p></div>`;
}

export function stagesSection(content: BoardsContent, state: BoardsState, shown: Shown): Html {
    return html`<section class="stages" id="stages" aria-labelledby="stages-heading"><h2 id="stages-heading">${t('Order of the saw')}</h2>
<ul class="cautions">${content.cautions.map(words => html`<li>${words}</li>`)}</ul>
${content.stages.map((stage, i) => stageList(stage, i, state, shown))}</section>`;
}

function stageList(stage: StageOnPage, index: number, state: BoardsState, { ticks }: Shown): Html {
    const steps = stage.steps.filter(step => !state.hideDone || !ticks.has(step.key));
    if (steps.length === 0) return html``;
    return html`<section ${attributes({ id: `stage-${index}` })}><h3>${stage.title}</h3>
${stage.cautions.length > 0 ? html`<ul class="cautions">${stage.cautions.map(words => html`<li>${words}</li>`)}</ul>` : ''}
${stage.notes.map(words => html`<p>${words}</p>`)}
<ol>${steps.map(step => html`<li ${attributes({ id: `li-${step.key}`, 'class': ticks.has(step.key) ? 'done' : undefined })}><label class="check"><input type="checkbox" ${attributes({ 'data-tick': step.key, id: step.key, checked: ticks.has(step.key), 'aria-label': t('Step {0}: done', step.number) })}><b class="number">${step.number}</b> <span>${step.set}</span></label>
<ul>${step.lines.map(words => html`<li>${words}</li>`)}</ul></li>`)}</ol></section>`;
}
