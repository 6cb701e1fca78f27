import type { Steps } from '../../plain/steps.ts';
import type { Stretch } from './stretch.ts';

/** So many places in a row are moved elsewhere together. */
const TOGETHER = 3;

/**
 * A way through all places that neither turning a part of it round nor moving up to three places elsewhere makes shorter; not always the shortest. It begins
 * with the places as they are numbered, which is one in which nothing comes before what it waits for.
 */
export function* shorter({ waits, far }: Stretch, entry: readonly number[]): Steps<number[]> {
    const way = entry.map((_, i) => i), place = [...way], followers = waits.map((): number[] => []);
    waits.forEach((own, then) => { for (const first of own) followers[first]!.push(then); });
    /** What it takes from the place at `i` of the way to the one at `j`; from before the first, and to behind the last, too. */
    const step = (from: number, to: number): number => (to === way.length ? 0 : from < 0 ? entry[way[to]!]! : far(way[from]!, way[to]!));
    const put = (start: number, places: readonly number[]): void => places.forEach((one, i) => { way[start + i] = one; place[one] = start + i; });
    /** Where the last is of those that each place of the way waits for. */
    const lastWanted = way.map(() => 0);
    const look = (): void => way.forEach((one, i) => { lastWanted[i] = Math.max(-1, ...[...waits[one]!].map(other => place[other]!)); });
    const turned = (): boolean => {
        for (let i = 0; i < way.length - 1; i++) for (let j = i + 1; j < way.length; j++) {
            if (lastWanted[j]! >= i) break;
            const first = i === 0 ? entry[way[j]!]! : far(way[i - 1]!, way[j]!), then = j + 1 === way.length ? 0 : far(way[i]!, way[j + 1]!);
            if (first + then >= step(i - 1, i) + step(j, j + 1)) continue;
            put(i, way.slice(i, j + 1).reverse());
            return true;
        }
        return false;
    };
    const moved = (): boolean => {
        for (let i = 0; i < way.length; i++) for (let j = i; j < Math.min(i + TOGETHER, way.length); j++) {
            const block = way.slice(i, j + 1), wanted = block.flatMap(one => [...waits[one]!].map(other => place[other]!)).filter(at => at < i);
            const wanting = block.flatMap(one => followers[one]!.map(other => place[other]!)).filter(at => at > j);
            const earliest = Math.max(-1, ...wanted), latest = Math.min(way.length, ...wanting);
            const gone = step(i - 1, i) + step(j, j + 1) - (j + 1 === way.length ? 0 : i === 0 ? entry[way[j + 1]!]! : far(way[i - 1]!, way[j + 1]!));
            for (let to = earliest; to < latest; to++) {
                if (to >= i - 1 && to <= j) continue;
                // between the place at `to` and the next
                const added = (to < 0 ? entry[way[i]!]! : far(way[to]!, way[i]!)) + (to + 1 === way.length ? 0 : far(way[j]!, way[to + 1]!)) - step(to, to + 1);
                if (added >= gone) continue;
                if (to < i) put(to + 1, [...block, ...way.slice(to + 1, i)]); else put(i, [...way.slice(j + 1, to + 1), ...block]);
                return true;
            }
        }
        return false;
    };
    // every change makes it shorter by a tick at least, so it ends; that often it is not far from its end
    for (let left = MOST_CHANGES * way.length; left > 0; left--) {
        if (left % AT_ONCE === 0) yield;
        look();
        if (!turned() && !moved()) break;
    }
    return way;
}
const MOST_CHANGES = 4;
/** Changes that are made in one step. */
const AT_ONCE = 100;
