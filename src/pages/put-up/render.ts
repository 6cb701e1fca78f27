import { capitalized } from '../../plain/words.ts';
import type { LeafSection } from '../../report/leaf.ts';
import { attributes, html, trusted, type Html } from '../shared/html.ts';
import type { Shown } from '../shared/shown.ts';
import { sign, SIGNS } from '../shared/signs.ts';
import { t } from '../shared/words.ts';
import type { DayOnPage, GateOnPage, PutUpContent, StepOnPage } from './content.ts';

/** What a reader has set: the step that is looked at. A field of the page gives text. */
export interface PutUpState { readonly step: number | string }
export const PUT_UP_STATE: PutUpState = { step: 1 };

/** All steps in the order in which they are done. */
export function stepsOn({ days }: Pick<PutUpContent, 'days'>): StepOnPage[] {
    return days.flatMap(({ steps }) => steps).sort((a, b) => a.number - b.number);
}

/** The step that is looked at, from 1; 0 where there is none. */
export function stepOf(content: PutUpContent, { step }: PutUpState): number {
    const count = stepsOn(content).length, wanted = Math.round(Number(step));
    return Math.min(count, Math.max(Math.min(1, count), Number.isFinite(wanted) ? wanted : 1));
}

export function renderPutUp(content: PutUpContent, state: PutUpState, _shown: Shown): Html {
    const { isLooking, summary, cycle, waits, before, days, pressed, cautions } = content, steps = stepsOn(content), now = stepOf(content, state);
    if (isLooking) return html`<div class="put-up" aria-busy="true"><p id="looking">${t('Working out what goes up when …')}</p></div>`;
    return html`<div class="put-up" id="put-up">
${steps.length > 0 && content.plan && picture(content.plan, steps, now)}
<section class="steps" id="steps" aria-labelledby="steps-title" tabindex="0"><h2 id="steps-title">${t('Step by step')}</h2>
<p>${summary}.</p>
${cycle && html`<p class="wrong" id="cycle"><b>${t('Error')}.</b> ${cycle}</p>`}
${waits.length > 0 && html`<ul id="waits">${waits.map(words => html`<li>${words}</li>`)}</ul>`}
${before && html`<p class="soft">${t('Before the first step:')} ${before}</p>`}
${days.map(day => dayMarkup(day, content, now))}
${pressed.map(pressedMarkup)}
${careful(cautions, t('Take care'), 'care')}
</section>
</div>`;
}

function picture({ svg, width, height }: NonNullable<PutUpContent['plan']>, steps: readonly StepOnPage[], now: number): Html {
    const sized = svg.replace(/^<svg/, `<svg width="${Math.round(width)}" height="${Math.round(height)}"`);
    return html`<section class="picture" aria-labelledby="now-words">
<div class="bar" role="toolbar" ${attributes({ 'aria-label': t('Steps') })}>
${sign('first', t('First step'), SIGNS.first, now <= 1)}${sign('back', t('One step back'), SIGNS.back, now <= 1)}
<label class="scrub"><span class="unseen">${t('Step')}</span><input type="range" id="scrub" min="1" step="1" data-state="step" ${attributes({ max: steps.length, value: String(now), 'aria-valuetext': nowWords(steps, now) })}></label>
${sign('on', t('One step on'), SIGNS.on, now >= steps.length)}${sign('last', t('Last step'), SIGNS.last, now >= steps.length)}
<button type="button" id="watch" ${attributes({ 'data-find': 'view', 'data-key': `step.${now}`, title: t('Show this step in three dimensions') })}>${t('Watch it')}</button>
</div>
<p id="now-words">${nowWords(steps, now)}</p>
<div class="plan" id="plan">${trusted(sized)}</div>
<ul class="legend"><li><i class="key up"></i>${t('is up')}</li><li><i class="key now"></i>${t('goes up now')}</li><li><i class="key later"></i>${t('not yet')}</li></ul>
</section>`;
}

/** `Step 3 of 43: blocking, line A. Pieces that go up now: 4; up already: 2.` */
export function nowWords(steps: readonly StepOnPage[], now: number): string {
    const step = steps[now - 1], up = steps.slice(0, Math.max(0, now - 1)).reduce((sum, { pieces }) => sum + pieces.length, 0);
    return step ? t('Step {0} of {1}: {2}. Pieces that go up now: {3}; up already: {4}.', now, steps.length, step.what, step.pieces.length, up) : '';
}

function dayMarkup({ day, hours, steps }: DayOnPage, content: PutUpContent, now: number): Html {
    const id = `day-${day ?? 'any'}`;
    return html`<section class="day" aria-labelledby="${id}"><h3 id="${id}">${day === null ? t('In this order') : t('Day {0}', day)}${hours && html` <span class="soft">${t('{0} of one person', hours)}</span>`}</h3>
<ol>${steps.map(step => stepMarkup(step, content, step.number === now))}</ol></section>`;
}

function stepMarkup(step: StepOnPage, content: PutUpContent, isOpen: boolean): Html {
    const { number, what, days, crew, people, hours, pieces, gate, closing, after } = step, id = `step-${number}`;
    const facts = [pieces.length === 1 ? t('1 piece') : t('{0} pieces', pieces.length), people > 1 ? t('{0} people', people) : '', after && t('after {0}', after), hours, days && t('days {0}', days), crew === null ? '' : t('crew {0}', crew), closing.length > 0 ? t('closing') : ''].filter(Boolean);
    return html`<li ${attributes({ id, 'class': isOpen ? 'step open' : 'step', 'data-keys': pieces.map(({ key }) => key).join(' ') })}>
<h4><button type="button" class="link head" ${attributes({ id: `${id}-head`, 'data-act': 'step', 'data-number': number, 'aria-expanded': String(isOpen), 'aria-current': isOpen ? 'step' : undefined, 'aria-controls': isOpen ? `${id}-body` : undefined, tabindex: isOpen ? 0 : -1 })}><span class="number">${number}</span> <span><span class="what">${what}</span> <span class="soft facts">${facts.join(', ')}</span></span></button></h4>
${isOpen && body(step, content, id)}
${gate && gateMarkup(gate, id)}</li>`;
}

function body({ kind, pieces, fasteners, ways, closing, closingTime, isGlued, cautions }: StepOnPage, { how }: PutUpContent, id: string): Html {
    const told = how.filter(each => each.kind === kind || isGlued && each.kind === 'glue');
    return html`<div class="body" id="${id}-body">
<ul class="pieces" ${attributes({ 'aria-label': t('Pieces') })}>${pieces.map(({ key, name, title, at, isUp }) => html`<li><button type="button" class="link piece" ${attributes({ id: `piece-${key}`, 'data-key': key, 'data-at': at, title })}>${name}</button>${isUp && html` <span class="soft">${t('is up')}</span>`}</li>`)}</ul>
${fasteners.length > 0 && html`<p>${t('With {0}.', fasteners.join('; '))}</p>`}
${ways.map(([names, way]) => html`<p><b>${names}:</b> ${way}.</p>`)}
${closing.map(({ names, wanted, ways: own }) => html`<div class="closing"><p>${t('{0}: {1} shorter would do, for a while. Ways in, the best first:', names, wanted)}</p>
${own.length > 0 ? html`<ol>${own.map(way => html`<li>${way}</li>`)}</ol>` : html`<p>${t('None of those that are known works.')}</p>`}</div>`)}
${closingTime.map(words => html`<p>${words}</p>`)}
${told.map(({ head, words }) => html`<p class="soft"><b>${head}.</b> ${words}</p>`)}
${careful(cautions, t('Take care'), `${id}-care`)}
</div>`;
}

function careful(cautions: readonly string[], head: string, id: string): Html | '' {
    return cautions.length === 0 ? '' : html`<div class="care" role="group" aria-labelledby="${id}"><b ${attributes({ id })}>${head}</b><ul>${cautions.map(words => html`<li>${words}</li>`)}</ul></div>`;
}

function pressedMarkup({ heading, words, table }: LeafSection): Html {
    return html`<details class="pressed" id="pressed"><summary>${capitalized(heading)}</summary>${words.map(each => html`<p>${each}</p>`)}
${table && html`<div class="wide" role="region" tabindex="0" ${attributes({ 'aria-label': heading })}><table><thead><tr>${table.head.map(each => html`<th scope="col">${each}</th>`)}</tr></thead>
<tbody>${table.rows.map(row => html`<tr>${row.map(each => html`<td>${each}</td>`)}</tr>`)}</tbody></table></div>`}</details>`;
}

/** Behind it nothing goes on before what was measured is in the text. */
function gateMarkup({ coffer, rows }: GateOnPage, id: string): Html {
    return html`<div class="gate" role="group" aria-labelledby="${id}-gate"><h4 id="${id}-gate">${t('Stop here: measure coffer {0}', coffer)}</h4>
<p>${t('Nothing but blocking and spacers is cut beyond this before what was measured is in the text.')}</p>
<table><thead><tr><th scope="col">${t('Measure')}</th><th scope="col">${t('Should be')}</th><th scope="col">${t('Goes back to')}</th></tr></thead>
<tbody>${rows.map(([what, of, wanted, to]) => html`<tr><th scope="row">${what}, ${of}</th><td class="figure">${wanted}</td><td>${to}</td></tr>`)}</tbody></table></div>`;
}
