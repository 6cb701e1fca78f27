import { cleanLine } from './clean-text.ts';
import type { Printed, TerminalText } from './fit.ts';

/** How words are set off on a terminal. They are never told apart by that alone. */
const STYLES = ['error', 'warning', 'hint', 'strong', 'faint'] as const;
export type Style = (typeof STYLES)[number];

// A half of a character: no text that was read from a file, a folder or a command line has one, so nobody can color what is not ours.
const BEGINS = 0xdc01, ENDS = 0xdc11;
const MARK = /[\udc01-\udc05\udc11-\udc15](?<![\ud800-\udbff].)/g;

/** Marks words to be set off; the terminal makes of that what it can. */
export function styled(style: Style, words: string): string {
    const i = STYLES.indexOf(style);
    return `${String.fromCharCode(BEGINS + i)}${words}${String.fromCharCode(ENDS + i)}`;
}

/** One line for a terminal, whatever is in it; without an end of line. What a terminal obeys goes, and a name cannot begin another line. */
export function terminalLine(line: string): TerminalText {
    const marks = line.match(MARK) ?? [];
    return line.split(MARK).map((part, i) => `${cleanLine(part)}${marks[i] ?? ''}`).join('') as TerminalText;
}

/** Lines, each with its end. */
export function terminalLines(lines: readonly string[]): TerminalText {
    return lines.map(line => `${terminalLine(line)}\n`).join('') as TerminalText;
}

/** Paragraphs with an empty line between. */
export function terminalParagraphs(paragraphs: readonly (readonly string[])[]): TerminalText {
    return terminalLines(paragraphs.flatMap((lines, i) => (i === 0 ? lines : ['', ...lines])));
}

/** With each mark as `of` wants it: the codes of a terminal, or nothing. */
export function withStyles(text: Printed, of: (style: Style, begins: boolean) => string): string {
    return text.replace(MARK, mark => {
        const code = mark.charCodeAt(0);
        return of(STYLES[(code - BEGINS) % (ENDS - BEGINS)]!, code < ENDS);
    });
}
