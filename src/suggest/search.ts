import type { Direction } from '../job/model.ts';
import { atKey } from '../plain/at-key.ts';
import type { Steps } from '../plain/steps.ts';
import { compareEach } from '../plain/order.ts';
import type { Candidate, Now } from './candidates.ts';
import type { Offer } from './model.ts';
import { gradeOf } from './shape.ts';

/** How many are offered, how many of one number of coffers each way; how many are looked at, and how many coffers are laid out for it in all. */
const MOST_OFFERED = 6, MOST_ALIKE = 2, MOST_LOOKED_AT = 60;
const MOST_COFFERS_LAID_OUT = 240;

/** Closing pieces of a grid with either direction through; undefined where nothing is known of it. */
type Closing = (candidate: Candidate) => Readonly<Record<Direction, number>> | undefined;
/** `isLaidOut`: all that makes a look long was made. */
export interface LookedAt { readonly offer?: Offer | undefined; readonly isLaidOut: boolean }
interface Searched { readonly offers: readonly Offer[]; readonly lookedAt: number; readonly isCutShort: boolean }

/**
 * The best that stand the whole check, of grids in their order. Of the two directions that may run through in one division that one is looked at first that
 * leaves fewer closing pieces, which its layout tells; the other where the first is not to be offered. Whoever has other things to do may do so before
 * each that is looked at. `most`: coffers that are laid out for it; one grid is looked at however many it has.
 */
export function* search(
    inOrder: readonly Candidate[], now: Now, { look, closing }: { look(candidate: Candidate): Steps<LookedAt>; closing: Closing },
    most = MOST_COFFERS_LAID_OUT,
): Generator<undefined, Searched> {
    const divisions = new Map<Candidate['across'], Map<Candidate['down'], Candidate[]>>(), order: Candidate[][] = [];
    for (const candidate of inOrder) {
        const both = atKey(atKey(divisions, candidate.across, () => new Map<Candidate['down'], Candidate[]>()), candidate.down, (): Candidate[] => []);
        if (both.length === 0) order.push(both);
        both.push(candidate);
    }
    const found: Offer[] = [], alike = new Map<string, number>();
    let lookedAt = 0, coffers = 0, isCutShort = false;
    for (const both of order) {
        const [first] = both, more = first!.across.coffers * first!.down.coffers, counts = `${first!.across.coffers} ${first!.down.coffers}`;
        if (found.length === MOST_OFFERED || isCutShort) break;
        const already = alike.get(counts) ?? 0;
        if (already === MOST_ALIKE) continue;
        for (const candidate of fewestClosing(both, closing)) {
            isCutShort = lookedAt === MOST_LOOKED_AT || lookedAt > 0 && coffers + more > most;
            if (isCutShort) break;
            lookedAt++;
            yield;
            const { offer, isLaidOut } = yield* look(candidate);
            // what cannot be laid out costs little
            if (isLaidOut) coffers += more;
            if (!offer) continue;
            found.push(offer);
            alike.set(counts, already + 1);
            break;
        }
    }
    const offers = found.map((offer, i) => ({ offer, i })).sort((a, b) => inRank(a.offer, b.offer, now) || a.i - b.i).map(({ offer }) => offer);
    return { offers, lookedAt, isCutShort };
}

/** Those with fewer closing pieces first; else in their order. */
function fewestClosing(both: readonly Candidate[], closing: Closing): readonly Candidate[] {
    const counts = both.length < 2 ? undefined : closing(both[0]!);
    return counts ? [...both].sort((a, b) => counts[a.through] - counts[b.through]) : both;
}

/**
 * How equal and square, conflicts, joists found by a line, closing pieces, what the boards cost and how many there are, hours; then which is nearer to
 * the grid as it is.
 */
function inRank(a: Offer, b: Offer, now: Now): number {
    return compareEach(keyOf(a, now), keyOf(b, now));
}

function keyOf({ figures, across, down, through }: Offer, now: Now): number[] {
    return [
        gradeOf(figures), figures.conflicts, -(figures.joists ?? 0) / Math.max(1, across.coffers + down.coffers - 2),
        figures.closing ?? 0,
        figures.costs.length === 1 ? figures.costs[0]!.amount.valueOf() : 0, figures.boards, figures.minutes?.valueOf() ?? 0,
        Math.abs(across.coffers - now.across) + Math.abs(down.coffers - now.down), through === now.through ? 0 : 1,
    ];
}
