import { DocumentState, URI } from 'langium';
import type { CofferSharedServices } from '../../language/coffer-services.ts';
import { MOST_FILES } from '../../language/workspace/most-files.ts';
import type { Against, ChangesFound, ChangesKnown } from '../../pages/changes/known.ts';
import { keyOfJob, type RoomThere } from '../../pages/rooms.ts';
import { breath } from '../breath.ts';
import type { Typing } from '../calm/typing.ts';
import { documentAt } from '../document-at.ts';
import { isKnown } from '../features/figures.ts';
import type { OldStateResult } from '../messages.ts';
import type { Rooms } from '../panes/rooms.ts';
import { compareHouse, houseBefore, mayBeOf, type HouseNow } from './compare.ts';
import type { History } from './history.ts';
import { OldFiles } from './old-files.ts';
import { OldWorkspace } from './old-workspace.ts';
import { filesOf, byHouse } from './side.ts';

/** A house that somebody wants compared with a commit. */
interface Asked {
    readonly key: string;
    readonly against: Wanted;
    /** Some room of the house. */
    room: RoomThere;
    known: ChangesKnown;
    /** Which edition of the texts, and of the history, that is known of. */
    edition: number;
    /** What it was made from. */
    from: readonly unknown[];
}

type OldState = Exclude<OldStateResult, { readonly none: unknown }>;

/** The whole hash of a commit; the one that the contract says was signed; or the last one. */
type Wanted = string | null;

/** So many houses are kept compared, and so many earlier states open: what is asked for again beyond that is worked out again. */
const MOST_ASKED = 12, MOST_STATES = 2;

/** Thrown where a comparison is to be left: somebody types, or something is otherwise. */
class LeftOff extends Error {}

/**
 * What changed in houses since a commit, for whoever wants to show it. It is worked out while the hand rests, a file and a room at a time, so that
 * whatever the editor asks for is answered in between; an edit breaks it off. What was found stays until more is known.
 */
export class Comparisons {
    private readonly asked = new Map<string, Asked>();
    private readonly waiting = new Set<Asked>();
    private readonly states = new Map<string, { readonly files: OldFiles; readonly workspace: OldWorkspace }>();
    private readonly listeners: ((found: ChangesKnown) => void)[] = [];
    private edition = 0;
    private isWorking = false;

    constructor(
        private readonly history: History, private readonly services: CofferSharedServices, private readonly rooms: Rooms,
        private readonly typing: Pick<Typing, 'now' | 'onRest'>, private readonly log: (words: string) => void = () => undefined,
    ) {
        services.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, () => { this.edition++; });
        history.onChange(() => {
            this.edition++;
            // whoever shows it asks again, and is answered anew
            this.tell({ working: true });
        });
        typing.onRest(() => this.start());
    }

    /** Told whenever more is known of a house. */
    onFound(listener: (found: ChangesKnown) => void): void {
        this.listeners.push(listener);
    }

    /**
     * What is known of the house of a room. More is looked for where that may not be all, and told. `against`: the whole hash of a commit, or `signed`;
     * null: the last one.
     */
    of(room: RoomThere, against: Wanted = null): ChangesKnown {
        const key = `${houseKey(room)} ${against ?? ''}`;
        const one = this.asked.get(key) ?? { key, against, room, known: { working: true }, edition: -1, from: [] };
        one.room = room;
        this.asked.delete(key);
        this.asked.set(key, one);
        if (this.asked.size > MOST_ASKED) this.asked.delete(this.asked.keys().next().value!);
        if (one.edition !== this.edition) {
            this.waiting.add(one);
            this.start();
        }
        return one.known;
    }

    /** What is known of the house of a job's file beside the commit that was signed, where somebody has had that compared. */
    ofSigned(uri: string): ChangesFound | undefined {
        const one = [...this.asked.values()].find(({ against, room }) => against === 'signed' && room.layout.room.job.at?.uri === uri);
        return one && 'house' in one.known ? one.known : undefined;
    }

    private start(): void {
        if (this.isWorking || this.typing.now || this.waiting.size === 0) return;
        this.isWorking = true;
        void this.work().finally(() => { this.isWorking = false; });
    }

    private async work(): Promise<void> {
        await breath();
        for (let [one] = this.waiting; one && !this.typing.now; [one] = this.waiting) {
            this.waiting.delete(one);
            const { edition } = this;
            try {
                await this.compare(one, edition);
                one.edition = edition;
            } catch (error) {
                if (error instanceof LeftOff) this.waiting.add(one);
                else {
                    this.log(`changes: ${error instanceof Error ? error.stack ?? error.message : String(error)}`);
                    one.edition = edition;
                    this.found(one, { none: 'fault' });
                }
            }
            await breath();
        }
    }

    private async compare(one: Asked, edition: number): Promise<void> {
        const goOn = (): boolean => edition === this.edition && !this.typing.now;
        const next = async (): Promise<void> => {
            await breath();
            if (!goOn()) throw new LeftOff();
        };
        const commit = one.against === 'signed' ? one.room.layout.room.job.contract?.signed?.commit?.value : one.against;
        const state: OldStateResult = commit === undefined ? { none: 'not-signed' } : await this.history.stateOf(one.room.file.uri, commit);
        await next();
        if ('none' in state) {
            one.from = [];
            return this.found(one, state);
        }
        const now = await this.houseNow(one, state.top);
        if (!now) return;
        if (this.isBroken(one, now)) return this.keepAsItWas(one);
        const tables = now.documents.flatMap(document => now.tables.namedIn(document)).map(uri => now.tables.at(uri));
        const from = [state.commit.hash, ...now.contents.values(), ...now.documents.map(({ parseResult }) => parseResult.value), ...tables];
        if (isSame(from, one.from)) return this.isAgain(one);
        const { files, workspace: old } = this.opened(state);
        const wanted = [...new Set([...now.contents.keys(), ...mayBeOf(now.house, this.rooms.files, state.others)])];
        if (wanted.length > MOST_FILES) return this.found(one, { none: 'too-many' });
        await old.read(wanted.map(uri => URI.parse(uri)), goOn);
        await next();
        old.matchWith({
            content: uri => now.contents.get(uri), madeFrom: uri => this.rooms.files.reached(uri),
            textOf: uri => this.rooms.document(uri)?.textDocument.getText(), tablesOf: uri => this.tablesOf(uri),
        });
        const before = await houseBefore(now, old, next), top = `${state.top}/`;
        const nameOf = (uri: string): string => decodeURIComponent(uri.startsWith(top) ? uri.slice(top.length) : uri);
        const more = { against: againstOf(one.against), unread: [...files.unread].map(([uri, why]) => ({ file: nameOf(uri), why })) };
        for (const closely of [false, true]) {
            const found: ChangesFound = { isBehind: false, ...await compareHouse(now, before, old, state.commit, nameOf, { closely }, next), ...more };
            await next();
            this.found(one, found);
            if (!found.isLooking) break;
        }
        one.from = from;
    }

    /** A room that was laid out is half written now: what it comes to nobody can tell. */
    private isBroken({ known, from }: Asked, { house: { rooms } }: HouseNow): boolean {
        const broken = rooms.filter(({ layout }) => !isKnown(layout)).map(({ layout }) => layout.room.name);
        if (from.length === 0 || !('house' in known)) return false;
        return known.house.after!.rooms.some(({ room, takeOff }) => takeOff !== undefined && broken.includes(room.name));
    }

    private keepAsItWas(one: Asked): void {
        if ('house' in one.known && !one.known.isBehind) this.found(one, { ...one.known, isBehind: true });
    }

    private isAgain(one: Asked): void {
        if ('house' in one.known && one.known.isBehind) this.found(one, { ...one.known, isBehind: false });
    }

    private tablesOf(uri: string): string {
        const document = this.rooms.document(uri);
        return document ? this.services.workspace.Tables.saidIn(document) : '';
    }

    /** Between builds, when every document is linked. */
    private async houseNow({ room }: Asked, top: string): Promise<HouseNow | undefined> {
        let now: HouseNow | undefined;
        const key = houseKey(room);
        await this.services.workspace.WorkspaceLock.read(() => {
            const isInside = (uri: string): boolean => uri.startsWith(`${top}/`);
            const [house] = byHouse(this.rooms.all().filter(there => houseKey(there) === key && isInside(there.file.uri)));
            if (!house) return;
            const { files } = this.rooms, own = filesOf(house, files).filter(isInside);
            now = {
                house, rooms: this.rooms, documents: own.flatMap(uri => documentAt(this.services, uri) ?? []), tables: this.services.workspace.Tables,
                contents: new Map(own.flatMap(uri => { const content = files.content(uri); return content ? [[uri, content] as const] : []; })),
            };
        });
        return now;
    }

    /** The state as a workspace, read once however often it is compared with. */
    private opened({ top, commit: { hash } }: OldState): { readonly files: OldFiles; readonly workspace: OldWorkspace } {
        const key = `${hash} ${top}`, uri = URI.parse(top);
        let state = this.states.get(key);
        if (!state) {
            const files = new OldFiles(uri, wanted => this.history.filesOf({ top, commit: hash, files: wanted }));
            state = { files, workspace: new OldWorkspace(uri, files) };
        }
        this.states.delete(key);
        this.states.set(key, state);
        if (this.states.size > MOST_STATES) this.states.delete(this.states.keys().next().value!);
        return state;
    }

    private found(one: Asked, known: ChangesKnown): void {
        one.known = known;
        this.tell(known);
    }

    private tell(known: ChangesKnown): void {
        for (const listener of this.listeners) listener(known);
    }
}

function againstOf(wanted: Wanted): Against {
    return wanted === null ? 'last' : wanted === 'signed' ? 'signed' : 'chosen';
}

/** Rooms without a job are a house of their own, file by file. */
function houseKey({ file, layout }: RoomThere): string {
    return keyOfJob(layout.room.job) || file.uri;
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
    return a.length === b.length && a.every((each, i) => each === b[i]);
}
