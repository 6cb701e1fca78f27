import { atKey } from '../plain/at-key.ts';
import { compareEach } from '../plain/order.ts';
import type { Candidate, Now } from './candidates.ts';
import type { Offer } from './model.ts';
import { gradeOf } from './shape.ts';

/** How many are offered, how many of one number of coffers each way; how many are looked at, and how many coffers are laid out for it in all. */
const MOST_OFFERED = 6, MOST_ALIKE = 2, MOST_LOOKED_AT = 60, MOST_COFFERS_LAID_OUT = 240;

/** `isLaidOut`: all that makes a look long was made. */
export interface LookedAt { readonly offer?: Offer | undefined; readonly isLaidOut: boolean }
interface Searched { readonly offers: readonly Offer[]; readonly lookedAt: number; readonly isCutShort: boolean }

/**
 * The best that stand the whole check, of grids in their order. The two directions that may run through in one division are looked at one after the
 * other: the second where the first is not to be offered, and else at last, as far as the work allows, to offer the better one. Whoever has other
 * things to do may do so before each that is looked at.
 */
export function* search(inOrder: readonly Candidate[], now: Now, look: (candidate: Candidate) => LookedAt): Generator<undefined, Searched> {
    const divisions = new Map<Candidate['across'], Map<Candidate['down'], Candidate[]>>(), order: Candidate[][] = [];
    for (const candidate of inOrder) {
        const both = atKey(atKey(divisions, candidate.across, () => new Map<Candidate['down'], Candidate[]>()), candidate.down, (): Candidate[] => []);
        if (both.length === 0) order.push(both);
        both.push(candidate);
    }
    const found: { offer: Offer; other: Candidate | undefined }[] = [], alike = new Map<string, number>();
    let lookedAt = 0, coffers = 0, isCutShort = false;
    function* offerOf(candidate: Candidate): Generator<undefined, Offer | undefined> {
        const more = candidate.across.coffers * candidate.down.coffers;
        if (lookedAt === MOST_LOOKED_AT || lookedAt > 0 && coffers + more > MOST_COFFERS_LAID_OUT) { isCutShort = true; return undefined; }
        lookedAt++;
        yield;
        const { offer, isLaidOut } = look(candidate);
        // what cannot be laid out costs little
        if (isLaidOut) coffers += more;
        return offer;
    }
    for (const [first, second] of order) {
        if (found.length === MOST_OFFERED || isCutShort || !first) break;
        const counts = `${first.across.coffers} ${first.down.coffers}`, already = alike.get(counts) ?? 0;
        if (already === MOST_ALIKE) continue;
        const one = yield* offerOf(first), offer = one ?? (second && (yield* offerOf(second)));
        if (!offer) continue;
        found.push({ offer, other: one ? second : undefined });
        alike.set(counts, already + 1);
    }
    const foundAll = !isCutShort;
    for (const each of found) {
        const better = each.other && (yield* offerOf(each.other));
        if (better && inRank(better, each.offer, now) < 0) each.offer = better;
    }
    const offers = found.map(({ offer }, i) => ({ offer, i })).sort((a, b) => inRank(a.offer, b.offer, now) || a.i - b.i).map(({ offer }) => offer);
    return { offers, lookedAt, isCutShort: !foundAll };
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
