import type { Stock } from '../job/model.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Spare } from './spare.ts';

/** Boards to buy and what is cut from each. Lengths in ticks, money exact. */
export interface BoardPlan {
    /** One a stock, by its name. */
    readonly stocks: readonly StockPlan[];
    /** What the boards with a price cost together, one sum a currency; nothing is converted. */
    readonly costs: readonly Money[];
    /** Stocks that have to be bought at a price nobody has said. Where there is one, the sums are not the whole cost. */
    readonly unpriced: readonly Unpriced[];
    /** Pieces that come out of no board there is, with the reason. */
    readonly unplaced: readonly Unplaced[];
}
export interface Money { readonly amount: Rational; readonly currency: string }
export interface Unpriced { readonly stock: Stock; readonly length: Ticks; readonly count: number }
export interface Unplaced { readonly piece: Piece; readonly reason: string }

export interface StockPlan {
    readonly stock: Stock;
    /** Boards already cut, boards on hand, then those to buy, the longest first. */
    readonly boards: readonly Board[];
    /** Those that are cut, and the spare ones. */
    readonly buy: readonly Purchase[];
    /** What of it is bought besides what is cut, for boards that turn out unusable. */
    readonly spare?: Spare;
    readonly costs: readonly Money[];
    /** How the boards and sheets that are ripped first are ripped, those with the most boards first. */
    readonly rips: readonly Rip[];
    readonly known: Known;
    /** What was chosen between boards and set-ups, where a set-up is worth something and the two plans differ. */
    readonly choice?: Choice;
}
/** Sections of boards ripped by themselves take fewer boards and more set-ups than whole boards that are ripped. */
export interface Choice {
    readonly takes: 'sections' | 'whole boards';
    /** By how much the boards are cheaper with sections, and how many more set-ups they take; each is worth so much. */
    readonly boardsSaved: Money;
    readonly setUps: number;
    readonly each: Money;
}
/** So many boards of one length. `each` is undefined where nobody has said the price. */
export interface Purchase { readonly length: Ticks; readonly count: number; readonly each?: Money; readonly cost?: Money }

/**
 * How good a plan is known to be. What is least is the money for the boards bought plus the worth of those on hand; where
 * nobody has said a price, the length bought.
 */
export interface Known {
    /** `within`: at most `percent` above the cheapest possible. */
    readonly as: 'first plan' | 'within' | 'none cheaper';
    readonly least: 'money' | 'length';
    /** No plan is below this: in the major unit of the stock's currency, or in ticks. Undefined in a first plan. */
    readonly lowerBound?: Rational;
    /** Rounded up, so that it never promises too much; 0 where none cheaper exists. Undefined in a first plan. */
    readonly percent?: number;
    /** Which ways to cut were looked at. Undefined in a first plan, and where nothing is cut. */
    readonly model?: CuttingModel;
    /** What else the plan is held to, or reckoned by. */
    readonly under?: readonly CuttingTerm[];
}

/** `rooms apart`: rooms share no board, and boards on hand were given out first. `offcuts worth`: what offcuts are worth is taken off the cost. */
export type CuttingTerm = 'rooms apart' | 'offcuts worth';

/**
 * The ways to cut among which a plan is known to be the cheapest. `across`: boards are cut across to length. `ripped`: cut across into pieces
 * and sections, sections and whole boards ripped, strips cut across to length; `ripped whole`: no sections. `sheets`, the same of sheets, in three stages
 * or in two: `along` their grain, or laid `either way`.
 */
export type CuttingModel = 'across' | 'ripped' | 'ripped whole' | 'sheets along' | 'sheets either way' | 'sheets along in two' | 'sheets either way in two';

/** The widths that come out of a board, a section of one or a sheet side by side, the widest first, and where they are ripped so. */
export interface Rip {
    /** How long the section is that is cut off first; undefined: the whole board is ripped. */
    readonly section?: Ticks;
    readonly widths: readonly { readonly width: Ticks; readonly count: number }[];
    /** Numbers of the boards. */
    readonly boards: readonly number[];
    /** What is left beside the last strip, after its kerf. */
    readonly left: Ticks;
}

export interface Board {
    /** 1, 2, 3 ... within the stock. */
    readonly number: number;
    readonly length: Ticks;
    readonly from: BoardFrom;
    /** What a board on hand is reckoned at, where it is reckoned at all. */
    readonly worth?: Money;
    /** The name of one that was measured, and its width where that is less than its stock's. */
    readonly measured?: string; readonly width?: Ticks;
    /** One of its full width, where anything is cut from that, then those of each section or of the whole length, the widest first. */
    readonly strips: readonly Strip[];
    /** Sections that are cut off the board and then ripped, the longest first: how long each is. Undefined: it is ripped over its whole length, or not. */
    readonly sections?: readonly Ticks[];
    /** A sheet that is ripped across its length: its strips are as long as the sheet is wide. */
    readonly crosswise?: true;
}
export type BoardFrom = 'bought' | 'on hand' | 'already cut';

export interface Strip {
    /** The width it is ripped to before it is cut to length; undefined: not ripped first. */
    readonly rippedTo?: Ticks;
    /** The section that it is ripped from: 1, 2, ... within the board. */
    readonly section?: number;
    /** From the first end on. */
    readonly pieces: readonly Piece[];
    /** What is left at the far end after the last cut and the end trim. */
    readonly offcut: Ticks;
    /** The offcut is at least as long as the job's shortest worth keeping; else it is waste. */
    readonly kept: boolean;
}
