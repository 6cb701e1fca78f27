import type { BoardPlan } from '../cutting/model.ts';
import type { Alternate } from '../job/alternate.ts';
import type { JobSettings, Room } from '../job/model.ts';
import type { TakeOff } from '../takeoff/model.ts';

/** Rooms that are built under the same job settings: one list for the saw, one order to the yard. */
export interface House {
    readonly job: JobSettings;
    readonly rooms: readonly RoomPieces[];
    /** Alternates of its rooms, in the order of their files. */
    readonly alternates: readonly Alternate[];
}

export interface RoomPieces {
    readonly room: Room;
    /** Undefined where the room could not be laid out. */
    readonly takeOff?: TakeOff;
    /** Errors in the room's file and in what it imports: nothing should be cut from its pieces before they are mended. */
    readonly errors: number;
}
export interface HousePlan { readonly house: House; readonly plan: BoardPlan }

export function titleOf(job: JobSettings): string {
    return job.title?.value ?? 'without a job';
}
