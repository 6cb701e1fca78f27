import type { Ceiling, Layout } from '../ceiling/model.ts';
import type { Finding } from '../findings/finding.ts';
import type { Alternate } from '../job/alternate.ts';
import type { FileContent } from '../job/file.ts';
import type { JobSettings, Room } from '../job/model.ts';
import { isWithin, placeKey } from '../provenance/source.ts';
import { knownClosely } from '../pipeline/inspect-closely.ts';
import { standingOf, type Standing } from '../pipeline/standing.ts';
import { filesBeside } from './shared/files-beside.ts';
import { inspect, takeOffOf } from '../pipeline/inspect.ts';
import type { RoomOnPage } from './page.ts';

/** The files that rooms are looked for in: the open folders of an editor, or what a command was asked about. */
export interface FilesThere {
    /** Addresses of all of them, sorted, without the built-in vocabulary. */
    all(): readonly string[];
    content(uri: string): FileContent | undefined;
    /** Addresses of what a file uses, through any chain. */
    reached(uri: string): readonly string[];
}

/** A room that stands in a text, laid out or not. */
export interface RoomThere { readonly file: FileContent; readonly layout: Layout }

/** What a host knows beside the texts. */
export interface Ways {
    /** What is known of a house's boards, where somebody looks for cheaper ones. */
    readonly boardsOf?: (house: readonly RoomOnPage[]) => RoomOnPage['boards'];
    /** Other grids for a room, as far as somebody has looked for them. */
    readonly otherGridsOf?: (room: RoomOnPage) => RoomOnPage['otherGrids'];
    /** How a room is put up, as far as somebody has worked it out. */
    readonly orderOf?: (room: RoomOnPage) => RoomOnPage['order'];
    /** What the dry fit finds in a file; what is known of it already where nothing is said. */
    readonly closely?: (file: FileContent) => readonly Finding[];
    /** What files are called; by their way from the room's own where nothing is said. */
    readonly nameOf?: (uri: string) => string;
    /** Only these rooms; the houses of pages have no others. */
    readonly isWanted?: (room: Room) => boolean;
}

/** Rooms as pages want them. */
export class RoomsOnPages {
    constructor(readonly files: FilesThere, private readonly ways: Ways = {}) {}

    /** Of one file, in the order of the text. */
    in(uri: string): readonly RoomThere[] {
        const file = this.files.content(uri);
        return file ? inspect(file).layouts.filter(({ room }) => this.ways.isWanted?.(room) ?? true).map(layout => ({ file, layout })) : [];
    }

    /** Every room there is. */
    all(): readonly RoomThere[] {
        return this.files.all().flatMap(uri => this.in(uri));
    }

    /** A room with all that pages take from it, or undefined where it is not laid out. */
    onPage({ file, layout }: RoomThere): RoomOnPage | undefined {
        const { ceiling } = layout;
        return ceiling && !layout.room.broken ? new KnownRoom(this, file, layout, ceiling, this.ways) : undefined;
    }

    /** What was found in a file and in those it uses, its own first. */
    findingsBehind(uri: string): readonly Finding[] {
        return [uri, ...this.files.reached(uri)].flatMap(file => {
            const content = this.files.content(file);
            return content ? inspect(content).findings : [];
        });
    }

    /** What has to be said with a room. */
    standing(room: Room, uri: string): Standing {
        const { closely = knownClosely, nameOf = filesBeside(uri).nameOf } = this.ways;
        const behind = [uri, ...this.files.reached(uri)].flatMap(file => this.files.content(file) ?? []), own = this.files.content(uri);
        const alternates = behind.flatMap(content => content.alternates);
        return standingOf(
            room, [...behind.flatMap(content => inspect(content).findings), ...own ? closely(own) : []],
            ({ at }) => alternates.some(({ whole }) => isWithin(at, whole)), nameOf,
        );
    }

    /** The laid out rooms under a job. */
    house(job: JobSettings): readonly RoomOnPage[] {
        const key = keyOfJob(job);
        return this.all().filter(({ layout }) => keyOfJob(layout.room.job) === key).flatMap(there => this.onPage(there) ?? []);
    }

    /** Alternates of the rooms under a job; only those that change a room that is wanted. */
    alternates(job: JobSettings): readonly Alternate[] {
        const key = keyOfJob(job);
        return this.files.all().flatMap(uri =>
            this.files.content(uri)?.alternates.filter(({ rooms: [first] }) => first && keyOfJob(first.instead.job) === key) ?? [])
            .filter(({ rooms }) => !this.ways.isWanted || rooms.some(({ instead }) => this.ways.isWanted!(instead)));
    }
}

/** Rooms without a job are under the same one: none. */
export function keyOfJob({ at }: JobSettings): string {
    return at ? placeKey(at) : '';
}

/** What takes long is made when it is asked for. */
class KnownRoom implements RoomOnPage {
    private rooms: readonly RoomOnPage[] | undefined;

    constructor(
        private readonly from: RoomsOnPages, readonly file: FileContent, readonly layout: Layout, readonly ceiling: Ceiling, private readonly ways: Ways,
    ) {}

    get takeOff(): RoomOnPage['takeOff'] {
        return takeOffOf(this.ceiling);
    }

    get findings(): readonly Finding[] {
        return this.known ??= this.from.findingsBehind(this.file.uri);
    }
    private known: readonly Finding[] | undefined;

    get standing(): Standing {
        return this.stands ??= this.from.standing(this.layout.room, this.file.uri);
    }
    private stands: Standing | undefined;

    get alternates(): readonly Alternate[] {
        return this.from.alternates(this.layout.room.job);
    }

    get house(): readonly RoomOnPage[] {
        return this.rooms ??= this.from.house(this.layout.room.job);
    }

    get picked(): boolean {
        return this.ways.isWanted !== undefined;
    }

    get looksClosely(): boolean {
        return this.ways.closely !== undefined;
    }

    get otherGrids(): RoomOnPage['otherGrids'] {
        return this.ways.otherGridsOf?.(this);
    }

    get order(): RoomOnPage['order'] {
        return this.ways.orderOf?.(this);
    }

    get boards(): RoomOnPage['boards'] {
        return this.ways.boardsOf?.(this.house);
    }
}
