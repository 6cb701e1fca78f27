import { distance } from '../plane/point.ts';
import { Rational } from '../quantity/rational.ts';
import { TICKS_PER_FOOT } from '../quantity/ticks.ts';
import type { Hours } from './hours.ts';
import type { PutUp, Step } from './model.ts';

/** When a step is done: from which day to which, counted from 1, and by which crew. */
export interface Shift { readonly first: number; readonly last: number; readonly crew: number }

/** Nearer than this two crews are in each other's way. Common practice, no source. */
const ELBOW = 4 * TICKS_PER_FOOT;
const ZERO = new Rational(0);

/**
 * The days of every step, for so many crews that share the people equally: whoever is free takes the first step whose pieces have all before them
 * that they need, that is not said to wait for a later day, and that is not where another crew works. Without a break: a step goes on the next
 * morning where the day is over. Nothing where it is not known how many people work.
 */
export function calendarOf({ steps, before }: Pick<PutUp, 'steps' | 'before'>, { layout, steps: minutes, crew }: Hours, crews: number): ReadonlyMap<number, Shift> {
    const shifts = new Map<number, Shift>();
    if (!crew) return shifts;
    const { people, day } = crew, count = Math.max(1, Math.min(crews, people)), pace = new Rational(people).div(count);
    const waits = waitsOf(steps, before), ends = new Map<number, Rational>();
    const free = Array.from({ length: count }, () => layout.div(people));
    const busy: (Step | undefined)[] = free.map(() => undefined);
    const left = [...steps];
    while (left.length > 0) {
        const own = free.reduce((best, at, i) => (at.compare(free[best]!) < 0 ? i : best), 0), now = free[own]!;
        busy[own] = undefined;
        const others = busy.filter((other, i) => other && i !== own && free[i]!.compare(now) > 0) as Step[];
        const i = left.findIndex(step => isReady(step, now, { waits, ends, day }) && others.every(other => distance(other.at, step.at) >= ELBOW));
        if (i < 0) {
            free[own] = nextChange(now, left, [...ends.values()], day);
            continue;
        }
        const [step] = left.splice(i, 1), end = now.add((minutes.get(step!.number) ?? ZERO).div(pace));
        free[own] = end;
        busy[own] = step;
        ends.set(step!.number, end);
        const last = Math.max(1, end.div(day).ceil().valueOf());
        shifts.set(step!.number, { first: Math.min(last, now.div(day).floor().valueOf() + 1), last, crew: own + 1 });
    }
    return shifts;
}

/** The steps that each has to wait for. */
function waitsOf(steps: readonly Step[], before: PutUp['before']): ReadonlyMap<number, ReadonlySet<number>> {
    const stepOf = new Map(steps.flatMap(({ number, placings }) => placings.map(({ piece }) => [piece.id, number] as const)));
    const waits = new Map<number, Set<number>>(steps.map(({ number }) => [number, new Set()]));
    // what stands for many pieces waits for all of theirs
    const knots = new Map<string, Set<number>>();
    for (const { first, then } of before) {
        const from = stepOf.get(first);
        if (!stepOf.has(then) && from !== undefined) knots.set(then, (knots.get(then) ?? new Set()).add(from));
    }
    for (const { first, then } of before) {
        const to = stepOf.get(then);
        if (to === undefined) continue;
        for (const from of stepOf.has(first) ? [stepOf.get(first)!] : knots.get(first) ?? []) if (from !== to) waits.get(to)!.add(from);
    }
    return waits;
}

interface Known { readonly waits: ReadonlyMap<number, ReadonlySet<number>>; readonly ends: ReadonlyMap<number, Rational>; readonly day: Rational }

function isReady({ number, notBefore }: Step, now: Rational, { waits, ends, day }: Known): boolean {
    if (notBefore !== null && now.compare(day.mul(notBefore - 1)) < 0) return false;
    return [...waits.get(number)!].every(other => { const end = ends.get(other); return end !== undefined && end.compare(now) <= 0; });
}

/** When something is done, or a day begins that somebody waits for. */
function nextChange(now: Rational, left: readonly Step[], ends: readonly Rational[], day: Rational): Rational {
    const later = [...ends, ...left.flatMap(({ notBefore }) => (notBefore === null ? [] : [day.mul(notBefore - 1)]))].filter(at => at.compare(now) > 0);
    return later.length > 0 ? later.reduce((least, at) => (at.compare(least) < 0 ? at : least)) : now.add(day);
}
