import { cleanLine } from './clean-text.ts';
import type { MarkdownText } from './fit.ts';

/** What an editor shows of a word: as Markdown, where it renders that, or plainly. */
export interface Shown { readonly markdown: MarkdownText; readonly plain: string }

/** Somebody's text as words: nothing in it is a link, a picture, a tag, a heading or code. Every line stays a line. */
export function inWords(text: string): Shown {
    const lines = text.split('\n').map(line => cleanLine(line));
    return { markdown: lines.map(line => escaped(line)).join('\n') as MarkdownText, plain: lines.join('\n') };
}

/**
 * The same of what is written about a thing, and of sentences of our own with names in them: what stands between backquotes is code, and lines
 * that begin with `- ` are a list. A picture would be fetched from wherever it says, and nothing is fetched here.
 */
export function asWritten(text: string): Shown {
    const parts = text.split('\n').map(line => cleanLine(line)).join('\n').split(CODE);
    let markdown = '', plain = '';
    for (let i = 0; i < parts.length; i += 3) {
        const words = parts[i]!, code = parts[i + 2];
        markdown += words.split('\n').map((line, n) => (n > 0 || i === 0) && /^\s*- /.test(line) ? `- ${escaped(line.replace(/^\s*- /, ''))}` : escaped(line)).join('\n');
        plain += words;
        if (code === undefined) continue;
        markdown += `\`${code}\``;
        plain += code;
    }
    return { markdown: markdown as MarkdownText, plain };
}

/** Between two rows of as many backquotes. A row is looked at from its beginning alone: at each of its signs it would take as long as it is, once more. */
const CODE = /(?<!`)(`+)(?!`)([^`\n]+)\1(?!`)/;

/** A piece of a job file in its colors. No line of it ends the block. */
export function asCode(text: string): Shown {
    const plain = text.split('\n').map(line => cleanLine(line)).join('\n'), longest = Math.max(2, ...(plain.match(/`+/g) ?? []).map(run => run.length));
    const fence = '`'.repeat(longest + 1);
    return { markdown: `${fence}coffer\n${plain}\n${fence}` as MarkdownText, plain };
}

/** A drawing of our own, and what it is called where no drawings are shown. */
export function picture(svg: string, name: string): Shown {
    const bytes = new TextEncoder().encode(svg);
    return { markdown: `![${escaped(cleanLine(name))}](data:image/svg+xml;base64,${btoa(Array.from(bytes, byte => String.fromCharCode(byte)).join(''))})` as MarkdownText, plain: '' };
}

/** Two things beside each other, where tables are shown. */
export function beside(left: Shown, right: Shown): Shown {
    return { markdown: `<table><tr><td>\n\n${left.markdown}\n\n</td><td>\n\n${right.markdown}\n\n</td></tr></table>` as MarkdownText, plain: together([left, right]).plain };
}

/** One below the other. */
export function together(parts: readonly Shown[]): Shown {
    const all = (of: (part: Shown) => string): string => parts.map(of).filter(text => text.trim() !== '').join('\n\n');
    return { markdown: all(part => part.markdown) as MarkdownText, plain: all(part => part.plain) };
}

/** What begins something in the middle of a line, and at the beginning of one; addresses too, which renderers make links of by themselves. */
const MEANS = /[\\`*_[\]<>|~]|&(?=#?\w+;)|:(?=\/\/)|(?<=\bwww)\.|(?<=\w)@(?=\w)|(?<=\b(?:mailto|command|vscode|xmpp)):/gi, BEGINS = /^(\s*)(#|[-+] |=+\s*$|-+\s*$)/;

function escaped(line: string): string {
    return line.replace(/^\s{4,}/, '   ').replace(MEANS, sign => (sign === '<' ? '&lt;' : sign === '>' ? '&gt;' : sign === '&' ? '&amp;' : `\\${sign}`))
        .replace(BEGINS, (_, space: string, sign: string) => `${space}\\${sign}`);
}

/** Paragraphs, lists and tables for a page that renders Markdown: a review on a code host. Every text in it goes through the same gate. */
export const page = {
    heading: (level: number, text: string): MarkdownText => `${'#'.repeat(level)} ${inWords(text).markdown}` as MarkdownText,
    words: (text: string): MarkdownText => inWords(text).markdown,
    strong: (text: string): MarkdownText => `**${inWords(text).markdown}**` as MarkdownText,
    list: (lines: readonly string[]): MarkdownText => lines.map(line => `- ${inWords(oneLine(line)).markdown}`).join('\n') as MarkdownText,
    table: (head: readonly string[], rows: readonly (readonly string[])[], right: readonly number[] = []): MarkdownText => {
        const row = (cells: readonly string[]): string => `| ${cells.map(cell => inWords(oneLine(cell)).markdown || ' ').join(' | ')} |`;
        return [row(head), `| ${head.map((_, i) => (right.includes(i) ? '---:' : '---')).join(' | ')} |`, ...rows.map(row)].join('\n') as MarkdownText;
    },
    /** Folded away below a line that is always shown. */
    folded: (line: string, inside: readonly MarkdownText[]): MarkdownText => `<details><summary>${inWords(line).markdown}</summary>\n\n${inside.join('\n\n')}\n\n</details>` as MarkdownText,
    together: (parts: readonly MarkdownText[]): MarkdownText => `${parts.join('\n\n')}\n` as MarkdownText,
};

function oneLine(text: string): string {
    return text.replace(/\s*\n\s*/g, ' ');
}
