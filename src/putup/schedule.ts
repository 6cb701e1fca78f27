import { grouped } from '../plain/groups.ts';
import type { Steps } from '../plain/steps.ts';
import { distance, type Point } from '../plane/point.ts';
import { groupOf, KINDS, type Group } from './groups.ts';
import type { Before, FirstBay } from './model.ts';
import type { Stood } from './stood.ts';

/** Pieces that go up in one go. `late`: see `Wishes`. */
export interface Batch { readonly group: Group; readonly pieces: readonly Stood[]; readonly at: Point; readonly late: number }
export interface Scheduled { readonly batches: readonly Batch[]; readonly stuck: readonly string[] }

/** `late`: by it pieces go up late, by their names, whatever their kind, and with them all that waits for them; 0 where nothing holds them up. */
export interface Wishes { readonly firstBay: FirstBay | null; late(id: string): number }

/**
 * The batches in an order in which everything is there before what needs it: what is held up last; kind after kind as they follow each other, within a kind
 * those first that can be done whole, and of these the one nearest to where the ladder stands (which ladder/ makes shorter). A group that has to wait for
 * what comes later is done in parts.
 * `befores` may name what is no piece: it is there as soon as all that it waits for is.
 */
export function* scheduled(all: readonly Stood[], befores: readonly Before[], wishes: Wishes): Steps<Scheduled> {
    const work = new Work(all, befores, wishes), batches: Batch[] = [];
    yield;
    for (let batch = work.next(); batch; batch = work.next()) {
        batches.push(batch);
        if (batches.length % AT_ONCE === 0) yield;
    }
    return { batches, stuck: work.stuck() };
}

/** Batches that are chosen in one step. */
const AT_ONCE = 200;

interface Waiting extends Group {
    readonly at: Point; readonly rank: number; readonly late: number; readonly pieces: Stood[];
    /** What its pieces still wait for outside of it, and how many of them wait for nothing. */
    outside: number; ready: number;
}

class Work {
    private readonly groups: Waiting[];
    private readonly own = new Map<string, Waiting>();
    private readonly left = new Map<string, number>();
    private readonly after: ReadonlyMap<string, readonly Before[]>;
    private readonly done = new Set<string>();
    private readonly stood: ReadonlyMap<string, Stood>;
    private readonly knots: readonly string[];
    private ladder: Point | undefined;

    constructor(all: readonly Stood[], befores: readonly Before[], { firstBay, late }: Wishes) {
        this.stood = new Map(all.map(one => [one.piece.id, one]));
        this.after = grouped(befores, ({ first }) => first);
        for (const { then } of befores) this.left.set(then, (this.left.get(then) ?? 0) + 1);
        const lateness = carriedOn([...this.stood.keys()], befores, this.after, late);
        const placed = all.map(one => ({ one, group: groupOf(one.piece, firstBay), late: lateness.get(one.piece.id) ?? 0 }));
        this.groups = [...grouped(placed, ({ group, late: by }) => `${group.key} ${by}`).values()].map(members => {
            const { group, late: by } = members[0]!, pieces = members.map(({ one }) => one);
            return { ...group, late: by, rank: KINDS.indexOf(group.kind), pieces, at: middleOf(pieces), outside: 0, ready: 0 };
        });
        for (const group of this.groups) for (const { piece } of group.pieces) this.own.set(piece.id, group);
        for (const { first, then } of befores) { const group = this.own.get(then); if (group && this.own.get(first) !== group) group.outside++; }
        for (const { piece } of all) if (!this.left.get(piece.id)) this.own.get(piece.id)!.ready++;
        this.knots = [...new Set(befores.flatMap(({ first, then }) => [first, then]))].filter(id => !this.stood.has(id));
    }

    next(): Batch | undefined {
        const any = this.groups.filter(({ ready }) => ready > 0);
        if (any.length === 0) return undefined;
        const soonest = Math.min(...any.map(({ late }) => late)), able = any.filter(({ late }) => late === soonest);
        const first = Math.min(...able.map(({ rank }) => rank)), ofKind = able.filter(({ rank }) => rank === first);
        const whole = ofKind.filter(({ outside }) => outside === 0), among = whole.length > 0 ? whole : ofKind;
        const group = this.ladder ? nearest(this.ladder, among) : among[0]!, pieces = this.takeFrom(group), at = middleOf(pieces);
        this.ladder = at;
        return { group, pieces, at, late: group.late };
    }

    /** All of it that can be done now, what follows within the group too, in the order of the list. */
    private takeFrom(group: Waiting): Stood[] {
        const taken: Stood[] = [];
        for (let more = true; more;) {
            more = false;
            for (const one of group.pieces) {
                if (this.done.has(one.piece.id) || this.left.get(one.piece.id)) continue;
                taken.push(one);
                group.ready--;
                this.finish(one.piece.id);
                more = true;
            }
        }
        return taken;
    }

    /** What waited for it waits no longer; what is no piece is done with it, one after the other. */
    private finish(id: string): void {
        const row = [id];
        for (let i = 0; i < row.length; i++) {
            const own = this.own.get(row[i]!);
            this.done.add(row[i]!);
            for (const { then } of this.after.get(row[i]!) ?? []) {
                const left = this.left.get(then)! - 1, group = this.own.get(then);
                this.left.set(then, left);
                if (group && group !== own) group.outside--;
                if (left > 0) continue;
                if (group) group.ready++; else row.push(then);
            }
        }
    }

    /** Pieces that can never come, and what stands for several of them. */
    stuck(): string[] {
        return [...this.stood.keys(), ...this.knots].filter(id => !this.done.has(id));
    }
}

/** What waits for something that is held up is held up as long. Each is looked at once, after all that it waits for. */
function carriedOn(
    ids: readonly string[], befores: readonly Before[], after: ReadonlyMap<string, readonly Before[]>, late: Wishes['late'],
): ReadonlyMap<string, number> {
    const lateness = new Map([...ids, ...befores.flatMap(({ first, then }) => [first, then])].map(id => [id, late(id)]));
    if (![...lateness.values()].some(by => by > 0)) return new Map();
    const left = new Map<string, number>();
    for (const { then } of befores) left.set(then, (left.get(then) ?? 0) + 1);
    const row = [...lateness.keys()].filter(id => !left.get(id));
    for (let i = 0; i < row.length; i++) {
        const by = lateness.get(row[i]!)!;
        for (const { then } of after.get(row[i]!) ?? []) {
            lateness.set(then, Math.max(by, lateness.get(then)!));
            left.set(then, left.get(then)! - 1);
            if (left.get(then) === 0) row.push(then);
        }
    }
    return lateness;
}

/** Of several as near, the first. */
function nearest(from: Point, groups: readonly Waiting[]): Waiting {
    let best = groups[0]!, least = Infinity;
    for (const group of groups) {
        const far = distance(from, group.at);
        if (far < least) { best = group; least = far; }
    }
    return best;
}

function middleOf(pieces: readonly Stood[]): Point {
    const sum = pieces.reduce(({ x, y }, { middle }) => ({ x: x + middle.x, y: y + middle.y }), { x: 0, y: 0 });
    return { x: Math.round(sum.x / pieces.length), y: Math.round(sum.y / pieces.length) };
}
