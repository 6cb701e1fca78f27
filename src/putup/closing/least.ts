import { compareEach } from '../../plain/order.ts';
import { lineByLine } from './line-by-line.ts';
import { tallyOf, type Tally } from './tally.ts';
import { judge, type Judged, type Throughs, type Web, type Which } from './web.ts';

/** A choice of what runs through at every meeting that leaves fewest closing pieces, and can be put up. */
interface Least {
    readonly throughs: readonly Which[];
    readonly closing: number;
    /** None has fewer than this; as many as `closing` where it is proved. */
    readonly atLeast: number;
    readonly proved: boolean;
}

/**
 * The choice, meeting by meeting, that leaves fewest closing pieces, among those that have a first piece; of several one that turns few meetings.
 * Undefined where there is none. At tees the bar or the stem runs through as it is said, unless `tees` are free.
 *
 * How it is known that there is no better: see tally.ts, which says how many there are at least. Mostly a choice line by line comes to just that. Where
 * it does not, all choices are gone through that the bound and the rings do not rule out, up to `steps`; beyond that the best is told with the bound.
 */
export function leastClosing(web: Web, { tees = 'as said', steps = STEPS }: { readonly tees?: 'as said' | 'free'; readonly steps?: number } = {}): Least | undefined {
    const tally = tallyOf(web, tees === 'free');
    const found = lineByLine(web, tally).map((throughs): Found => ({ throughs, ...judge(web, throughs) })).filter(({ cycle }) => cycle === null);
    const isParted = found.length > 0, said = web.meetings.map(({ now }) => now), asSaid = judge(web, said);
    if (!asSaid.cycle) found.unshift({ throughs: said, ...asSaid });
    const fewest = Math.min(Infinity, ...found.map(({ closing }) => closing));
    const narrow = fewest > tally.atLeast ? search(web, tally, fewest, steps) : { atLeast: tally.atLeast };
    // a ring that only a line without biscuits parts, which is else better cut itself
    const searched = !isParted && !narrow.throughs ? search(web, allOpen(web, tally, tees), fewest, steps) : narrow;
    if (searched.throughs) found.push({ throughs: searched.throughs, ...judge(web, searched.throughs) });
    const closing = Math.min(Infinity, ...found.map(each => each.closing));
    if (closing === Infinity) return undefined;
    const alike = found.filter(each => each.closing === closing).slice(0, Math.ceil(MOST_COMPARED / web.meetings.length));
    const best = alike.map(({ throughs }) => turnedBack(web, throughs, closing)).sort((a, b) => compareEach([turnsOf(web, a)], [turnsOf(web, b)]))[0]!;
    return { throughs: best, closing, atLeast: Math.min(closing, searched.atLeast), proved: searched.atLeast >= closing };
}
/** Every meeting that may be turned, those too of which it is known what costs less. */
function allOpen({ meetings }: Web, tally: Tally, tees: 'as said' | 'free'): Tally {
    const open = meetings.flatMap(({ kind }, m) => (kind === 'tee' && tees === 'as said' ? [] : [m])), opened = new Set(open);
    return { ...tally, open, decided: meetings.map(({ now }, m) => (opened.has(m) ? null : tally.decided[m] ?? now)), boundOf: () => 0, atLeast: 0 };
}

/** Choices of part of the meetings that are looked at. */
const STEPS = 20_000;
/** Meetings in choices equally good, of which the one is taken that turns fewest: turning them back takes the square of their number. */
const MOST_COMPARED = 2000;

interface Found extends Judged { readonly throughs: readonly Which[] }

function turnsOf({ meetings }: Web, throughs: Throughs): number {
    return meetings.filter(({ now }, m) => throughs[m] !== now).length;
}

/** Every meeting that need not be turned is turned back, one after the other. */
function turnedBack(web: Web, throughs: readonly Which[], closing: number): readonly Which[] {
    const back = [...throughs];
    web.meetings.forEach(({ now }, m) => {
        if (back[m] === now) return;
        const other = back[m]!;
        back[m] = now;
        const { closing: then, cycle } = judge(web, back);
        if (cycle || then > closing) back[m] = other;
    });
    return back;
}

/** All choices, but for those that cannot come below `fewest` or have no first piece already. */
function search(web: Web, { decided, open, boundOf, atLeast }: Tally, fewest: number, steps: number): { throughs?: readonly Which[]; atLeast: number } {
    let best: readonly Which[] | undefined, most = fewest, left = steps;
    const stack: (readonly (Which | null)[])[] = [decided];
    while (stack.length > 0) {
        if (left-- === 0) return { ...best && { throughs: best }, atLeast };
        const throughs = stack.pop()!, next = open.find(m => throughs[m] === null);
        if (boundOf(throughs) >= most) continue;
        const { closing, cycle } = judge(web, throughs);
        if (cycle) continue;
        if (next === undefined) {
            if (closing < most) { most = closing; best = throughs as readonly Which[]; }
            if (most <= atLeast) break;
            continue;
        }
        const { now } = web.meetings[next]!;
        for (const which of [1 - now, now] as Which[]) stack.push(throughs.map((through, m) => (m === next ? which : through)));
    }
    return { ...best && { throughs: best }, atLeast: most === Infinity ? atLeast : most };
}
