import type { Comparison } from '../../estimate/compare.ts';
import type { Alternate } from '../../job/alternate.ts';
import type { Priced } from '../../pipeline/price.ts';
import type { House } from '../house.ts';

/** A house with its price, and beside it the alternates that were asked for. */
export interface HousePrice {
    readonly house: House;
    readonly priced: Priced;
    readonly alternates: readonly PricedAlternate[];
}
export interface PricedAlternate {
    readonly alternate: Alternate;
    readonly priced: Priced;
    readonly comparison: Comparison;
    /** Errors that the job itself has not. */
    readonly errors: number;
}
