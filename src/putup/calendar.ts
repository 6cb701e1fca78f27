import { distance, type Point } from '../plane/point.ts';
import { Rational } from '../quantity/rational.ts';
import type { RoomBefore } from '../job/model.ts';
import { TICKS_PER_FOOT } from '../quantity/ticks.ts';
import type { Hours } from './hours.ts';
import type { PutUp, Step } from './model.ts';
import type { Held } from './said.ts';
import { waitsOf } from './steps-of-pieces.ts';

/** Minutes of work since the first morning. */
export interface Span { readonly from: Rational; readonly to: Rational }
/** When a step is done: from which day to which, counted from 1, and by which crew. */
export interface Shift extends Span { readonly first: number; readonly last: number; readonly crew: number }

/** Nearer than this two crews are in each other's way. Common practice, no source. */
const ELBOW = 4 * TICKS_PER_FOOT;
const ZERO = new Rational(0);

/** `done`: the day on which all is up, filled and sanded; null where that is not known, as when all set out, and when they fill and sand. */
export interface Calendar {
    readonly shifts: ReadonlyMap<number, Shift>; readonly done: number | null;
    readonly layout: Span | null; readonly finish: Span | null;
}

/** The day on which another room is done; undefined: nobody knows, and it is not waited for. */
type RoomDone = (room: RoomBefore) => number | undefined;

/**
 * The days of every step, for so many crews that share the people equally. One crew takes the steps as they come. Of several, whoever is free takes the
 * nearest step of the kind of the first whose pieces have all before them that they need and that they keep in turn with (see in-turn.ts), that is not
 * said to wait for a later day, and that is not where another crew works. Without a break: a step goes on the next morning where the day is over.
 * Nothing where it is not known how many people work.
 */
export function calendarOf(
    { steps, before, inTurn, begin }: Pick<PutUp, 'steps' | 'before' | 'inTurn' | 'begin'>, { layout, steps: minutes, finish, crew }: Hours, crews: number,
    roomDone: RoomDone = () => undefined,
): Calendar {
    const shifts = new Map<number, Shift>();
    if (!crew) return { shifts, done: null, layout: null, finish: null };
    const { people, day } = crew, count = Math.max(1, Math.min(crews, people)), pace = new Rational(people).div(count);
    const waits = waitsOf({ steps, before, inTurn }), ends = new Map<number, Rational>();
    const dayOf = ({ notBefore, waits: others }: Held): number => Math.max(notBefore ?? 1, ...others.map(wait => (wait.kind === 'room' ? (roomDone(wait.room.value) ?? 0) + 1 : 1)));
    const morning = (held: Held): Rational => day.mul(dayOf(held) - 1), mornings = new Map(steps.map(step => [step.number, morning(step)]));
    const begun = morning(begin), start = begun.add(layout.div(people)), free = Array.from({ length: count }, () => start);
    const busy: (Step | undefined)[] = free.map(() => undefined), at: (Point | undefined)[] = free.map(() => undefined);
    const left = [...steps];
    while (left.length > 0) {
        const own = free.reduce((best, at, i) => (at.compare(free[best]!) < 0 ? i : best), 0), now = free[own]!;
        busy[own] = undefined;
        const others = busy.filter((other, i) => other && i !== own && free[i]!.compare(now) > 0) as Step[];
        const isFree = (step: Step): boolean => isReady(step, now, { waits, ends, mornings }) && others.every(other => distance(other.at, step.at) >= ELBOW);
        const i = count === 1 ? isFree(left[0]!) ? 0 : -1 : nearestOf(left, isFree, at[own]);
        if (i < 0) {
            free[own] = nextChange(now, left, [...ends.values()], { mornings });
            continue;
        }
        const [step] = left.splice(i, 1), end = now.add((minutes.get(step!.number) ?? ZERO).div(pace));
        free[own] = end;
        busy[own] = step;
        at[own] = step!.at;
        ends.set(step!.number, end);
        const last = lastDay(end, day);
        shifts.set(step!.number, { first: Math.min(last, now.div(day).floor().valueOf() + 1), last, crew: own + 1, from: now, to: end });
    }
    const up = [...ends.values()].reduce((latest, end) => (end.compare(latest) > 0 ? end : latest), start);
    const all = up.add(finish.div(people));
    return { shifts, done: lastDay(all, day), layout: { from: begun, to: start }, finish: { from: up, to: all } };
}

/** Of the steps that can be done now those of the kind of the first; of these the one nearest to where the crew's ladder stands. -1 where there is none. */
function nearestOf(left: readonly Step[], isFree: (step: Step) => boolean, ladder: Point | undefined): number {
    const first = left.findIndex(isFree), kind = left[first]?.kind;
    if (!ladder || first < 0) return first;
    let best = first, least = distance(ladder, left[first]!.at);
    left.forEach((step, i) => {
        if (i <= first || step.kind !== kind || step.notBefore !== left[first]!.notBefore || distance(ladder, step.at) >= least || !isFree(step)) return;
        best = i;
        least = distance(ladder, step.at);
    });
    return best;
}

/** The day on which something ends. */
function lastDay(end: Rational, day: Rational): number {
    return Math.max(1, end.div(day).ceil().valueOf());
}

interface Known {
    readonly waits: ReadonlyMap<number, ReadonlySet<number>>; readonly ends: ReadonlyMap<number, Rational>;
    /** When the day begins on which each step may be done. */
    readonly mornings: ReadonlyMap<number, Rational>;
}

function isReady({ number }: Step, now: Rational, { waits, ends, mornings }: Known): boolean {
    if (now.compare(mornings.get(number)!) < 0) return false;
    return [...waits.get(number)!].every(other => { const end = ends.get(other); return end !== undefined && end.compare(now) <= 0; });
}

/** When something is done, or a day begins that somebody waits for. */
function nextChange(now: Rational, left: readonly Step[], ends: readonly Rational[], { mornings }: Pick<Known, 'mornings'>): Rational {
    const later = [...ends, ...left.map(({ number }) => mornings.get(number)!)].filter(at => at.compare(now) > 0);
    if (later.length > 0) return later.reduce((least, at) => (at.compare(least) < 0 ? at : least));
    // nothing is under way, and nobody waits for a day: the order is not one that can be worked in
    throw new Error(`Steps wait for each other: ${left.map(({ number }) => number).join(', ')}.`);
}
