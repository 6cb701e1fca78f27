import type { Connection, Diagnostic } from 'vscode-languageserver';
import type { Edits, TextEdited } from '../edits/edits.ts';
import { publishing } from '../publishing.ts';
import type { Typing } from './typing.ts';

/**
 * Findings wait for the word. While somebody types, a half-written line is wrong in a hundred ways that nobody has to be told; so what is found
 * then is kept here until the hand rests, and the editor goes on showing what it shows. Only what is found in a line that was left for another is
 * told at once. This stands between the server and the editor, as the connection it hands out.
 */
export class CalmFindings {
    readonly connection: Connection;
    /** What the editor shows, at the places where the words are by now. */
    private readonly shown = new Map<string, readonly Diagnostic[]>();
    /** What was told last, at the places where the words were then: an editor moves its marks, not its list. */
    private readonly sent = new Map<string, string>();
    private readonly waiting = new Map<string, readonly Diagnostic[]>();

    /** `open`: the text of a file in the editor; undefined where it is not open. */
    constructor(
        private readonly wire: Connection, private readonly typing: Typing, edits: Edits, private readonly open: (uri: string) => string | undefined,
    ) {
        this.connection = publishing(wire, ({ uri, diagnostics }) => this.found(uri, diagnostics));
        edits.onEdit(edited => this.edited(edited));
        typing.onRest(() => {
            for (const [uri, diagnostics] of this.waiting) void this.show(uri, diagnostics);
        });
    }

    private found(uri: string, diagnostics: readonly Diagnostic[]): Promise<void> {
        if (!this.typing.now) return this.show(uri, diagnostics);
        this.waiting.set(uri, diagnostics);
        const left = this.leftWhole(uri);
        if (left.size === 0) return Promise.resolve();
        const shown = this.shown.get(uri) ?? [], known = new Set(shown.map(sayingOf));
        const news = diagnostics.filter(each => isWithin(each, left) && !known.has(sayingOf(each)));
        this.typing.told(uri);
        if (news.length === 0) return Promise.resolve();
        return this.send(uri, [...shown, ...news]);
    }

    /** The lines that were left; but the head of a block is judged when the hand rests, with what it then holds. */
    private leftWhole(uri: string): ReadonlySet<number> {
        const left = this.typing.left(uri);
        if (left.size === 0) return left;
        const lines = (this.open(uri) ?? '').split('\n');
        return new Set([...left].filter(line => !lines[line]?.trimEnd().endsWith('{')));
    }

    private show(uri: string, diagnostics: readonly Diagnostic[]): Promise<void> {
        this.waiting.delete(uri);
        // told once more, the same would make lists and margins blink
        return this.sent.get(uri) === JSON.stringify(diagnostics) ? Promise.resolve() : this.send(uri, diagnostics);
    }

    private send(uri: string, diagnostics: readonly Diagnostic[]): Promise<void> {
        this.shown.set(uri, diagnostics);
        this.sent.set(uri, JSON.stringify(diagnostics));
        return this.wire.sendDiagnostics({ uri, diagnostics: [...diagnostics] });
    }

    private edited(edited: TextEdited): void {
        // found in a text that is not there any more; the next build tells anew
        this.waiting.delete(edited.uri);
        this.typing.edited(edited);
        for (const [file, diagnostics] of this.shown) this.shown.set(file, diagnostics.flatMap(each => edited.moved(file, each).diagnostic ?? []));
    }
}

function isWithin({ range: { start, end } }: Diagnostic, lines: ReadonlySet<number>): boolean {
    for (let line = start.line; line <= end.line; line++) if (!lines.has(line)) return false;
    return true;
}

/** A finding is the same one when it says the same of the same line. */
function sayingOf({ code, message, range: { start } }: Diagnostic): string {
    return JSON.stringify([code, message, start.line]);
}
