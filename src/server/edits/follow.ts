import { TextDocument } from 'vscode-languageserver-textdocument';
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';

/** Part of a text, by its offsets. */
export interface Span { readonly from: number; readonly to: number }
/** `text` in place of what stood from `from` to `to`, in a text `before` it. */
export interface Edit { readonly before: string; readonly from: number; readonly to: number; readonly text: string }

/** The changes that an editor tells one after another, each as small as it can be said. `document` is used up: it ends as the last text. */
export function editsOf(document: TextDocument, changes: readonly TextDocumentContentChangeEvent[]): Edit[] {
    return changes.map(change => {
        const before = document.getText();
        const [from, to] = 'range' in change ? [document.offsetAt(change.range.start), document.offsetAt(change.range.end)] : [0, before.length];
        TextDocument.update(document, [change], 0);
        return smallest({ before, from, to, text: change.text });
    });
}

/** What became of a text of which only the outcome is known. */
export function editBetween(before: string, after: string): Edit {
    return smallest({ before, from: 0, to: before.length, text: after });
}

function smallest({ before, from, to, text }: Edit): Edit {
    const most = Math.min(to - from, text.length);
    let head = 0, tail = 0;
    while (head < most && before[from + head] === text[head]) head++;
    while (tail < most - head && before[to - 1 - tail] === text[text.length - 1 - tail]) tail++;
    return { before, from: from + head, to: to - tail, text: text.slice(head, text.length - tail) };
}

/**
 * Where words are after an edit around them, before them or in them. undefined where they were taken away, or nobody can
 * tell where they went: a wrong place is worse than none.
 */
export function follow(words: Span, edit: Edit): Span | undefined {
    const { from, to } = words, grown = edit.text.length - (edit.to - edit.from);
    if (edit.to <= from) return { from: from + grown, to: to + grown };
    if (edit.from >= to) return words;
    if (edit.from <= from && edit.to >= to) return foundAgain(words, edit);
    if (edit.from >= from && edit.to <= to) return { from, to: to + grown };
    return edit.from < from ? { from: edit.from + edit.text.length, to: to + grown } : { from, to: edit.from };
}

/**
 * Words that were replaced with what is around them: they are where a line like theirs is, if there was and is only one;
 * or, where a value was written over, the new value stands in their place.
 */
function foundAgain({ from, to }: Span, { before, from: start, to: end, text }: Edit): Span | undefined {
    const words = before.slice(from, to);
    const lineStart = before.lastIndexOf('\n', from - 1) + 1, lineEnd = (before.indexOf('\n', from) + 1 || before.length + 1) - 1;
    const line = plain(before.slice(lineStart, lineEnd));
    const isOnly = linesOf(before.slice(start, end)).filter(({ text: each }) => plain(each) === line).length === 1;
    const [like, another] = isOnly ? linesOf(text).filter(({ text: each }) => plain(each) === line) : [];
    if (like && !another) {
        const at = like.text.indexOf(words), only = at >= 0 && !like.text.includes(words, at + 1);
        return only ? { from: start + like.at + at, to: start + like.at + at + words.length } : undefined;
    }
    if (text.includes('\n') || before.slice(start, end).includes('\n')) return undefined;
    const written = text.includes(words) ? words : text.trim(), at = text.indexOf(written);
    return written !== '' && !text.includes(written, at + 1) ? { from: start + at, to: start + at + written.length } : undefined;
}

function linesOf(text: string): { readonly text: string; readonly at: number }[] {
    let at = 0;
    return text.split('\n').map(line => {
        const found = { text: line, at };
        at += line.length + 1;
        return found;
    });
}

function plain(line: string): string {
    return line.trim().replace(/\s+/g, ' ');
}
