import type { Count, FromOne, LengthJson, MoneyJson } from '../amounts-json.ts';
import type { HouseHead } from '../house-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright order --format json` prints.
 * @title Boards to order
 */
export interface OrderJson {
    readonly version: 1;
    readonly kind: 'cofferwright.order';
    readonly standing: StandingJson;
    /** The houses that the order is for. */
    readonly houses: readonly House[];
    /** One for each supplier; null: nobody has said who sells it. */
    readonly orders: readonly Order[];
}

interface House extends HouseHead {
    /** Pieces that no board holds. */
    readonly unplaced: Count;
}

interface Order {
    readonly supplier: string | null;
    /** The longest lead of its stocks, in working days. */
    readonly leadDays: Count | null;
    readonly boardFeet: BoardFeetJson | null;
    /** One sum a currency. */
    readonly costs: readonly MoneyJson[];
    /** Every line has a price. */
    readonly complete: boolean;
    readonly lines: readonly Line[];
}

interface Line {
    readonly stock: string;
    readonly source: SourceJson;
    /** Nominal size. */
    readonly size: string | null;
    readonly species: string | null;
    readonly comes: 'raw' | 'primed' | 'finished' | null;
    readonly leadDays: Count | null;
    readonly sheet: { readonly width: LengthJson; readonly length: LengthJson } | null;
    readonly length: LengthJson;
    readonly count: FromOne;
    /** How many of them are bought besides those that are cut, for boards that turn out unusable. */
    readonly spare?: Count;
    readonly boardFeet: BoardFeetJson | null;
    readonly each: MoneyJson | null;
    readonly cost: MoneyJson | null;
    /** Titles of the jobs it is for. */
    readonly houses: readonly string[];
}

/** Board measure on the nominal size, what is thinner than an inch counted as an inch. */
export interface BoardFeetJson {
    /**
     * To a hundredth.
     * @pattern ^\d+(\.\d+)?$
     */
    readonly amount: string;
    /** @pattern ^\d+(/\d+)?$ */
    readonly exact: string;
}
