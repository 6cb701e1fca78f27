import { Rational } from '../quantity/rational.ts';
import type { Calendar, Span } from './calendar.ts';
import type { Hours } from './hours.ts';

/** What is done on a day. */
export interface DayLoad {
    /** From 1. */
    readonly day: number;
    /** Minutes of one person, setting out, filling and sanding too: of a step that goes on the next day what is done of it on this one. */
    readonly minutes: Rational;
    /** Steps that something is done of, by their numbers, in the order in which they are begun. */
    readonly steps: readonly number[];
    readonly hasLayout: boolean; readonly hasFinish: boolean;
}

/** The days on which something is done. Their minutes together are all hours. */
export function dayLoads({ shifts, layout, finish }: Calendar, hours: Hours): DayLoad[] {
    if (!hours.crew || !layout || !finish) return [];
    const { day } = hours.crew, zero = new Rational(0);
    const begun = [...shifts].sort(([a, one], [b, other]) => one.from.compare(other.from) || a - b);
    const work = [
        { step: 'layout', span: layout, minutes: hours.layout } as const,
        ...begun.map(([step, span]) => ({ step, span, minutes: hours.steps.get(step) ?? zero })),
        { step: 'finish', span: finish, minutes: hours.finish } as const,
    ];
    const loads = new Map<number, { minutes: Rational; readonly of: (number | 'layout' | 'finish')[] }>();
    for (const { step, span, minutes } of work) for (const { on, share } of sharesOf(span, day)) {
        const load = loads.get(on) ?? { minutes: zero, of: [] };
        load.minutes = load.minutes.add(minutes.mul(share));
        if (typeof step === 'number' || minutes.compare(zero) > 0) load.of.push(step);
        loads.set(on, load);
    }
    return [...loads].filter(([, { of }]) => of.length > 0).sort(([a], [b]) => a - b).map(([on, { minutes, of }]) => ({
        day: on, minutes, steps: of.filter(step => typeof step === 'number'), hasLayout: of.includes('layout'), hasFinish: of.includes('finish'),
    }));
}

/** How much of what takes from one minute to another falls on which day. What takes no time is on the day on which it ends, as its shift has it. */
function sharesOf({ from, to }: Span, day: Rational): { readonly on: number; readonly share: Rational }[] {
    const long = to.sub(from), first = Math.floor(from.div(day).valueOf()), last = Math.max(1, to.div(day).ceil().valueOf()) - 1;
    if (last <= first) return [{ on: last + 1, share: new Rational(1) }];
    return Array.from({ length: last - first + 1 }, (_, i) => {
        const start = day.mul(first + i), end = start.add(day), begins = start.compare(from) > 0 ? start : from, ends = end.compare(to) < 0 ? end : to;
        return { on: first + i + 1, share: ends.sub(begins).div(long) };
    });
}
