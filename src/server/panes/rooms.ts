import { URI, type LangiumDocument } from 'langium';
import type { Ceiling, Layout } from '../../ceiling/model.ts';
import type { Finding } from '../../findings/finding.ts';
import type { Alternate } from '../../job/alternate.ts';
import type { FileContent } from '../../job/file.ts';
import type { JobSettings } from '../../job/model.ts';
import { readFile } from '../../language/read-file.ts';
import type { CofferSharedServices } from '../../language/services.ts';
import { isBuiltin } from '../../language/workspace/builtin.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import type { Problem, RoomChoice } from '../../panes/messages.ts';
import { inspect, takeOffOf } from '../../pipeline/inspect.ts';
import { filesOfJob } from '../files-of-job.ts';

/** A room that stands in a text, laid out or not. */
export interface RoomThere { readonly file: FileContent; readonly layout: Layout }

/** The rooms of the open folders, as pages want them. Asked for only between builds, so that every document is linked. */
export class Rooms {
    /** `boardsOf`: what is known of a house's boards, where somebody looks for cheaper ones. */
    constructor(private readonly services: CofferSharedServices, private readonly boardsOf?: (house: readonly RoomOnPage[]) => RoomOnPage['boards']) {}

    document(uri: string): LangiumDocument | undefined {
        return this.services.workspace.LangiumDocuments.getDocument(URI.parse(uri));
    }

    /** Of one file, in the order of the text. */
    in(uri: string): readonly RoomThere[] {
        const document = this.document(uri);
        if (!document || isBuiltin(document.uri)) return [];
        const file = readFile(document);
        return inspect(file).layouts.map(layout => ({ file, layout }));
    }

    /** Of all files of one job with a file, the file's own first. */
    ofJob(uri: string): readonly RoomThere[] {
        return filesOfJob(this.services, uri).flatMap(file => this.in(file));
    }

    /** A room with all that pages take from it, or undefined where it is not laid out. */
    onPage({ file, layout }: RoomThere): RoomOnPage | undefined {
        const { ceiling } = layout;
        return ceiling && !layout.room.broken ? new KnownRoom(file, layout, ceiling, this.findingsBehind(file.uri), job => this.house(job), job => this.alternates(job), this.boardsOf) : undefined;
    }

    /** The first error in a room's file or, where that has none, in a file it uses. */
    firstError(uri: string): Problem | undefined {
        const error = this.findingsBehind(uri).find(({ severity, allowed }) => severity === 'error' && !allowed);
        return error && { message: error.message, at: error.at };
    }

    /** What was found in a file and in those it uses, its own first. */
    private findingsBehind(uri: string): Finding[] {
        const document = this.document(uri);
        if (!document) return [];
        return [uri, ...this.services.workspace.Imports.reached(document)].flatMap(file => {
            const found = this.document(file);
            return found && !isBuiltin(found.uri) ? inspect(readFile(found)).findings : [];
        });
    }

    /** Alternates of the rooms under a job. */
    private alternates(job: JobSettings): readonly Alternate[] {
        const key = keyOf(job);
        return this.files().flatMap(uri => {
            const document = this.document(uri);
            return document && !isBuiltin(document.uri) ? readFile(document).alternates.filter(({ rooms: [first] }) => first && keyOf(first.instead.job) === key) : [];
        });
    }

    /** Every room there is. */
    all(): readonly RoomThere[] {
        return this.files().flatMap(uri => this.in(uri));
    }

    private files(): string[] {
        return this.services.workspace.LangiumDocuments.all.toArray().map(({ uri }) => uri.toString()).sort();
    }

    private house(job: JobSettings): RoomOnPage[] {
        const key = keyOf(job);
        return this.files().flatMap(uri => this.in(uri)).filter(({ layout }) => keyOf(layout.room.job) === key).flatMap(there => this.onPage(there) ?? []);
    }
}

export function choiceOf({ file, layout: { room } }: RoomThere): RoomChoice {
    return { uri: file.uri, room: room.name, title: room.title ?? room.name };
}

/** Rooms without a job are under the same one: none. */
function keyOf({ at }: JobSettings): string {
    return at ? `${at.uri}#${at.range.start.line}:${at.range.start.character}` : '';
}

class KnownRoom implements RoomOnPage {
    private rooms: readonly RoomOnPage[] | undefined;

    constructor(readonly file: FileContent, readonly layout: Layout, readonly ceiling: Ceiling, readonly findings: readonly Finding[], private readonly houseOf: (job: JobSettings) => readonly RoomOnPage[], private readonly alternatesOf: (job: JobSettings) => readonly Alternate[], private readonly boardsOf?: (house: readonly RoomOnPage[]) => RoomOnPage['boards']) {}

    get takeOff(): RoomOnPage['takeOff'] {
        return takeOffOf(this.ceiling);
    }

    get alternates(): readonly Alternate[] {
        return this.alternatesOf(this.layout.room.job);
    }

    get house(): readonly RoomOnPage[] {
        return this.rooms ??= this.houseOf(this.layout.room.job);
    }

    get boards(): RoomOnPage['boards'] {
        return this.boardsOf?.(this.house);
    }
}
