import type { Money } from '../cutting/model.ts';
import type { Change, Comparison } from '../estimate/compare.ts';
import type { Finding } from '../findings/finding.ts';
import type { Direction, JobSettings, Room, Stock } from '../job/model.ts';
import type { Statement } from '../job/statement.ts';
import type { Priced } from '../pipeline/price.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';

/**
 * What changed between two states of a house, in four layers, each of which follows from the one before: what was said, the ceiling, the pieces, and
 * what it all costs. Where a room is in one state only, the other side is undefined.
 */
export interface Changes {
    readonly said: readonly SaidChange[];
    readonly houses: readonly HouseChange[];
}

/** A state of all houses that are looked at. */
export interface State {
    /** What every file says, by its name as it is told. */
    readonly files: readonly StatedFile[];
    readonly houses: readonly HouseThere[];
}
/** `isTable`: a table that job files name, row by row. */
export interface StatedFile { readonly name: string; readonly statements: readonly Statement[]; readonly isTable?: true }
export interface HouseThere {
    readonly job: JobSettings;
    readonly rooms: readonly RoomThere[];
    /** As if nothing were cut yet. */
    readonly priced: Priced;
    readonly findings: readonly Finding[];
}
/** `takeOff`: undefined where it could not be laid out. */
export interface RoomThere { readonly room: Room; readonly takeOff?: TakeOff }

/** One statement that is there in one state only, or says something else in the other. */
export interface SaidChange {
    readonly file: string;
    /** The file it stood in, where that is another. */
    readonly movedFrom?: string;
    /** Of a block's head: what the block was called, where that is otherwise: `room den`. */
    readonly renamedFrom?: string;
    /** `room dining › grid › coffers-north`. */
    readonly what: readonly string[];
    readonly before?: Statement;
    readonly after?: Statement;
}

export interface HouseChange {
    readonly before?: HouseThere;
    readonly after?: HouseThere;
    readonly rooms: readonly RoomChange[];
    readonly pieces: PieceChanges;
    /** Boards, pieces, hours, money; undefined where the house is in one state only. */
    readonly comparison?: Comparison;
    readonly cut: CutChange;
    readonly price?: ChangePrice;
    readonly findings: { readonly come: readonly Finding[]; readonly gone: readonly Finding[] };
}

/** A room in both states, or in one. Nothing but its names where nothing of the ceiling changed. */
export interface RoomChange {
    readonly before?: RoomThere; readonly after?: RoomThere;
    readonly name: string;
    readonly renamedFrom?: string;
    readonly walls: readonly ({ readonly wall: string } & Partial<Change<Ticks>>)[];
    readonly lines: readonly LineChange[];
    /** How many there are, and the least and greatest size either way; undefined where both are as they were. */
    readonly coffers?: Change<Coffers>;
    readonly isSame: boolean;
}
export interface Coffers { readonly count: number; readonly acrossNorth: readonly [Ticks, Ticks]; readonly acrossEast: readonly [Ticks, Ticks] }

/** A line of either state, matched by where it runs and not by its name. */
export interface LineChange {
    readonly runs: Direction;
    readonly before?: LineThere; readonly after?: LineThere;
    /** How far its center has moved to the east or south. */
    readonly moved: Ticks;
}
export interface LineThere {
    readonly name: string; readonly center: Ticks; readonly from: string; readonly to: string; readonly through: boolean;
    /** What its beam is made by, how deep and how wide it is, outside. */
    readonly beam: string; readonly depth: Ticks; readonly width: Ticks;
}

/** Every piece of both states once. */
export interface PieceChanges {
    readonly same: readonly Pair[];
    /** Cut alike, at another place. */
    readonly moved: readonly Pair[];
    /** Could be cut from the old one, if that is cut already. */
    readonly from: readonly Pair[];
    readonly fresh: readonly Piece[];
    readonly gone: readonly Piece[];
    /** Whether no other way to match them takes more wood from old pieces. */
    readonly proved: boolean;
    /** By which boards were told to be the same. */
    readonly renamed: StockNames;
}
/** What boards of the state after were called before; a name that is in both states is the same. */
export interface StockNames { stockBefore(name: string): string }
export interface Pair { readonly before: Piece; readonly after: Piece }

/** What was cut before the change, and what becomes of it. */
export interface CutChange { readonly wood: readonly CutWood[]; readonly proved: boolean }
export interface CutWood {
    /** As it was called: `side-A-1-north`. */
    readonly name: string;
    readonly room: string;
    readonly stock: Stock;
    readonly length: Ticks;
    /** What becomes of it; `lost` is too short to be kept. */
    readonly fate: 'keep' | 'elsewhere' | 'trim' | 'rip' | 'offcut' | 'lost';
    /** The piece that it becomes. */
    readonly into?: Piece;
    /** What its wood cost, and what of that is saved, to the cent; undefined where nobody says a price. */
    readonly worth?: Money; readonly saved?: Money;
}

/** Exact. */
export interface WorkInVain { readonly pieces: number; readonly minutes: Rational; readonly amount: Rational }

/** Money exact, in the house's currency. */
export interface ChangePrice {
    readonly currency: string;
    /** The totals, new less old. */
    readonly difference: Rational;
    /** The same with the rates of the state before: what the change costs as the work was bid. Undefined where a rate is missing there. */
    readonly atOldRates?: Rational;
    /** Wood that was cut in vain, and what of it is saved: both at least nothing. */
    readonly inVain: Rational; readonly saved: Rational;
    /** Pieces that were cut in vain, and the hours that took: of those whose labor says how long cutting takes. */
    readonly workInVain?: WorkInVain;
    /** Difference, and what was in vain, wood and work, less what is saved. */
    readonly total: Rational;
    /** Why it is not the whole of it, in words. */
    readonly lacks: readonly string[];
}
