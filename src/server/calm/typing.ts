import { TextDocument } from 'vscode-languageserver-textdocument';
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';
import type { TextEdited } from '../edits/edits.ts';

/** Nobody has typed for so long: the hand rests. Longer than between two keys of a slow hand, shorter than a look at the screen. Milliseconds. */
export const REST_MS = 400;

/** A key may bring its closing bracket or quote along. */
const MOST_OF_A_KEY = 2;

/**
 * Who types, and in which lines. An edit is typing where it is as small as a key makes it: a character, a pair of brackets, a new line
 * and its indentation, one character or one indentation less. Whatever else happens in the line that somebody types in (a word
 * that completion writes) belongs to it; all else (a fix, a paste, undoing) was meant as it is, and the hand rests after it.
 */
export class Typing {
    private readonly lines = new Map<string, { current: number; readonly left: Set<number> }>();
    private timer: ReturnType<typeof setTimeout> | undefined;
    private readonly rests: (() => void)[] = [];
    private readonly begins: (() => void)[] = [];

    /** Whether somebody types now. */
    get now(): boolean {
        return this.timer !== undefined;
    }

    /** Tells whenever somebody begins to type. */
    onBegin(listener: () => void): void {
        this.begins.push(listener);
    }

    /** Tells whenever the hand has come to rest. */
    onRest(listener: () => void): void {
        this.rests.push(listener);
    }

    /** The lines of a file that were typed in since the hand last rested, and were left for another. */
    left(uri: string): ReadonlySet<number> {
        return this.lines.get(uri)?.left ?? new Set();
    }

    /** The lines left so far have been told of. */
    told(uri: string): void {
        this.lines.get(uri)?.left.clear();
    }

    /** `before`: the text that the first change is made in. */
    edited({ uri, changes, before }: TextEdited): void {
        const document = TextDocument.create(uri, '', 0, before);
        const own = this.lines.get(uri), inLine = this.now ? own?.current : undefined;
        if (!changes.every(change => isKey(change, document) || isWithinLine(change, inLine))) {
            this.rest();
            return;
        }
        const lines = own ?? { current: -1, left: new Set<number>() };
        this.lines.set(uri, lines);
        for (const change of changes) if ('range' in change) follow(lines, change);
        const isFirst = !this.now;
        clearTimeout(this.timer);
        this.timer = setTimeout(() => this.rest(), REST_MS);
        if (isFirst) for (const listener of this.begins) listener();
    }

    /** A file was saved or closed, or whatever else one does with idle hands. Where nobody typed, nobody waits to be told. */
    rest(): void {
        if (!this.now) return;
        clearTimeout(this.timer);
        this.timer = undefined;
        this.lines.clear();
        for (const listener of this.rests) listener();
    }
}

type Change = Extract<TextDocumentContentChangeEvent, { range: object }>;

function isKey(change: TextDocumentContentChangeEvent, document: TextDocument): boolean {
    if (!('range' in change)) return false;
    const taken = document.getText(change.range);
    return (change.text.length <= MOST_OF_A_KEY || isBlank(change.text)) && (taken.length <= MOST_OF_A_KEY || isBlank(taken));
}

function isBlank(text: string): boolean {
    return /^[ \t]*(\r?\n[ \t]*)*$/.test(text);
}

function isWithinLine(change: TextDocumentContentChangeEvent, line: number | undefined): boolean {
    return 'range' in change && change.range.start.line === line && change.range.end.line === line;
}

/** Where the lines are after a change, and which of them somebody is in now. */
function follow(lines: { current: number; readonly left: Set<number> }, { range: { start, end }, text }: Change): void {
    const added = text.split('\n').length - 1, grown = added - (end.line - start.line);
    const moved = (line: number): number => line > start.line && line >= end.line ? line + grown : Math.min(line, start.line);
    const before = [...lines.left, ...lines.current >= 0 ? [lines.current] : []].map(moved);
    // a new line below leaves the one that it was typed in
    if (added > 0) before.push(start.line);
    lines.current = start.line + added;
    lines.left.clear();
    for (const line of before) if (line !== lines.current) lines.left.add(line);
}
