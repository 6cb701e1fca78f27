import type { LangiumDocument } from 'langium';
import * as ast from '../generated/ast.ts';
import type { Jobs } from './jobs.ts';

/**
 * The rooms of all files. Pieces are named by their room, so within a house (what stands under one job) two rooms may not be
 * called alike, in whichever files they are.
 */
export class Rooms {
    private readonly jobs: Jobs;
    private readonly files = new Map<string, readonly ast.Room[]>();

    constructor(jobs: Jobs) {
        this.jobs = jobs;
    }

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
        const before = [...this.files].filter(([key]) => key < own && this.jobs.houseOf(key) === house).sort(([a], [b]) => (a < b ? -1 : 1));
        return before.flatMap(([, rooms]) => rooms).find(room => room.name === name);
    }

    /** What others are told of a room is its name and its place: the house is looked at again where either may have changed for them. */
    private change(key: string, rooms: readonly ast.Room[]): void {
        const before = this.files.get(key) ?? [];
        if (rooms.length > 0) this.files.set(key, rooms);
        else this.files.delete(key);
        const names = (list: readonly ast.Room[]): ReadonlySet<string> => new Set(list.map(room => room.name));
        const mine = names([...before, ...rooms]);
        if ([...this.files].some(([other, theirs]) => other !== key && theirs.some(room => mine.has(room.name)))) this.jobs.touch(key);
    }
}
