import type { Counts } from './bound.ts';
import { STEPS, type Effort } from './effort.ts';
import { Listing, partsOf } from './enumerate.ts';
import { floorsOf } from './floors.ts';
import { sizeOf, trimmed } from './layouts.ts';
import { costOfLayouts, pieceCount, WHOLE, type CuttingProblem, type Layout, type Picks, type StripCut } from './problem.ts';
import type { Ripping } from './rippings.ts';
import { SectionTables, type Family } from './sections.ts';
import type { LinearColumn, LinearSolver, RowLimits } from './solver.ts';

interface PatternPlan {
    readonly layouts?: Layout[];
    /** True where no plan is cheaper than this one; without one: that there is none at most as dear. */
    readonly finished: boolean;
}

/**
 * The whole problem as one program over three lists: how boards are cut across into pieces and sections, how sections are ripped, how strips
 * are cut to length. Each list is short where there are few lengths, though boards that are all of it together are very many. A strip comes out of any
 * section that is as long: of every length, no more strips are that long than lie in sections that long. Only boards are listed that can
 * be part of a plan costing at most `dearest`, judged by what the pieces are worth.
 * @param cheapest no plan costs less
 * @param limits `most`: so many ways to cut are looked at
 */
export function planByPatterns(
    problem: CuttingProblem, values: ArrayLike<number>, counts: Counts, { cheapest, dearest }: { readonly cheapest: number; readonly dearest: number },
    step: number, solver: LinearSolver, effort: Effort, { most, nodes }: { readonly most: number; readonly nodes: number },
): PatternPlan {
    const tables = new SectionTables(problem, problem.items.map(item => item.count), effort);
    if (!tables.isSmall || !tables.places.areSingle) return { finished: false };
    const patterns = new Patterns(problem, tables, effort, most);
    if (!patterns.list(values, counts, dearest)) return { finished: false };
    const { rows, columns } = patterns.program(counts, { least: cheapest, most: dearest });
    effort.spent += STEPS.program + columns.length * STEPS.newColumn;
    const { values: used, finished, work } = solver.wholeNumbers(rows, columns, { nodes, step, work: effort.left });
    effort.spent += work;
    if (!used) return { finished };
    const layouts = trimmed(problem, patterns.layouts(used), problem.items.map(item => item.count));
    return costOfLayouts(problem, layouts) <= dearest ? { layouts, finished } : { finished: false };
}

/** A board; `over`: it is ripped over its whole length, which is this. */
interface Across { readonly board: number; readonly family: Family; readonly picks: Picks; readonly sections: readonly number[]; readonly over?: number }

function rippedIn({ sections, over }: Across): readonly number[] {
    return over === undefined ? sections : [over];
}
interface Ripped { readonly family: Family; readonly size: number; readonly ripping: Ripping }
interface Along { readonly lane: number; readonly size: number; readonly picks: Picks }

class Patterns {
    private readonly boards: Across[] = [];
    private readonly sections: Ripped[] = [];
    private readonly strips: Along[] = [];

    constructor(
        private readonly problem: CuttingProblem, private readonly tables: SectionTables, private readonly effort: Effort, private readonly most: number,
    ) {}

    /** False where there are too many. */
    list(values: ArrayLike<number>, counts: Counts, dearest: number): boolean {
        const { problem } = this, { floors, usable } = floorsOf(problem, this.tables, values, [], counts, dearest);
        const kinds = problem.boards.flatMap((_, k) => (usable[k] ? [k] : [])), families = new Set(kinds.map(k => this.tables.family(k)));
        for (const family of families) {
            if (!family.rippings) return false;
            const own = kinds.filter(k => this.tables.family(k) === family);
            if (!this.listBoards(family, own, floors, values)) return false;
            const sizes = new Set(this.boards.filter(board => board.family === family).flatMap(rippedIn));
            for (const size of sizes) for (const ripping of family.rippings) this.sections.push({ family, size, ripping });
            if (this.count > this.most) return false;
        }
        const longest = Math.max(0, ...this.sections.map(({ size }) => size));
        return problem.strips.every((_, i) => this.listStrips(i + 1, longest));
    }

    private get count(): number {
        return this.boards.length + this.sections.length + this.strips.length;
    }

    private listBoards(family: Family, kinds: readonly number[], floors: readonly number[], values: ArrayLike<number>): boolean {
        const { problem } = this, { boards, shortestSection = Infinity } = problem;
        const longest = Math.max(...kinds.map(k => boards[k]!.capacity));
        const places = shortestSection === Infinity ? [] : this.tables.places.first.map(place => Math.max(place, shortestSection));
        const lengths = [...new Set(places)].sort((x, y) => y - x);
        const worth = lengths.map(size => family.bestRipping(size));
        this.effort.spent += lengths.length * family.some.length * STEPS.placed;
        const items = family.isRipOnly ? [] : partsOf(problem, values, WHOLE), listing = new Listing(items, longest, this.effort);
        return kinds.every(board => {
            const { capacity } = boards[board]!, floor = floors[board]!;
            if (capacity < shortestSection && family.rippings!.length > 0 && family.bestRipping(capacity) >= floor)
                this.boards.push({ board, family, picks: [], sections: [], over: capacity });
            // two sections that are ripped alike could be one
            const beside = (sections: readonly number[], from: number, room: number, value: number): boolean => {
                this.effort.spent += STEPS.look;
                const isListed = listing.list(room, floor - value, this.most - this.count, picks => {
                    this.boards.push({ board, family, sections, picks: picks.map(([part, count]) => [items[part]!.item, count] as const) });
                });
                if (!isListed) return false;
                if (sections.length > 0 && value >= floor && !items.some(({ size }) => size <= room)) this.boards.push({ board, family, sections, picks: [] });
                if (sections.length === family.rippings!.length) return true;
                for (let l = from; l < lengths.length; l++)
                    if (lengths[l]! <= room && !beside([...sections, lengths[l]!], l, room - lengths[l]!, value + worth[l]!)) return false;
                return true;
            };
            return beside([], 0, capacity, 0);
        });
    }

    /** Every content of a strip: each is as much as a strip of just its length holds. */
    private listStrips(lane: number, longest: number): boolean {
        const { items } = this.problem, parts = partsOf(this.problem, items.map(() => 0), lane).filter(({ size }) => size <= longest);
        let contents: (readonly (readonly [number, number])[])[] = [[]];
        for (const { item, size, count } of parts) {
            contents = contents.flatMap(picks => {
                const room = longest - sizeOf(this.problem, picks), most = Math.min(count, Math.floor(room / size));
                return [picks, ...Array.from({ length: most }, (_, n) => [...picks, [item, n + 1] as const])];
            });
            this.effort.spent += contents.length * STEPS.look;
            if (contents.length + this.count > this.most) return false;
        }
        for (const picks of contents) if (picks.length > 0) this.strips.push({ lane, size: sizeOf(this.problem, picks), picks });
        return true;
    }

    program(counts: Counts, costs: RowLimits): { rows: RowLimits[]; columns: LinearColumn[] } {
        const { problem, boards, sections, strips } = this;
        const rows: RowLimits[] = problem.items.map(({ count }) => ({ least: count, most: Infinity }));
        const row = (least: number, most: number): number => rows.push({ least, most }) - 1;
        const cost = rows.push(costs) - 1, many = pieceCount(problem), kinds = problem.boards.map((_, k) => row(counts.least[k]!, counts.most[k]!));
        const balances = new Map<Family, Map<number, number>>();
        for (const { family, size } of sections) {
            const own = balances.get(family) ?? new Map<number, number>();
            balances.set(family, own);
            if (!own.has(size)) own.set(size, row(0, Infinity));
        }
        const lengths = problem.strips.map((_, i) => {
            const sizes = new Set(strips.flatMap(({ lane, size }) => (lane === i + 1 ? [size] : [])));
            return [...sizes].map(size => ({ size, row: row(0, Infinity) }));
        });
        const upTo = (lane: number, size: number, value: number): [number, number][] =>
            lengths[lane - 1]!.flatMap((each): [number, number][] => (each.size <= size ? [[each.row, value]] : []));
        const columns = [
            ...boards.map((board): LinearColumn => {
                const { cost: price } = problem.boards[board.board]!, own = rippedIn(board), sizes = [...new Set(own)];
                return {
                    cost: price, most: counts.most[board.board]!,
                    entries: [
                        ...board.picks, ...price > 0 ? [[cost, price] as const] : [], [kinds[board.board]!, 1],
                        ...sizes.map(size => [balances.get(board.family)!.get(size)!, own.filter(each => each === size).length] as const),
                    ],
                };
            }),
            ...sections.map(({ family, size, ripping }): LinearColumn => ({
                cost: 0, most: many,
                entries: [[balances.get(family)!.get(size)!, -1], ...ripping.flatMap((count, i) => (count > 0 ? upTo(i + 1, size, count) : []))],
            })),
            ...strips.map(({ lane, size, picks }): LinearColumn => ({
                cost: 0, most: Math.max(...picks.map(([item, count]) => Math.ceil(problem.items[item]!.count / count))),
                entries: [...picks, ...upTo(lane, size, -1)],
            })),
        ];
        return { rows, columns };
    }

    /** The boards of a solution: every strip, the longest first, into the shortest section that holds it. */
    layouts(values: readonly number[]): Layout[] {
        const { boards, sections, strips } = this, [b, s] = [boards.length, sections.length];
        interface Place { readonly section: Ripped; readonly filled: { lane: number; picks: Picks }[] }
        const places = sections.flatMap((section, i) => Array.from({ length: values[b + i]! }, (): Place => ({ section, filled: [] })))
            .sort((x, y) => x.section.size - y.section.size);
        const alone = strips.flatMap((strip, i) => Array.from({ length: values[b + s + i]! }, () => strip)).sort((x, y) => y.size - x.size);
        for (const { lane, size, picks } of alone) {
            const place = places.find(({ section, filled }) =>
                section.size >= size && filled.filter(strip => strip.lane === lane).length < section.ripping[lane - 1]!);
            place?.filled.push({ lane, picks });
        }
        return boards.flatMap((cut, i) => Array.from({ length: values[i]! }, (): Layout => {
            const { board, family, picks, sections: own, over } = cut;
            const ripped = rippedIn(cut).flatMap((size, section) => {
                const at = places.findIndex(place => place.section.family === family && place.section.size === size);
                const filled = at < 0 ? [] : places.splice(at, 1)[0]!.filled;
                return filled.map((strip): StripCut => ({ ...strip, ...over === undefined && { section } }));
            });
            const whole = picks.length > 0 ? [{ lane: WHOLE, picks: picks.toSorted(([x], [y]) => x - y) }] : [];
            return { board, times: 1, strips: [...whole, ...ripped], ...own.length > 0 && { sections: own } };
        }));
    }
}
