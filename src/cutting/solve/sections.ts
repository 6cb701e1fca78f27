import { STEPS, type Effort } from './effort.ts';
import { Abreast } from './abreast.ts';
import { Knapsack } from './knapsack.ts';
import { tidied } from './layouts.ts';
import { canCut, laneCount, WHOLE, type BoardKind, type Cut, type CuttingProblem, type Picks, type StripCut } from './problem.ts';
import { lastWithin, placesOf, togetherOf, type Places } from './places.ts';
import { rippingsOf, type Ripping } from './rippings.ts';
import { Table } from './table.ts';

/**
 * What boards that may be ripped are worth at most, and how they are then cut: by lane a table of the best strip of every length, from
 * these the best ripping of every section (strips abreast are worth no more together than what is wanted, see `abreast.ts`), and from these
 * and the best of lane 0 the best board of every length. In whole numbers where the values are such below 2^53. Less exact, and then too
 * much where a bound is asked for, where a board has more places for a cut than `FINE` or more ways to be ripped than `MOST_RIPPINGS`.
 */
export class SectionTables {
    private readonly longest: number;
    private readonly tables: readonly (Table | undefined)[];
    private readonly families: readonly Family[];
    private readonly familyOf: readonly number[];
    private readonly abreast: readonly (Abreast | undefined)[];
    private readonly filler: Knapsack;
    private values: ArrayLike<number> = [];
    private lanes: (Float64Array | undefined)[] = [];
    /** Every length that a strip of some lane may have, as a sum of pieces: one by one, or where they are very many, several together. */
    readonly places: Places;

    constructor(private readonly problem: CuttingProblem, private readonly counts: readonly number[], private readonly effort: Effort) {
        const { items, boards, strips } = problem;
        this.longest = Math.max(...boards.map(kind => kind.capacity));
        const sizes = items.map(item => item.size);
        this.tables = Array.from({ length: laneCount(problem) }, (_, lane) => {
            const among = this.itemsOf(lane, counts);
            return among.length > 0 ? new Table(sizes, counts, among, this.longest, effort) : undefined;
        });
        this.filler = new Knapsack(sizes, effort);
        const inLanes = items.reduce((sum, { lanes }) => sum + lanes.filter(lane => lane !== WHOLE).length, 0);
        effort.spent += (strips.length + 2 * inLanes) * this.longest * STEPS.reached;
        this.places = togetherOf(placesOf(problem, counts, this.longest));
        const widest = Math.max(...boards.map(kind => kind.across));
        this.abreast = this.tables.map((table, lane) => {
            const most = lane === WHOLE ? 0 : Math.floor(widest / strips[lane - 1]!);
            return table && most > 0 ? new Abreast(sizes, counts, this.itemsOf(lane), this.places.last, most, effort) : undefined;
        });
        const lanes = strips.flatMap((_, i) => (this.tables[i + 1] ? [i + 1] : []));
        const families: Family[] = [];
        this.familyOf = boards.map(kind => {
            const isRipOnly = !canCut(kind, WHOLE);
            let index = families.findIndex(family => family.across === kind.across && family.isRipOnly === isRipOnly);
            if (index < 0) index = families.push(new Family(problem, kind, lanes, isRipOnly, this.places, this.abreast)) - 1;
            return index;
        });
        this.families = families;
    }

    /** False where the tables would be larger than a machine should be asked for. */
    get isSmall(): boolean {
        return this.tables.reduce((sum, table) => sum + (table?.cells ?? 0), 0) <= MOST_CELLS;
    }

    /** True where what is found is the best there is. */
    get isExact(): boolean {
        return this.longest <= FINE && this.families.every(family => family.rippings !== undefined);
    }

    /**
     * What the best content of a board of each kind is worth.
     * @param sections what sections are worth by themselves
     * @param how `cut`: contents that `content` can tell; `at most`: no content is worth more, also where these are not the best
     */
    worth(values: ArrayLike<number>, how: 'cut' | 'at most', sections: readonly SectionWorth[] = []): number[] {
        this.values = values;
        this.lanes = this.tables.map(table => table?.fill(values, how === 'cut'));
        this.abreast.forEach((abreast, lane) => abreast?.fill(values, this.lanes[lane]!));
        const { boards } = this.problem;
        const needed = this.families.map((_, f) => boards.flatMap(({ capacity }, k) => (this.familyOf[k] === f ? [capacity] : [])));
        this.families.forEach((family, f) => { this.effort.spent += family.fill(this.lanes, needed[f]!, how, sections); });
        return this.problem.boards.map(({ capacity }, k) => this.families[this.familyOf[k]!]!.worthAt(capacity));
    }

    /**
     * How a board of the kind may be cut to be worth about that; `as wanted`: no piece more often than it is wanted.
     * @param asTold with just those sections that the worth is reckoned of, also where they could be shorter
     */
    content(board: number, how: 'as wanted' | 'too often' = 'as wanted', asTold = false): Cut {
        const { capacity } = this.problem.boards[board]!;
        this.effort.spent += STEPS.made;
        const { sections, rest, isOver } = this.families[this.familyOf[board]!]!.cutAt(capacity, asTold);
        const left = [...this.counts];
        const ripped = sections.map(({ size, ripping }) => ({
            size, strips: ripping.flatMap((count, i) => Array.from({ length: count }, (): StripCut => (
                { lane: i + 1, picks: how === 'as wanted' ? this.fillStrip(i + 1, size, left) : this.tables[i + 1]?.picksAt(size) ?? [] }))),
        }));
        const strips = ripped.flatMap((one, section) =>
            one.strips.filter(({ picks }) => picks.length > 0).map(strip => ({ ...strip, ...isOver ? {} : { section } })));
        if (isOver) return { board, strips };
        const picks = rest > 0 && canCut(this.problem.boards[board]!, WHOLE) ? this.wholePicks(rest, left) : [];
        const whole = picks.length > 0 ? [{ lane: WHOLE, picks }] : [];
        if (ripped.length === 0) return { board, strips: whole };
        const cut = { board, sections: ripped.map(({ size }) => size), strips: [...whole, ...strips] };
        return asTold ? cut : tidied(this.problem, cut);
    }

    /** The best content by the table, or where some of it is on a section of the board by now, by a search for what is still wanted. */
    private wholePicks(rest: number, left: number[]): Picks {
        const picks = this.tables[WHOLE]?.picksAt(rest) ?? [];
        return picks.every(([item, count]) => count <= left[item]!) ? picks : this.fillStrip(WHOLE, rest, left);
    }

    private fillStrip(lane: number, size: number, left: number[]): Picks {
        const among = this.itemsOf(lane, left);
        if (among.length === 0) return [];
        this.filler.worth(this.values, among);
        const picks = this.filler.fill(size, left, 0, FILLING).picks.at(-1) ?? [];
        for (const [item, count] of picks) left[item]! -= count;
        return picks;
    }

    private itemsOf(lane: number, counts: readonly number[] = this.counts): number[] {
        return this.problem.items.flatMap((item, i) => (counts[i]! > 0 && item.size <= this.longest && item.lanes.includes(lane) ? [i] : []));
    }

    /** By lane, what the best strip of every length is worth; undefined where nothing comes out of the lane. */
    get strips(): readonly (Float64Array | undefined)[] {
        return this.lanes;
    }

    family(board: number): Family {
        return this.families[this.familyOf[board]!]!;
    }
}

/** What a section that is at least as long as `from` is worth by itself, beside what is cut from it. */
export interface SectionWorth { readonly from: number; readonly worth: number }

export function worthOfSection(sections: readonly SectionWorth[], size: number): number {
    return sections.reduce((sum, { from, worth }) => (size >= from ? sum + worth : sum), 0);
}

interface Place { readonly size: number; readonly worth: number; readonly ripping: Ripping }

/** Boards that are ripped alike: of one width. */
export class Family {
    readonly across: number;
    readonly isRipOnly: boolean;
    /** Undefined where there are too many. */
    readonly rippings: readonly Ripping[] | undefined;
    readonly some: readonly Ripping[];
    private readonly widths: readonly number[];
    private readonly shortest: number;
    /** Ways to rip that a board has one section of at the most: two that are ripped alike could be one. Where there are many, they are looked at together. */
    private readonly groups: readonly (readonly Ripping[])[];
    /** By group: section lengths at which more fits, and what the best ripping of each is worth; rising in both. */
    private worthPlaces: Place[][] = [];
    /** By length in cells: what the best board is worth, and by group the section that is cut off it; -1: none. */
    private best: Float64Array = new Float64Array(0);
    private chosen: Int32Array[] = [];
    private cell = 1;
    private whole: Float64Array | undefined;

    constructor(
        { strips, shortestSection }: CuttingProblem, { across }: BoardKind, lanes: readonly number[], isRipOnly: boolean,
        private readonly places: Places, private readonly abreast: readonly (Abreast | undefined)[],
    ) {
        this.across = across;
        this.isRipOnly = isRipOnly;
        this.widths = strips;
        this.shortest = shortestSection ?? Infinity;
        const fitting = lanes.filter(lane => strips[lane - 1]! <= across);
        this.rippings = fitting.length === 0 ? [] : rippingsOf(strips, fitting, across, MOST_RIPPINGS);
        // too many: each lane by itself as often as it fits, and one of each pair beside as many of the other
        this.some = this.rippings ?? fitting.flatMap(a => fitting.map(b => pairOf(strips, a, b, across)));
        this.groups = this.rippings && this.rippings.length <= MOST_APART ? this.rippings.map(ripping => [ripping]) : [this.some];
    }

    /**
     * Says how many steps it took.
     * @param capacities of the boards that are asked about
     */
    fill(
        lanes: readonly (Float64Array | undefined)[], capacities: readonly number[], how: 'cut' | 'at most', sections: readonly SectionWorth[],
    ): number {
        const isBound = how === 'at most' && !this.rippings, longest = Math.max(0, ...capacities);
        let work = 0;
        this.worthPlaces = this.groups.map((group, g) => {
            const rising: Place[] = [];
            let worth = 0;
            this.places.first.forEach((size, p) => {
                if (size > longest) return;
                work += 0.5 + 1.5 * group.length * this.widths.length * STEPS.placed;
                const [ripped, ripping] = isBound ? [this.atMost(lanes, size), group[0]!] : this.bestAt(p, group);
                const value = ripped + worthOfSection(sections, Math.max(this.places.last[p]!, this.shortest));
                if (!(value > worth)) return;
                worth = value;
                rising.push({ size, worth, ripping });
            });
            return this.isLast(g) ? rising : fewer(rising);
        });
        return work + this.join(lanes[WHOLE], capacities, how);
    }

    /** The sections that are joined last, one a board: only what boards of their lengths are worth is asked of them, so there may be many. */
    private isLast(group: number): boolean {
        return this.isApart && group === this.groups.length - 1;
    }

    worthAt(capacity: number): number {
        return Math.max(this.best[Math.floor(capacity / this.cell)] ?? 0, this.placeWithin(capacity)?.worth ?? 0);
    }

    /** The same of a board that is cut across, over its whole length if need be. */
    worthCut(length: number): number {
        this.joinAll();
        return this.best[Math.floor(length / this.cell)] ?? 0;
    }

    /** The sections of a board and the length that is left for lane 0; `isOver`: it is ripped over its whole length. */
    cutAt(capacity: number, asTold: boolean): { sections: { size: number; ripping: Ripping }[]; rest: number; isOver: boolean } {
        const over = this.placeWithin(capacity);
        let at = Math.floor(capacity / this.cell);
        const isOver = over !== undefined && over.worth >= this.best[at]!;
        if (isOver && asTold && capacity >= this.shortest) {
            const size = Math.max(over.size, this.shortest);
            return { sections: [{ size, ripping: over.ripping }], rest: 0, isOver: false };
        }
        if (isOver) return { sections: [{ size: capacity, ripping: over.ripping }], rest: 0, isOver: true };
        const sections: { size: number; ripping: Ripping }[] = [];
        let rest = capacity;
        for (let g = this.chosen.length - 1; g >= 0; g--) {
            while (this.chosen[g]![at]! >= 0) {
                const { size: own, ripping } = this.worthPlaces[g]![this.chosen[g]![at]!]!, size = Math.max(own, this.shortest);
                sections.push({ size, ripping });
                at -= Math.ceil(size / this.cell);
                rest -= size;
                if (this.isApart) break;
            }
        }
        return { sections, rest: this.whole ? rest : 0, isOver: false };
    }

    /** What the best section of a length is worth at most, ripped in the best of these ways. */
    bestRipping(size: number, among = this.some): number {
        const p = lastWithin(this.places.first, size);
        return p < 0 ? 0 : this.bestAt(p, among)[0];
    }

    private bestAt(place: number, among: readonly Ripping[]): [worth: number, ripping: Ripping] {
        let best = 0, chosen = among[0]!;
        among.forEach(ripping => {
            let sum = 0;
            for (let i = 0; i < ripping.length; i++) if (ripping[i]! > 0) sum += this.abreast[i + 1]?.at(ripping[i]!, place) ?? 0;
            if (sum > best) { best = sum; chosen = ripping; }
        });
        return [best, chosen];
    }

    /**
     * The best board of every length up to the longest, from the best section of each and what is cut in the whole width; with the sections that are
     * joined last only boards of the lengths there are, until others are asked about.
     */
    private join(whole: Float64Array | undefined, capacities: readonly number[], how: 'cut' | 'at most'): number {
        const longest = Math.max(0, ...capacities);
        this.whole = this.isRipOnly ? undefined : whole;
        this.cell = longest <= FINE ? 1 : Math.ceil(longest / COARSE);
        const cells = Math.floor(longest / this.cell);
        const down = how === 'at most';
        const best = new Float64Array(cells + 1);
        for (let at = 0; at <= cells && this.whole; at++) best[at] = this.whole[Math.min(longest, down ? at * this.cell + this.cell - 1 : at * this.cell)]!;
        this.best = best;
        this.chosen = [];
        this.joinAll = () => {};
        if (this.shortest === Infinity) return cells * STEPS.cell;
        let work = 4 * cells * STEPS.cell;
        const stepOf = ({ size: own }: Place): number => {
            const size = Math.max(own, this.shortest);
            return Math.max(1, down ? Math.floor(size / this.cell) : Math.ceil(size / this.cell));
        };
        this.worthPlaces.forEach((places, group) => {
            const chosen = new Int32Array(cells + 1).fill(-1);
            this.chosen.push(chosen);
            const before = this.isApart ? best.slice() : best;
            // a section that is worth no more than shorter ones behind each other is not cut off
            const ripped = this.isApart ? undefined : new Float64Array(cells + 1);
            const addAt = (at: number, sum: number, place: number): void => { if (sum > best[at]!) { best[at] = sum; chosen[at] = place; } };
            if (this.isLast(group)) {
                for (const at of new Set(capacities.map(capacity => Math.floor(capacity / this.cell)))) {
                    for (let place = 0; place < places.length; place++) {
                        const step = stepOf(places[place]!);
                        if (step > at) break;
                        addAt(at, before[at - step]! + places[place]!.worth, place);
                    }
                    work += places.length * STEPS.placed;
                }
                this.joinAll = () => {
                    this.joinAll = () => {};
                    places.forEach((each, place) => {
                        const step = stepOf(each);
                        for (let at = step; at <= cells; at++) addAt(at, before[at - step]! + each.worth, place);
                    });
                };
                return;
            }
            places.forEach((each, place) => {
                const step = stepOf(each), { worth } = each;
                if (step > cells || worth <= (ripped?.[step] ?? 0)) return;
                work += (ripped ? 4 : 2.5) * (cells - step) * STEPS.tracedCell;
                if (ripped) addSection(ripped, step, worth);
                for (let at = step; at <= cells; at++) {
                    const sum = before[at - step]! + worth;
                    if (sum > best[at]!) { best[at] = sum; chosen[at] = place; }
                }
            });
        });
        return work;
    }
    private joinAll: () => void = () => {};

    private get isApart(): boolean {
        return this.groups.every(group => group.length === 1);
    }

    private placeWithin(capacity: number): Place | undefined {
        let best: Place | undefined;
        for (const places of this.worthPlaces) {
            let low = 0, high = places.length;
            while (low < high) {
                const middle = (low + high) >> 1;
                if (places[middle]!.size <= capacity) low = middle + 1; else high = middle;
            }
            const place = places[low - 1];
            if (place && place.worth > (best?.worth ?? 0)) best = place;
        }
        return best;
    }

    /** More than the strips of a section are worth together: as if its whole width were worth what the best strip is by its width. */
    private atMost(lanes: readonly (Float64Array | undefined)[], size: number): number {
        const rates = this.widths.map((width, i) => (lanes[i + 1]?.[size] ?? 0) / width);
        return Math.ceil(Math.max(...rates) * this.across * (1 + 1e-12));
    }
}

/** Not more places than are soon joined: several neighbors become one, as short as the first of them and worth as much as the last. */
function fewer(places: readonly Place[]): Place[] {
    const each = Math.ceil(places.length / MOST_PLACES);
    if (each <= 1) return [...places];
    const few: Place[] = [];
    for (let from = 0; from < places.length; from += each) {
        const last = places[Math.min(places.length, from + each) - 1]!;
        few.push({ ...last, size: places[from]!.size });
    }
    return few;
}

function addSection(best: Float64Array, step: number, worth: number): void {
    for (let at = step; at < best.length; at++) {
        const sum = best[at - step]! + worth;
        if (sum > best[at]!) best[at] = sum;
    }
}

function pairOf(strips: readonly number[], a: number, b: number, across: number): Ripping {
    const counts = strips.map(() => 0);
    counts[a - 1] = a === b ? Math.floor(across / strips[a - 1]!) : 1;
    if (a !== b) counts[b - 1] = Math.max(0, Math.floor((across - strips[a - 1]!) / strips[b - 1]!));
    return counts;
}

const MOST_RIPPINGS = 300;
/** Of more ways than this a board may seem to have several sections each: too much, and sooner reckoned. */
const MOST_APART = 12;
const MOST_PLACES = 400;
/** Of the search for the content of one strip. */
const FILLING = 2000;
/** Boards of more places for a cut are looked at in this many. */
const FINE = 16_384;
const COARSE = 4096;
/** 150 MB of table is as much as is asked of a machine. */
const MOST_CELLS = 150_000_000;
