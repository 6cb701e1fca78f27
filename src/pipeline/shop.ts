import { apartOf, type Shop } from '../cutting/shop.ts';
import type { JobSettings, Room } from '../job/model.ts';
import { sawOrder } from '../sawing/saw-order.ts';

/** How a house's boards are cut: which rooms share none, and what a set-up at the saw is worth by the rates of the first room that says it. */
export function shopOf(rooms: readonly Room[], job: JobSettings): Shop {
    const timed = rooms.map(({ rates: { labor } }) => ({ minutes: labor.byCount['set-up'], rate: labor.rate })).find(({ minutes, rate }) => minutes && rate);
    const apart = apartOf(rooms);
    if (!timed?.minutes || !timed.rate) return { apart };
    const { amount, currency } = timed.rate.value;
    return { apart, setUps: { each: { amount: timed.minutes.value.div(60).mul(amount), currency }, count: plan => sawOrder(plan, job).setUps.total } };
}
