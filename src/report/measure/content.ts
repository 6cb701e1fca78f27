import type { Room } from '../../job/model.ts';
import type { Status } from '../../job/status.ts';
import { isAsked, leastStatus } from '../../measure/dimensions.ts';
import { readingsOffSquare } from '../../measure/off-square.ts';
import { suspectsOf, type Suspect } from '../../measure/misread.ts';
import { walkRound, type Stop } from '../../measure/walk.ts';

/** How the dimensions of a room are known, in the order in which one walks round it. */
export interface RoomMeasures {
    readonly stops: readonly Stop[];
    /** How well they have to be known before anything is cut, and whether the room is asked for it. */
    readonly least: Status; readonly isAsked: boolean;
    /** What nobody says at all, and what follows from it, in sentences. */
    readonly unsaid: readonly string[];
    /** Where the tape does not close: single readings that would explain it, the likeliest first. */
    readonly suspects: readonly Suspect[];
    /** Readings but for which, one at a time, the room would be square. */
    readonly offSquare: readonly Suspect[];
}

export function measureContent(room: Room): RoomMeasures {
    const { height, joists, survey } = room;
    return {
        stops: walkRound(room), least: leastStatus(room), isAsked: isAsked(room), suspects: suspectsOf(room), offSquare: readingsOffSquare(room),
        unsaid: [
            ...height ? [] : ['The height of the ceiling: headroom under the beams, and what stands on the floor and reaches up (`ceiling { height }`).'],
            ...joists ? [] : ['The joists, their size, spacing and the center of the first: what the screws find (`ceiling { joists }`).'],
            ...survey ? [] : ['How level the ceiling is, at every crossing and every 4\' of line: what is scribed, and whether the trim covers (`survey`).'],
        ],
    };
}
