import type { BoardPlan } from '../cutting/model.ts';
import type { Alternate } from '../job/alternate.ts';
import type { JobSettings, Room } from '../job/model.ts';
import type { Standing } from '../pipeline/standing.ts';
import type { TakeOff } from '../takeoff/model.ts';

/** Rooms that are built under the same job settings: one list for the saw, one order to the yard. */
export interface House {
    readonly job: JobSettings;
    readonly rooms: readonly RoomPieces[];
    /** Set where the rooms were picked out of those that the job has. */
    readonly picked?: boolean;
    /** Alternates of its rooms, in the order of their files. */
    readonly alternates: readonly Alternate[];
}

export interface RoomPieces {
    readonly room: Room;
    /** Undefined where the room could not be laid out. */
    readonly takeOff?: TakeOff;
    /** What is wrong with it, and what is not computed: told at the head of all that is made from it. */
    readonly standing: Standing;
}
export interface HousePlan { readonly house: House; readonly plan: BoardPlan }

export function titleOf(job: JobSettings): string {
    return job.title?.value ?? 'without a job';
}

/** What a house is called where it stands over something: its job, and the rooms where they were picked out of it. */
export function titleOfHouse({ job, rooms, picked = false }: Pick<House, 'job' | 'picked'> & { readonly rooms: readonly { readonly room: Room }[] }): string {
    const names = rooms.map(({ room }) => room.title ?? room.name).join(', ');
    return job.title === undefined ? names || titleOf(job) : picked ? `${job.title.value}: ${names}` : job.title.value;
}

/** The same for the name of a file. */
export function fileNameOfHouse({ job, rooms, picked = false }: Pick<House, 'job' | 'picked'> & { readonly rooms: readonly { readonly room: Room }[] }): string {
    const names = rooms.map(({ room }) => room.name);
    return job.title === undefined ? names[0] ?? '' : [job.title.value, ...picked ? names : []].join(' ');
}

/** The address of the file that says which house it is: that of its job, or of its first room where there is none. */
export function addressOf({ job, rooms }: Pick<House, 'job'> & { readonly rooms: readonly { readonly room: Room }[] }): string {
    return job.at?.uri ?? rooms[0]!.room.at.uri;
}
