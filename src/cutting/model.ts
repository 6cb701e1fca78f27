import type { Stock } from '../job/model.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';

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
    /** Boards on hand first, then those to buy, the longest first. */
    readonly boards: readonly Board[];
    readonly buy: readonly Purchase[];
    readonly costs: readonly Money[];
}
/** So many boards of one length. `each` is undefined where nobody has said the price. */
export interface Purchase { readonly length: Ticks; readonly count: number; readonly each?: Money; readonly cost?: Money }

export interface Board {
    /** 1, 2, 3 ... within the stock. */
    readonly number: number;
    readonly length: Ticks;
    readonly onHand: boolean;
    /** What one cut takes, measured along the board: more than the kerf where pieces are mitered. */
    readonly cut: Ticks;
    /** A board that is ripped first has as many strips as fit side by side; any other has one, of its full width. */
    readonly strips: readonly Strip[];
}
export interface Strip {
    /** The width it is ripped to before it is cut to length; undefined: not ripped first. */
    readonly rippedTo?: Ticks;
    /** From the first end on. */
    readonly pieces: readonly Piece[];
    /** What is left at the far end after the last cut and the end trim. */
    readonly offcut: Ticks;
}
