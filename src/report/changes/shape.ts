import type { Count, FromOne, LengthJson, MoneyJson } from '../amounts-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';
import type { Severity } from '../../findings/finding.ts';

/**
 * What `cofferwright compare --format json` prints.
 * @title Changes
 */
export interface ChangesJson {
    readonly version: 1;
    readonly kind: 'cofferwright.changes';
    readonly before: StateJson;
    readonly after: StateJson;
    /** Every statement that is in one state only, or says something else in the other. */
    readonly said: readonly SaidJson[];
    /** Rooms under the same job settings are one house. */
    readonly houses: readonly House[];
}

export interface StateJson {
    /** As it was asked for; null: the files as they lie. */
    readonly revision: string | null;
    /** The full name of the commit. */
    readonly commit: string | null;
    /** Of the commit, in its author's own time; null where it says none. */
    readonly date: string | null;
    readonly subject: string | null;
    readonly standing: StandingJson;
}

export interface SaidJson {
    /** The blocks it stands in, from the outermost, and what it says something of. */
    readonly what: readonly string[];
    readonly file: string;
    /** The file it stood in before, where that is another. */
    readonly movedFrom: string | null;
    /** Of the head of a block: what the block was called before, `room den`, where that is otherwise; null elsewhere. */
    readonly renamedFrom?: string | null;
    /** As it is written; null where it is not there. */
    readonly before: ValueJson | null;
    readonly after: ValueJson | null;
}
export interface ValueJson { readonly value: string; readonly line: FromOne }

interface House {
    readonly job: string | null;
    /** Which of the two states it is in. */
    readonly in: 'both' | 'before' | 'after';
    readonly rooms: readonly Room[];
    readonly pieces: Pieces;
    /** What was cut already. */
    readonly cut: readonly CutJson[];
    /** Whether no other use of what is cut saves more wood. */
    readonly cutProved: boolean;
    /** Boards of one stock and length, as many as are bought before and after: only what differs. */
    readonly boards: readonly Boards[];
    /** Totals of the estimates, as if nothing were cut yet; null where the house is in one state only. */
    readonly total: Totals | null;
    /** Null where the house is in one state only, or the money is another. */
    readonly price: Price | null;
    readonly findings: Findings;
}
interface Room {
    readonly name: string;
    readonly in: 'both' | 'before' | 'after';
    readonly renamedFrom: string | null;
    /** True where its ceiling is as it was: its walls, lines and coffers. */
    readonly same: boolean;
    readonly walls: readonly Wall[];
    readonly lines: readonly Line[];
    /** Null where they are as they were. */
    readonly coffers: CofferChange | null;
}
interface Wall { readonly name: string; readonly before: LengthJson | null; readonly after: LengthJson | null }
interface Line { readonly runs: 'north-south' | 'east-west'; readonly before: LineJson | null; readonly after: LineJson | null }
export interface LineJson {
    readonly name: string;
    /** Its center, from the west or the north. */
    readonly center: LengthJson;
    readonly from: string; readonly to: string;
    /** Whether its bottom runs through. */
    readonly through: boolean;
    readonly beam: string; readonly depth: LengthJson; readonly width: LengthJson;
}
interface CofferChange { readonly before: CoffersJson; readonly after: CoffersJson }
/** How many there are, and the least and the greatest size. */
export interface CoffersJson { readonly count: Count; readonly acrossNorth: readonly LengthJson[]; readonly acrossEast: readonly LengthJson[] }

/** By their names in the cut list; each piece of either state once. */
interface Pieces {
    readonly same: Count;
    /** Cut alike, at another place. */
    readonly moved: readonly PairJson[];
    /** Could be cut from the old one, if that is cut. */
    readonly from: readonly PairJson[];
    readonly fresh: readonly PieceJson[];
    readonly gone: readonly PieceJson[];
    /** Whether no other way to match them takes more wood from old pieces. */
    readonly proved: boolean;
}
export interface PairJson { readonly before: PieceJson; readonly after: PieceJson }
export interface PieceJson { readonly id: string; readonly part: string; readonly stock: string; readonly length: LengthJson }
export interface CutJson {
    /** As it was called when it was cut. */
    readonly id: string;
    readonly stock: string;
    readonly length: LengthJson;
    /** What becomes of it; `lost` is wanted nowhere, and shorter than an offcut worth keeping. */
    readonly fate: 'keep' | 'elsewhere' | 'trim' | 'rip' | 'offcut' | 'lost';
    /** The piece it becomes. */
    readonly into: string | null;
    /** What its wood cost, and what of that is saved; null where nobody says a price. */
    readonly worth: MoneyJson | null;
    readonly saved: MoneyJson | null;
}
interface Boards { readonly stock: string; readonly length: LengthJson; readonly before: Count; readonly after: Count }
interface Totals { readonly before: MoneyJson; readonly after: MoneyJson; readonly minutesBefore: number; readonly minutesAfter: number }
/** New less old, and what was cut in vain, wood and work, less what of it is saved. */
interface Price {
    readonly difference: MoneyJson;
    readonly inVain: MoneyJson;
    readonly saved: MoneyJson;
    /** Pieces that were cut in vain, and what cutting them took; null where no labor says how long cutting takes. */
    readonly workInVain?: { readonly pieces: Count; readonly minutes: number; readonly amount: MoneyJson } | null;
    readonly total: MoneyJson;
    /** The total with labor and bid as they were before; null where a rate is missing there. */
    readonly atOldRates: MoneyJson | null;
    /** What is not in it, in words. */
    readonly lacks: readonly string[];
}
interface Findings { readonly come: readonly FoundJson[]; readonly gone: readonly FoundJson[] }
export interface FoundJson { readonly rule: string; readonly severity: Severity; readonly message: string; readonly source: SourceJson }
