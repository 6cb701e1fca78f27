import type { Finding } from '../findings/finding.ts';
import type { Source } from '../provenance/source.ts';
import type { Room } from './model.ts';

/** The same house with something otherwise: priced and drawn beside it. */
export interface Alternate {
    readonly name: string;
    readonly title?: string;
    readonly at: Source;
    /** Its whole declaration. */
    readonly whole: Source;
    readonly rooms: readonly ChangedRoom[];
}
export interface ChangedRoom {
    /** The room as the job has it. */
    readonly instead: Room;
    readonly room: Room;
    /** What reading it found that the room itself has not. */
    readonly findings: readonly Finding[];
}
