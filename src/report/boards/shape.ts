import type { BoardFrom, CuttingModel } from '../../cutting/model.ts';
import type { Sheet } from '../../job/model.ts';
import type { Known } from '../../job/status.ts';
import type { Count, FromOne, LengthJson, MoneyJson } from '../amounts-json.ts';
import type { HouseHead } from '../house-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';

// What came later than the first lists of this version is marked `?`, so that these too are as the schema says.

/**
 * What `cofferwright boards --format json` prints.
 * @title Boards to buy
 */
export interface BoardsJson {
    readonly version: 1;
    readonly kind: 'cofferwright.boards';
    readonly standing: StandingJson;
    /**
     * first: plans that can be cut as they stand; nothing proves that none is cheaper. looked closer: cheaper ones were looked for,
     * and `known` says of each what was found.
     */
    readonly plan: 'first' | 'looked closer';
    /** Rooms under the same job settings are one house. */
    readonly houses: readonly House[];
    /** What is there when all houses are cut: boards that were not needed and offcuts worth keeping. */
    readonly left?: readonly Left[];
}

interface House extends HouseHead {
    readonly kerf: LengthJson;
    readonly endTrim: LengthJson;
    /** The shortest offcut worth keeping. */
    readonly shortestOffcut?: LengthJson;
    /** Of all stocks together: the weakest of what is known of each. */
    readonly known?: KnownJson;
    readonly stocks: readonly Stock[];
    /** One sum a currency. */
    readonly costs: readonly MoneyJson[];
    /** False where boards have no price, pieces have no board or a room could not be laid out: then the sums are not the whole cost. */
    readonly complete: boolean;
    readonly unpriced: readonly { readonly stock: string; readonly length: LengthJson; readonly count: Count }[];
    readonly unplaced: readonly Unplaced[];
}

interface Unplaced {
    readonly piece: string;
    readonly stock: string;
    readonly reason: string;
    /** Where its stock is said. */
    readonly source?: SourceJson;
}

/** How good the plan is known to be: at most `percent` above the cheapest possible; null where nothing is known. */
export interface KnownJson {
    readonly as: 'first plan' | 'within' | 'none cheaper';
    readonly percent: Percent | null;
    /** The same in plain words. */
    readonly text: string;
    /** The ways to cut among which it is known; null where nothing is. */
    readonly model?: CuttingModel | null;
}
/** @minimum 0 */
type Percent = number;

/** What sections that are ripped by themselves save in boards, and how many more set-ups they take, beside whole boards that are ripped. */
interface ChoiceJson {
    readonly takes: 'sections' | 'whole boards';
    readonly boardsSaved: MoneyJson;
    readonly setUps: number;
    /** What a set-up is worth. */
    readonly each: MoneyJson;
    /** The same in plain words. */
    readonly text: string;
}

interface Stock {
    readonly stock: string;
    readonly source: SourceJson;
    /** Size of a sheet; null: boards. */
    readonly sheet?: { readonly width: LengthJson; readonly length: LengthJson; readonly grain: Sheet['grain']; readonly stages?: 2 | 3 } | null;
    readonly known?: KnownJson;
    /** What was chosen between boards and set-ups at the saw; null: nothing was. */
    readonly choice?: ChoiceJson | null;
    /** Null prices: nobody has said them. */
    readonly buy: readonly Purchase[];
    /** What is reckoned for boards that turn out unusable; null: nothing. `spare`: how many of `buy` are for that; null: none is. */
    readonly defects?: { readonly share: Percent | null; readonly spare: { readonly count: FromOne; readonly length: LengthJson } | null } | null;
    readonly costs: readonly MoneyJson[];
    /** How boards, sections of boards and sheets are ripped. */
    readonly rips?: readonly Rip[];
    readonly boards: readonly Board[];
}

interface Purchase { readonly length: LengthJson; readonly count: Count; readonly each: MoneyJson | null; readonly cost: MoneyJson | null }

interface Rip {
    /** How long the section is that is cut off first; null: the whole board is ripped. */
    readonly section?: LengthJson | null;
    readonly widths: readonly { readonly width: LengthJson; readonly count: FromOne }[];
    /** Numbers of the boards. */
    readonly boards: readonly FromOne[];
    /** What is left beside the last strip. */
    readonly left: LengthJson;
}

/** `unsaid`: nobody says how it is known. */
export interface LengthKnownJson { readonly known: Known; readonly on: string | null; readonly by: string | null }

interface Board {
    readonly number: FromOne;
    readonly length: LengthJson;
    /** Of a strip on hand, or a board that was measured and is narrower than its stock; null: as wide as its stock. */
    readonly width?: LengthJson | null;
    readonly onHand: boolean;
    readonly from?: BoardFrom;
    /** What a board on hand is reckoned at, where it is at all. */
    readonly worth?: MoneyJson | null;
    /** Of a board that was measured at the bench: its name. */
    readonly name?: string | null;
    /** How the length of a board on hand is known, when and by whom; null of any other. */
    readonly lengthKnown?: LengthKnownJson | null;
    /** A sheet that is ripped across its length. */
    readonly crosswise?: boolean;
    /** What one cut takes along the board: boards are crosscut square. */
    readonly cut: LengthJson;
    /** Sections that are cut off the board and then ripped; none where it is ripped over its whole length, or not at all. */
    readonly sections?: readonly LengthJson[];
    readonly strips: readonly Strip[];
}

interface Strip {
    /** What the lists at the saw and the labels call it: ripped ones from 1 on through all sections of the board, what is cut in its whole width last. */
    readonly number?: FromOne;
    /** The width it is ripped to before it is cut to length. */
    readonly rippedTo: LengthJson | null;
    /** The section it is ripped from: 1, 2, ... of the board's `sections`; null: it lies over the whole length. */
    readonly section?: FromOne | null;
    /** `over`: what the blank of a mitered piece is longer. */
    readonly pieces: readonly { readonly piece: string; readonly length: LengthJson; readonly over?: LengthJson }[];
    readonly offcut: LengthJson;
    /** The offcut is worth keeping. */
    readonly kept?: boolean;
}

interface Left {
    readonly stock: string;
    readonly source: SourceJson;
    /** In the full width of the stock. */
    readonly pieces: readonly LeftPiece[];
    /** Strips of boards that were ripped. */
    readonly strips: readonly LeftStrip[];
}
interface LeftPiece { readonly count: FromOne; readonly length: LengthJson; readonly worth: MoneyJson | null }
interface LeftStrip extends LeftPiece { readonly width: LengthJson }
