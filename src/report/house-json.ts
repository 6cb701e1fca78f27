import type { Count } from './amounts-json.ts';
import type { JobSettings } from '../job/model.ts';
import type { House, RoomPieces } from './house.ts';
import type { Files } from './look.ts';
import { sourceJson, type SourceJson } from './place-json.ts';

/** A room of a house whose boards are told together. */
export interface HouseRoom { readonly name: string; readonly laidOut: boolean; readonly errors: Count }

/** What each house begins with. */
export interface HouseHead { readonly job: string | null; readonly rooms: readonly HouseRoom[] }

export function houseHead({ job, rooms }: Pick<House, 'job' | 'rooms'>): HouseHead {
    return {
        job: jobJson(job),
        rooms: rooms.map(({ room, takeOff, standing }) => ({ name: room.name, laidOut: takeOff !== undefined, errors: standing.errors.length })),
    };
}

export function jobJson({ title }: JobSettings): string | null {
    return title?.value ?? null;
}

/** What each room begins with, where rooms stand by themselves. */
export interface RoomHead {
    readonly name: string;
    readonly title: string | null;
    readonly job: string | null;
    readonly source: SourceJson;
    /** False where the room could not be laid out: nothing follows of it then. */
    readonly laidOut: boolean;
    /** Errors in the room's file and in what it imports: nothing should be cut before they are fixed. */
    readonly errors: Count;
}

export function roomHead({ room, standing }: Pick<RoomPieces, 'room' | 'standing'>, laidOut: boolean, job: JobSettings, files: Files): RoomHead {
    return { name: room.name, title: room.title ?? null, job: jobJson(job), source: sourceJson(room.at, files), laidOut, errors: standing.errors.length };
}
