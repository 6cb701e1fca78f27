import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Corner } from './compass.ts';
import type { Recorded } from './status.ts';

/** Readings from a level line up to the ceiling, with how they are known, where a reading does not say it of itself. */
export interface Survey extends Recorded {
    /** Its word in the room. */
    readonly at: Source;
    readonly method?: Given<string>;
    readonly points: readonly SurveyPoint[];
    /** Not all of the file that it names could be read, which is told there. */
    readonly lacks: boolean;
    /** How the sides are hung: level, at a reading or where it suits the readings; or following the ceiling, out of level by `fall` over `over` at most. */
    readonly plane: Given<'level' | 'following'> & { readonly reading?: Given<Ticks>; readonly fall: Given<Ticks>; readonly over: Given<Ticks> };
    /** The deepest that a side is scribed to the ceiling. */
    readonly scribe: Given<Ticks>;
}
/** A place, east and south of the north-west corner of the box round the room, and the reading there; `at`: its words. */
export interface SurveyPoint {
    readonly x: Ticks; readonly y: Ticks; readonly up: Ticks; readonly at: Source;
    /** How it is known, where that is said of it alone. */
    readonly known?: Recorded;
    /** Of a reading that stands in a file: which of its rows, and the corner that its place is measured from, along the walls. */
    readonly inFile?: { readonly name: string; readonly row: number; readonly from: Corner };
}
