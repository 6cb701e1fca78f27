import type { AfterCutting } from '../../cutting/after-cutting.ts';
import type { Priced, PricedAlternate } from '../../pipeline/price.ts';
import type { House } from '../house.ts';

/** A house with its price, and beside it the alternates that were asked for. */
export interface HousePrice {
    readonly house: House;
    readonly priced: Priced;
    readonly alternates: readonly PricedAlternate[];
    /** What is bought where something is cut or spoiled already, which the price does not hold. */
    readonly after?: AfterCutting;
}
