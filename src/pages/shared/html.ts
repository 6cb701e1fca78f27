import { escapeAttribute } from '../../text/xml.ts';
import { cleanText } from '../../text/clean-text.ts';
import { inStretches } from './lengths.ts';

/**
 * Markup in the making. The only way to make it is the tag `html`, which escapes whatever is put in: names and words come
 * from a job and may hold anything.
 *
 *     html`<li ${attributes({ class: 'piece', hidden: done })}>${piece.where}</li>`
 */
export class Html {
    /** Private in effect: nobody but this file makes markup from text. */
    constructor(readonly text: string) {}

    toString(): string {
        return this.text;
    }
}

/**
 * What may stand in a template: markup as it is, all else as text. Arrays one after the other; nothing for undefined, null and false.
 * In text, lengths are set alike everywhere: see lengths.ts.
 */
export type Content = Html | string | number | false | null | undefined | readonly Content[];

export function html(texts: TemplateStringsArray, ...contents: readonly Content[]): Html {
    let isTag = false;
    return new Html(texts.reduce((markup, text, i) => {
        // what is put in opens no tag and closes none
        const before = texts[i - 1]!, [opened, closed] = [before.lastIndexOf('<'), before.lastIndexOf('>')];
        if (opened >= 0 || closed >= 0) isTag = opened > closed;
        return `${markup}${markupOf(contents[i - 1], isTag)}${text}`;
    }));
}

function markupOf(content: Content, inTag: boolean): string {
    if (content === undefined || content === null || content === false) return '';
    if (content instanceof Html) return content.text;
    if (typeof content === 'object') return content.map(each => markupOf(each, inTag)).join('');
    const words = String(content);
    if (inTag || !/\d/.test(words)) return escaped(words);
    return inStretches(words).map(({ words: some, isLength }) => (isLength ? `<span class="len">${escaped(some)}</span>` : escaped(some))).join('');
}

/** Fit for text and for attributes in either kind of quotes. */
function escaped(words: string): string {
    return escapeAttribute(words).replaceAll("'", '&#39;');
}

/** `true`: the attribute alone; undefined and false: none. For `aria-…`, whose values are words, say 'true' and 'false'. */
type AttributeValue = string | number | boolean | undefined;

/** Attributes from a table; their names come from the program alone. */
export function attributes(table: Readonly<Record<string, AttributeValue>>): Html {
    return new Html(Object.entries(table).flatMap(([name, value]) => {
        if (!/^[a-zA-Z][\w-]*$/.test(name)) throw new Error(`${name} is no name of an attribute`);
        if (/^(on|style$)/i.test(name)) throw new Error(`${name}: pages hold neither scripts nor styles in their markup`);
        if (value === undefined || value === false) return [];
        return [value === true ? name : `${name}="${escaped(String(value))}"`];
    }).join(' '));
}

/**
 * A string that is markup already. Only for drawings that src/drawing made, which escapes names itself, and for style sheets
 * of our own; never for anything from a job.
 */
export function trusted(markup: string): Html {
    return new Html(markup);
}

/** Words for an element that holds no markup, such as the title of a page. */
export function wordsAlone(words: string): Html {
    return new Html(escaped(words));
}

/** Words of the program in which what is typed stands between backticks. */
export function withCode(words: string): Html {
    return html`${words.split('`').map((part, i) => (i % 2 === 1 ? html`<code>${part}</code>` : part))}`;
}

/** A name from the job: it may run from right to left, or hold marks that turn the words after it round. */
export function named(words: string): Html {
    return html`<bdi>${cleanText(words)}</bdi>`;
}
