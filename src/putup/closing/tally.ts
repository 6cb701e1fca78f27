import { grouped } from '../../plain/groups.ts';
import { mostApart } from './most-apart.ts';
import type { Throughs, Web, Which } from './web.ts';

/**
 * How many closing pieces a choice has, counted strand by strand, and how many any choice has at least.
 *
 * A strand with biscuits whose bottom is cut k times, and which is butted at b of its ends and stands tight at t of them, has k + b + t - 1 closing
 * pieces, but for one that is neither cut nor butted anywhere: that has none, t - 1 more or less. Every crossing cuts one of its two strands, a
 * ring butts the one and makes the other stand tight, a tee butts the stem (or cuts the bar and makes the stem stand tight, one more). So the
 * sum of k + b + t is the same for all choices, and what is left to choose is which strands are cut nowhere: each of those costs 1 - t. Two
 * that meet are never both among them. And where strands hang together one of them has to be, since something goes up first, and what goes up
 * first waits for nothing; unless they hang on what runs along a wall, or one stands tight at an end, which then costs nothing.
 */
export interface Tally {
    /** What is not open is decided: tees as they are said, and what has no biscuits is cut where it meets what has. */
    readonly decided: readonly (Which | null)[];
    readonly open: readonly number[];
    /** Of each strand: what it costs where it is cut and butted nowhere; null where it is cut or butted anyhow, or has no biscuits. */
    readonly costs: readonly (number | null)[];
    /** Strands of cost -1 no two of which meet, as many as there are as far as is known. */
    readonly apart: ReadonlySet<number>;
    /** Fewer no choice has. */
    readonly atLeast: number;
    /** Fewer none has that is decided so far like this one. */
    boundOf(throughs: Throughs): number;
}

export function tallyOf(web: Web, freeTees: boolean): Tally {
    const { strands, meetings } = web;
    const withBiscuits = (of: number): boolean => strands[of]!.biscuits;
    const decided = meetings.map(({ kind, of, now }): Which | null => {
        const [a, b] = of.map(withBiscuits);
        if (kind === 'tee' && !freeTees || !a && !b) return now;
        return a && b ? null : a ? 0 : 1;
    });
    const open = decided.flatMap((through, m) => (through === null ? [m] : []));
    // what stands fast: tight ends, and whether it is cut or butted
    const tight = strands.map(({ ends }) => ends.filter(end => end === 'tight').length);
    const taken = strands.map(({ ends }) => ends.includes('biscuits'));
    let sum = 0;
    const add = (of: number, what: 'tight' | 'taken'): void => {
        if (!withBiscuits(of)) return;
        sum++;
        if (what === 'tight') tight[of]!++; else taken[of] = true;
    };
    strands.forEach(({ biscuits, ends }) => { if (biscuits) sum += ends.filter(end => end === 'tight' || end === 'biscuits').length - 1; });
    meetings.forEach(({ kind, of }, m) => {
        const through = decided[m] ?? null;
        if (through === null) {
            sum += kind === 'ring' ? 2 : 1;
            if (kind === 'ring') for (const strand of of) tight[strand]!++;
        } else {
            add(of[through === 0 ? 1 : 0], 'taken');
            if (kind === 'ring' || kind === 'tee' && through === 1) add(of[through], 'tight');
        }
    });
    const costs = strands.map((strand, i) => (strand.biscuits && !taken[i] ? 1 - tight[i]! : null));
    const meeting = open.map(m => meetings[m]!.of);
    const gaining = new Set(costs.flatMap((cost, i) => (cost !== null && cost < 0 ? [i] : [])));
    const { apart, atMost } = mostApart([...gaining], meeting.filter(([a, b]) => gaining.has(a) && gaining.has(b)));
    const needed = bundlesOf(web).filter(bundle => {
        const sources = bundle.flatMap(i => costs[i] ?? []);
        return sources.length > 0 && sources.every(cost => cost > 0) && !bundle.some(i => strands[i]!.biscuits && strands[i]!.ends.includes('biscuits'));
    }).length;
    const atLeast = Math.max(0, sum + needed - atMost);
    return {
        decided, open, costs, apart: new Set(apart), atLeast,
        boundOf: throughs => {
            const cut = new Set<number>(), undecided = new Set<number>();
            for (const m of open) {
                const through = throughs[m] ?? null, { of } = meetings[m]!;
                if (through !== null) cut.add(of[1 - through]!); else for (const strand of of) undecided.add(strand);
            }
            const certain = costs.reduce<number>((total, cost, i) => total + (cost === null || cut.has(i) || cost > 0 && undecided.has(i) ? 0 : cost), sum);
            return Math.max(atLeast, certain);
        },
    };
}

/** Strands that hang together by biscuits. */
function bundlesOf({ strands, meetings }: Web): number[][] {
    const bundle = strands.map((_, i) => i);
    const rootOf = (i: number): number => { let at = i; while (bundle[at] !== at) at = bundle[at] = bundle[bundle[at]!]!; return at; };
    for (const { of: [a, b] } of meetings) if (strands[a]!.biscuits || strands[b]!.biscuits) bundle[rootOf(a)] = rootOf(b);
    return [...grouped(strands.map((_, i) => i), rootOf).values()];
}
