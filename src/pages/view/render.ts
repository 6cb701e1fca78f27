import { PARTS, type Part } from '../../takeoff/model.ts';
import { severityWord } from '../plan/render.ts';
import { attributes, html, type Html } from '../shared/html.ts';
import type { Shown } from '../shared/shown.ts';
import { sign as filled, SIGNS } from '../shared/signs.ts';
import { t } from '../shared/words.ts';
import type { ViewContent, ViewFinding, ViewPiece } from './content.ts';
import { changedButton, changedMarkup, pieceIn, pieceWords, wasCommit } from './render-changed.ts';
import { doneWords, stepsDone } from './playing.ts';
import { CUT_FROM, LOOKS, type CutFrom, type Look, type ViewState } from './state.ts';

/** The picture itself is drawn by the pane's script on the canvas; everything else is here. */
export function renderView(content: ViewContent, state: ViewState, { lit }: Shown): Html {
    const picked = pieceIn(content, state, state.piece);
    return html`<div id="view-page" class="view-page">
<div class="bar" role="toolbar" ${attributes({ 'aria-label': t('View') })}>
${LOOKS.map(lookButton)}${sign('nearer', t('Nearer'), '+')}${sign('farther', t('Farther'), '−')}${sign('fit', t('Show all'), '⤢')}
${partsMenu(content, state)}
<button type="button" id="play-open" data-act="play-open" aria-controls="player" ${attributes({ 'aria-expanded': String(state.play) })}>${t('Put it up')}</button>${changedButton(content, state)}
<span class="sliders"><label class="slide">${t('Take apart')}<input type="range" id="apart" min="0" max="100" step="1" data-state="apart" ${attributes({ value: String(state.apart), disabled: state.play })}></label>
<label class="slide">${t('Cut away')}<input type="range" id="cut" min="0" max="100" step="1" data-state="cut" ${attributes({ value: String(state.cut) })}></label>
<label class="unseen" for="cut-from">${t('Cut from')}</label><select id="cut-from" data-state="cutFrom" ${attributes({ title: t('Cut from') })}>${CUT_FROM.map(side => html`<option ${attributes({ value: side, selected: side === state.cutFrom })}>${sideNames[side]()}</option>`)}</select></span>
</div>
${state.play ? playerBar(content, state) : ''}
<div class="stage" id="stage" data-own><canvas id="canvas" tabindex="0" role="application" aria-describedby="keys" ${attributes({ 'aria-label': t('{0} in three dimensions, {1} pieces', content.title, content.pieces.length) })}></canvas></div>
<p class="unseen" id="keys">${t('Arrow keys turn, with Shift they move; plus and minus go nearer and farther; N and P walk through the pieces, Enter shows the words of one; C marks what changed since a commit, and then they walk through that; Home shows all; the space bar plays how it is put up, where that is open.')}</p>
<p class="no-picture" id="no-picture">${t('This machine cannot draw in three dimensions. The list below says the same.')}</p>
<div class="under" id="under">
<p class="picked" id="picked">${picked ? pieceButton(picked, pieceWords(content, state, picked), wasCommit(content, state, picked)) : html`<span class="soft">${lit.size > 0 ? t('Lit up: what the cursor stands in.') : t('Click a piece, or walk through them with N and P.')}</span>`}</p>
<button type="button" id="list-button" data-act="list" aria-controls="list" ${attributes({ 'aria-expanded': String(state.list) })}>${t('{0} pieces', content.pieces.length)}</button>
</div>
<div class="list" id="list" ${attributes({ hidden: !state.list })}>${state.list ? list(content) : ''}</div>
${changedMarkup(content, state)}
${findings(content.findings)}
</div>`;
}

/** Under the picture's own bar: how it is put up, forwards and back. */
function playerBar({ order }: ViewContent, { step }: ViewState): Html {
    if (!order) return html`<div class="player" id="player" role="group" aria-busy="true" ${attributes({ 'aria-label': t('Putting up') })}><p id="player-working">${t('Working out what goes up when …')}</p></div>`;
    const done = stepsDone(order, step), words = doneWords(order, done);
    return html`<div class="player" id="player" role="group" ${attributes({ 'aria-label': t('Putting up') })}>
${filled('first', t('To the beginning'), SIGNS.first, done === 0)}${filled('back', t('One step back'), SIGNS.back, done === 0)}${filled('play-back', t('Play backwards'), SIGNS.playBack)}${filled('play', t('Play'), SIGNS.play)}${filled('on', t('One step on'), SIGNS.on, done === order.steps.length)}${filled('last', t('To the end'), SIGNS.last, done === order.steps.length)}
<label class="scrub"><span class="unseen">${t('Steps that are done')}</span><input type="range" id="scrub" min="0" step="1" data-state="step" ${attributes({ max: order.steps.length, value: String(done), 'aria-valuetext': words })}></label>
<p id="player-words" data-own>${words}</p>
</div>`;
}

function sign(act: string, name: string, mark: string): Html {
    return html`<button type="button" class="sign" ${attributes({ id: `act-${act}`, 'data-act': act, title: name, 'aria-label': name })}><span aria-hidden="true">${mark}</span></button>`;
}

const lookNames: Readonly<Record<Look, () => string>> = { floor: () => t('From the floor'), below: () => t('Straight up'), above: () => t('From above') };

function lookButton(look: Look): Html {
    return html`<button type="button" data-act="look" ${attributes({ id: `look-${look}`, 'data-look': look })}>${lookNames[look]()}</button>`;
}

const sideNames: Readonly<Record<CutFrom, () => string>> = { south: () => t('from the south'), west: () => t('from the west'), north: () => t('from the north'), east: () => t('from the east') };

/** What the pieces of a part are called together. */
export const partNames: Readonly<Record<Part, () => string>> = {
    panel: () => t('Panels'), blocking: () => t('Blocking'), spacer: () => t('Spacers'), side: () => t('Sides'), cleat: () => t('Cleats'), bottom: () => t('Bottoms'), timber: () => t('Timbers'), molding: () => t('Moldings'), band: () => t('Band'), trim: () => t('Ceiling trim'),
};

function partsMenu({ pieces }: ViewContent, state: ViewState): Html {
    const there = PARTS.filter(part => pieces.some(piece => piece.part === part));
    return html`<details class="menu" id="parts"><summary>${t('Parts')}</summary><fieldset><legend class="unseen">${t('Parts')}</legend>
${there.map(part => html`<label><input type="checkbox" ${attributes({ id: `part-${part}`, 'data-state': `parts.${part}`, checked: state.parts[part] !== false })}>${partNames[part]()}</label>`)}
</fieldset></details>`;
}

/** `was`: the commit at which it stood there. */
function pieceButton({ key, at }: ViewPiece, words: string, was: string | undefined): Html {
    return html`<button type="button" class="link" ${attributes({ id: 'picked-piece', 'data-key': key, 'data-at': at, 'data-was': was, title: was === undefined ? t('Show the words') : t('In the text as it was') })}>${words}</button>`;
}

function list({ pieces }: ViewContent): readonly Html[] {
    return PARTS.filter(part => pieces.some(piece => piece.part === part)).map(part => html`<h2>${partNames[part]()}</h2><ul>
${pieces.filter(piece => piece.part === part).map(({ key, words, at }) => html`<li><button type="button" class="link" data-act="pick" ${attributes({ id: `piece-${key}`, 'data-key': key, 'data-at': at })}>${words}</button></li>`)}
</ul>`);
}

function findings(all: readonly ViewFinding[]): Html {
    if (all.length === 0) return html``;
    return html`<section class="findings" id="findings" aria-labelledby="findings-heading"><h2 id="findings-heading">${t('Found here')}</h2><ol>
${all.map(({ severity, message, at, keys }, i) => html`<li ${attributes({ id: `finding-${i}`, 'class': severity })}><button type="button" class="link" data-act="finding" ${attributes({ 'data-at': at, 'data-lights': keys.join(' ') })}><b>${severityWord(severity)}.</b> ${message}</button></li>`)}
</ol></section>`;
}
