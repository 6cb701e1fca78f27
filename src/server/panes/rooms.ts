import type { LangiumDocument } from 'langium';
import type { FileContent } from '../../job/file.ts';
import { readFile } from '../../language/read-file.ts';
import type { CofferSharedServices } from '../../language/coffer-services.ts';
import { isBuiltin } from '../../language/workspace/builtin.ts';
import { madeFrom } from '../../language/workspace/made-from.ts';
import { keyOfJob, RoomsOnPages, type FilesThere, type RoomThere, type Ways } from '../../pages/rooms.ts';
import { titleOfHouse } from '../../report/house.ts';
import type { Problem, RoomChoice } from '../../panes/messages.ts';
import { cleanText } from '../../text/clean-text.ts';
import { filesOfJob } from '../files-of-job.ts';
import { documentAt } from '../document-at.ts';

export type { RoomThere } from '../../pages/rooms.ts';

/** The rooms of the open folders. Asked for only between builds, so that every document is linked. */
export class Rooms extends RoomsOnPages {
    /** `ways`: what somebody looks for beside the texts. */
    constructor(private readonly services: CofferSharedServices, ways: Pick<Ways, 'boardsOf' | 'otherGridsOf' | 'orderOf'> = {}) {
        super(new OpenFiles(services), ways);
    }

    document(uri: string): LangiumDocument | undefined {
        return documentAt(this.services, uri);
    }

    /** Of all files of one job with a file, the file's own first. */
    ofJob(uri: string): readonly RoomThere[] {
        return filesOfJob(this.services, uri).flatMap(file => this.in(file));
    }

    /** The first error in a room's file or, where that has none, in a file it uses. */
    firstError(uri: string): Problem | undefined {
        const error = this.findingsBehind(uri).find(({ severity, allowed }) => severity === 'error' && !allowed);
        return error && { message: error.message, at: error.at };
    }
}

class OpenFiles implements FilesThere {
    constructor(private readonly services: CofferSharedServices) {}

    all(): readonly string[] {
        return this.services.workspace.LangiumDocuments.all.toArray().filter(({ uri }) => !isBuiltin(uri)).map(({ uri }) => uri.toString()).sort();
    }

    content(uri: string): FileContent | undefined {
        const document = documentAt(this.services, uri);
        return document && !isBuiltin(document.uri) ? readFile(document) : undefined;
    }

    reached(uri: string): readonly string[] {
        return madeFrom([uri], this.services);
    }
}

export function choiceOf({ file, layout: { room } }: RoomThere): RoomChoice {
    return { uri: file.uri, room: room.name, title: cleanText(room.title ?? room.name) };
}

/** The same where whole houses are shown: each stands for itself by one of its rooms, and is called by its own name. */
export function housesOf(one: RoomThere | undefined, all: readonly RoomThere[]): { readonly shown: RoomChoice | null; readonly rooms: readonly RoomChoice[] } {
    const houses = new Map<string, RoomThere[]>();
    for (const there of one ? [one, ...all] : all) {
        const key = keyOfJob(there.layout.room.job), rooms = houses.get(key) ?? [];
        if (!rooms.some(each => isSame(each, there))) houses.set(key, [...rooms, there]);
    }
    const choices = [...houses.values()].map(rooms => ({
        ...choiceOf(rooms[0]!), title: cleanText(titleOfHouse({ job: rooms[0]!.layout.room.job, rooms: rooms.map(({ layout }) => layout) })),
    }));
    return { shown: one ? choices[0]! : null, rooms: choices };
}

function isSame(a: RoomThere, b: RoomThere): boolean {
    return a.file.uri === b.file.uri && a.layout.room.name === b.layout.room.name;
}
