import type { LangiumDocument } from 'langium';
import * as ast from '../generated/ast.ts';
import type { Jobs } from './jobs.ts';

/** A room, and the address of its file. */
interface Placed { readonly key: string; readonly room: ast.Room }

/**
 * The rooms of all files. Pieces are named by their room, so within a house (what stands under one job) two rooms may not be
 * called alike, in whichever files they are.
 */
export class Rooms {
    private readonly files = new Map<string, readonly ast.Room[]>();
    /** The first room of a name in each file that has one. */
    private readonly byName = new Map<string, Map<string, ast.Room>>();
    /** By name and house the room in the first file, as long as neither rooms of that name nor jobs change. */
    private readonly firsts = new Map<string, { readonly jobs: number, readonly of: ReadonlyMap<string, Placed> }>();

    constructor(private readonly jobs: Jobs) {}

    /** Called whenever a document has been parsed, after the jobs know of it. */
    update(document: LangiumDocument): void {
        const file = document.parseResult.value, key = document.uri.toString();
        const rooms = ast.isFile(file) ? file.items.filter(ast.isRoom) : [];
        this.change(key, rooms);
    }

    /** Called when a document is gone. */
    remove(key: string): void {
        this.change(key, []);
    }

    /** A room of the same house in a file before this one that has the same name. */
    namesake(document: LangiumDocument, { name }: ast.Room): ast.Room | undefined {
        const own = document.uri.toString(), house = this.jobs.houseOf(own);
        if (house === undefined || !name) return undefined;
        const first = this.firstOf(name).get(house);
        return first && first.key < own ? first.room : undefined;
    }

    private firstOf(name: string): ReadonlyMap<string, Placed> {
        const known = this.firsts.get(name);
        if (known?.jobs === this.jobs.version) return known.of;
        const of = new Map<string, Placed>();
        for (const [key, room] of this.byName.get(name) ?? []) {
            const house = this.jobs.houseOf(key), before = house === undefined ? undefined : of.get(house);
            if (house !== undefined && (!before || key < before.key)) of.set(house, { key, room });
        }
        this.firsts.set(name, { jobs: this.jobs.version, of });
        return of;
    }

    /** What others are told of a room is its name and its place: the house is looked at again where either may have changed for them. */
    private change(key: string, rooms: readonly ast.Room[]): void {
        const before = this.files.get(key) ?? [];
        if (rooms.length > 0) this.files.set(key, rooms);
        else this.files.delete(key);
        for (const { name } of before) this.place(name, key, undefined);
        for (const room of rooms) this.place(room.name, key, this.byName.get(room.name)?.get(key) ?? room);
        const isElsewhere = ({ name }: ast.Room): boolean => (this.byName.get(name)?.size ?? 0) > (this.byName.get(name)?.has(key) ? 1 : 0);
        if ([...before, ...rooms].some(isElsewhere)) this.jobs.touch(key);
    }

    private place(name: string, key: string, room: ast.Room | undefined): void {
        const places = this.byName.get(name) ?? new Map<string, ast.Room>();
        if (room) places.set(key, room);
        else places.delete(key);
        if (places.size > 0) this.byName.set(name, places);
        else this.byName.delete(name);
        this.firsts.delete(name);
    }
}
