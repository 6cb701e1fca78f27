import type { Priced, PricedAlternate } from '../../pipeline/price.ts';
import type { House } from '../house.ts';

/** A house with its price, and beside it the alternates that were asked for. */
export interface HousePrice {
    readonly house: House;
    readonly priced: Priced;
    readonly alternates: readonly PricedAlternate[];
}
