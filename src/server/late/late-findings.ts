import { DiagnosticTag, type Connection, type Diagnostic } from 'vscode-languageserver';
import type { Edits, TextEdited } from '../edits/edits.ts';
import { editBetween } from '../edits/follow.ts';
import { placesAfter, type Moved } from '../edits/places-after.ts';
import { publishing } from '../publishing.ts';

/** What a closer look found of one room. `stale`: its text, or something it is made from, has changed since. */
interface OfRoom { readonly found: readonly Diagnostic[]; readonly stale: boolean }
/** `from`: the texts that all of it was found in; undefined where some of it is older than the rest, or lost its words. */
interface OfFile { readonly rooms: ReadonlyMap<string, OfRoom>; readonly from: readonly string[] | undefined }

/** Where the texts are read that places are followed through. */
interface Texts {
    /** The text of a file as it was last built; undefined where there is none any more. */
    built(uri: string): string | undefined;
    /** The text as it is in the editor now; undefined where it is not open. */
    open(uri: string): string | undefined;
    /** The text of a file and those of all that it is made from, as they were last built, each with its address. */
    madeFrom(uri: string): readonly string[];
}

/**
 * Findings that come later than those of a build, published together with them. A new build does not take them away: they
 * stay at their words, wherever these move, dimmed where a text has changed, until the next closer look has answered. This stands between the server
 * and the editor, as the connection it hands out.
 */
export class LateFindings {
    readonly connection: Connection;
    private readonly quick = new Map<string, readonly Diagnostic[]>();
    private readonly late = new Map<string, OfFile>();
    /** The text of each file that its places are told in. */
    private readonly told = new Map<string, string>();
    private readonly sent = new Map<string, string>();
    private readonly builds: ((uri: string) => void)[] = [];
    private readonly looks: (() => void)[] = [];

    constructor(private readonly wire: Connection, private readonly texts: Texts, edits: Edits) {
        this.connection = publishing(wire, ({ uri, diagnostics }) => this.built(uri, diagnostics));
        edits.onEdit(edited => this.edited(edited));
    }

    /** Tells of each file that was built anew and has to be looked at. */
    onBuild(listener: (uri: string) => void): void {
        this.builds.push(listener);
    }

    /** Tells whenever a closer look at a file has come to its end. */
    onLook(listener: () => void): void {
        this.looks.push(listener);
    }

    /**
     * What a closer look found in a file, room by room. Of a room that could not be looked at now, because its text is half
     * written, what was known stays, as stale as it is; so it does of a room that is not there now in a file that cannot be
     * read from end to end.
     */
    found(uri: string, rooms: ReadonlyMap<string, readonly Diagnostic[] | 'unknown'>, { whole }: { readonly whole: boolean }): void {
        const before = this.late.get(uri)?.rooms;
        const now = new Map<string, OfRoom>(whole ? [] : [...before ?? []].filter(([room]) => !rooms.has(room)));
        for (const [room, found] of rooms) {
            const kept = found === 'unknown' ? before?.get(room) : { found, stale: false };
            if (kept) now.set(room, kept);
        }
        const isWhole = whole && ![...rooms.values()].includes('unknown');
        this.late.set(uri, { rooms: now, from: isWhole ? this.texts.madeFrom(uri) : undefined });
        if (JSON.stringify(this.all(uri)) !== this.sent.get(uri)) void this.publish(uri);
        for (const listener of this.looks) listener();
    }

    /** Everything that is published of a file now. */
    all(uri: string): Diagnostic[] {
        const quick = this.quick.get(uri) ?? [];
        const known = new Set(quick.map(keyOf));
        const late = [...this.late.get(uri)?.rooms.values() ?? []].flatMap(({ found, stale }) => (stale ? found.map(dimmed) : found));
        return [...quick, ...late.filter(each => {
            const key = keyOf(each), isNew = !known.has(key);
            known.add(key);
            return isNew;
        })];
    }

    private built(uri: string, diagnostics: readonly Diagnostic[]): Promise<void> {
        const text = this.texts.built(uri);
        if (text === undefined) {                                       // it is gone
            for (const map of [this.quick, this.late, this.told, this.sent]) map.delete(uri);
            return this.wire.sendDiagnostics({ uri, diagnostics: [...diagnostics] });
        }
        this.become(uri, this.texts.open(uri) ?? text);
        this.quick.set(uri, diagnostics);
        const late = this.late.get(uri);
        // opened, saved, or undone: nothing has changed since the last look
        const isSame = late?.from !== undefined && sameTexts(late.from, this.texts.madeFrom(uri));
        if (late) this.late.set(uri, { ...late, rooms: new Map([...late.rooms].map(([room, { found }]) => [room, { found, stale: !isSame }])) });
        const sent = this.publish(uri);
        if (!isSame) for (const listener of this.builds) listener(uri);
        return sent;
    }

    private publish(uri: string): Promise<void> {
        const diagnostics = this.all(uri);
        this.sent.set(uri, JSON.stringify(diagnostics));
        return this.wire.sendDiagnostics({ uri, diagnostics });
    }

    private edited({ uri, before, after, moved }: TextEdited): void {
        if (!this.told.has(uri)) return;
        this.become(uri, before);
        this.move(uri, moved, after);
    }

    /** A text that changed behind the editor's back, or was opened or closed with changes. */
    private become(uri: string, text: string): void {
        const told = this.told.get(uri);
        if (told !== undefined && told !== text) this.move(uri, placesAfter(uri, [editBetween(told, text)], text), text);
        this.told.set(uri, text);
    }

    /** Every place in a file, of its own findings and of others that are related to it, goes where its words went. */
    private move(uri: string, moved: (file: string, diagnostic: Diagnostic) => Moved, after: string): void {
        this.told.set(uri, after);
        for (const [file, { rooms, from }] of this.late) {
            let lost = false;
            const now = new Map([...rooms].map(([room, { found, stale }]) => [room, { stale, found: found.flatMap(each => {
                const { diagnostic, lost: isLost } = moved(file, each);
                lost ||= isLost;
                return diagnostic ?? [];
            }) }]));
            this.late.set(file, { rooms: now, from: lost ? undefined : from });
        }
    }
}

function sameTexts(before: readonly string[], now: readonly string[]): boolean {
    return before.length === now.length && before.every((text, i) => text === now[i]);
}

/** It may not hold any more, so it offers no fix either. */
function dimmed({ data: _, ...diagnostic }: Diagnostic): Diagnostic {
    return { ...diagnostic, tags: [...diagnostic.tags ?? [], DiagnosticTag.Unnecessary] };
}

function keyOf({ code, message, range: { start, end } }: Diagnostic): string {
    return JSON.stringify([code, message, start.line, start.character, end.line, end.character]);
}
