import { sawOrder, type SawOrder } from '../../sawing/index.ts';
import type { House, HousePlan } from '../house.ts';

export interface HouseSaw { readonly house: House; readonly order: SawOrder }

export function sawOf({ house, plan }: HousePlan): HouseSaw {
    return { house, order: sawOrder(plan, house.job) };
}
