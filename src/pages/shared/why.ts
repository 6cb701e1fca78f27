import { whyParts } from '../../provenance/why-text.ts';
import type { Why } from '../../provenance/why.ts';
import type { Tape } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { attributes, html, type Html } from './html.ts';
import type { Sources } from './sources.ts';

/** A sum in words, in stretches; `at`: the number of the place in the text that a term comes from. */
export type WhyWords = readonly { readonly text: string; readonly at?: number }[];

export function whyWords(why: Why, total: Ticks, tape: Tape, sources: Sources): WhyWords {
    return whyParts(why, total, tape).map(({ text, at }) => ({ text, ...at && { at: sources.number(at) } }));
}

/** Every term is a button that leads to its words; on paper it is plain text. */
export function whyMarkup(why: WhyWords): Html {
    return html`<span class="why">${why.map(({ text, at }) => at === undefined ? text : html`<button type="button" class="link" ${attributes({ 'data-at': at })}>${text}</button>`)}</span>`;
}
