import { attributes, html, named, trusted, type Html } from '../shared/html.ts';
import type { Shown } from '../shared/shown.ts';
import { t } from '../shared/words.ts';
import { whyMarkup } from '../shared/why.ts';
import type { CaseShown, SectionContent, SectionShown } from './content.ts';

/** What a reader has set: which of the room's sections is shown, by its key. */
export interface SectionState { readonly section: string }
export const SECTION_STATE: SectionState = { section: '' };

export function renderSection(content: SectionContent, state: SectionState, _shown: Shown): Html {
    const section = content.sections.find(({ key }) => key === state.section) ?? content.sections[0];
    if (!section) return html`<p class="none">${t('No beam runs through this room.')}</p>`;
    return html`<div class="section-page">
${content.sections.length > 1 ? chooser(content.sections, section) : ''}
<div class="columns">
<div class="one">${picture(section)}</div>
<div class="other">
${tolerances(section, content.show)}
${content.runs.map(run => html`<section class="run"><h2>${run.title}</h2><div class="strip">${trusted(run.svg)}</div>${run.cases.map(caseMarkup)}</section>`)}
</div>
</div>
${content.meetings.length === 0 ? '' : html`<h2>${t('How beams meet')}</h2><div class="meetings">${content.meetings.map(({ title, where, svg, words }) => html`<figure class="meeting"><h3>${named(title)}</h3><div class="drawing">${trusted(svg)}</div>
<figcaption><p>${where}</p><p class="soft">${words.join(' ')}</p></figcaption></figure>`)}</div>`}
</div>`;
}

function chooser(sections: readonly SectionShown[], shown: SectionShown): Html {
    return html`<div class="bar" role="group" ${attributes({ 'aria-label': t('Sections of this room') })}>${sections.map(({ key, label, lines }) => html`<button type="button" class="choice" ${attributes({
        'data-state': 'section', 'data-value': key, 'aria-pressed': String(key === shown.key),
    })}>${named(label)} <span class="soft">${lines}</span></button>`)}</div>`;
}

function picture(section: SectionShown): Html {
    const { svg, notes, lengths, label, lines } = section;
    return html`<h2>${named(label)} <span class="soft">${lines}</span></h2>
<div class="drawing">${trusted(svg)}</div>
${notes.length === 0 ? '' : html`<dl class="notes">${notes.map(({ name, words, at, keys }) => html`<div ${attributes({ 'data-keys': keys.length > 0 ? keys.join(' ') : undefined })}><dt>${at === undefined ? name : html`<button type="button" class="link" ${attributes({ 'data-at': at })}>${name}</button>`}</dt><dd>${words}</dd></div>`)}</dl>`}
${lengths.length === 0 ? '' : html`<h3>${t('What follows from the parts')}</h3>
<table class="lengths"><thead><tr><th scope="col">${t('Length')}</th><th scope="col" class="figure">${t('Figure')}</th><th scope="col">${t('Why')}</th></tr></thead>
<tbody>${lengths.map(({ name, figure, off, why }) => html`<tr><th scope="row">${name}</th><td class="figure">${figure}${off ? html` <span class="soft">${off}</span>` : ''}</td><td>${whyMarkup(why)}</td></tr>`)}</tbody></table>`}`;
}

function tolerances(section: SectionShown, show: SectionContent['show']): Html {
    if (section.lengths.length === 0) return html``;
    return html`<section><h2>${t('What the tolerances do')}</h2>
${section.isExact ? html`<p class="soft">${t('No tolerances are given, so every size is drawn as written. A tolerance is written like this:')} <code>${show === 'millimeters' ? 'rip 140 mm ± 0.5 mm' : 'rip 5 1/2" ± 1/64"'}</code></p>` : ''}
${section.cases.map(caseMarkup)}</section>`;
}

function caseMarkup({ id, title, svg, times, verdict, isWrong, reasons }: CaseShown): Html {
    return html`<div class="case" ${attributes({ id: `case-${id}` })}><h3>${title}</h3>
<p ${attributes({ 'class': isWrong ? 'verdict wrong' : 'verdict' })}>${isWrong ? html`<span aria-hidden="true">✕ </span>` : ''}${verdict}</p>
<div class="figure-drawn">${trusted(svg)}</div>
<p class="soft scale">${t('Drawn about {0} times as large, left to right; up and down to no scale.', times)}</p>
<details ${attributes({ id: `why-${id}` })}><summary>${t('Why')}</summary><ul>${reasons.map(({ words, at }) => html`<li>${at === undefined ? words : html`<button type="button" class="link" ${attributes({ 'data-at': at })}>${words}</button>`}</li>`)}</ul></details>
</div>`;
}
