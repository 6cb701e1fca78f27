import type { Counts } from './bound.ts';
import { STEPS, type Effort } from './effort.ts';
import { floorsOf, MANY } from './floors.ts';
import { trimmed } from './layouts.ts';
import { canCut, costOfLayouts, WHOLE, type Cut, type CuttingProblem, type Layout, type Picks, type StripCut } from './problem.ts';
import type { Prices } from './pricing.ts';
import type { Ripping } from './rippings.ts';
import { SectionTables, worthOfSection, type Family, type SectionWorth } from './sections.ts';
import type { LinearColumn, LinearSolver, RowLimits } from './solver.ts';

/**
 * The whole problem as one program of flows: a board is a path from 0 along places where a cut may be to its end; an arc over a size cuts
 * a piece or a section, an arc over nothing leaves the rest. Strips of a lane are paths of their own, which end where their sections
 * end; a section is ripped in one of its ways (after J. M. Valério de Carvalho, "Exact solution of bin-packing problems using column
 * generation and branch-and-bound", Annals of Operations Research 86, 1999). Only what can be part of a plan costing at most
 * `dearest` is in it, judged by what the pieces are worth: so it is small where that is near to the bound.
 */
interface FlowPlan {
    readonly layouts?: Layout[];
    /** True where no plan is cheaper than this one; without one: that there is none at most as dear. */
    readonly finished: boolean;
}

export function planByFlow(
    problem: CuttingProblem, prices: Prices, counts: Counts, dearest: number, step: number, solver: LinearSolver, effort: Effort,
    limits: { readonly arcs: number; readonly nodes: number },
): FlowPlan {
    const flow = new Flow(problem, prices, counts, dearest, limits.arcs, effort);
    if (!flow.isWhole) return { finished: false };
    const { values: used, finished, work } = solver.wholeNumbers(flow.rows, flow.columns, { nodes: limits.nodes, step, work: effort.left });
    effort.spent += work;
    if (!used) return { finished };
    const layouts = trimmed(problem, flow.layouts(used), problem.items.map(item => item.count));
    return costOfLayouts(problem, layouts) <= dearest ? { layouts, finished } : { finished: false };
}

interface Arc { readonly from: number; readonly to: number; readonly column: number; readonly item?: number; readonly section?: number }
/** A column that is no arc: a board, or a way to rip a section. */
type Way = { readonly column: number; readonly family: number } & ({ readonly board: number } | { readonly section: number; readonly ripping: Ripping });

/** Places along a board or strip with the arcs between them. */
class Graph {
    readonly arcs: { from: number; to: number; item?: number; section?: number }[] = [];
    readonly ends = new Set<number>();
}

class Flow {
    readonly rows: RowLimits[] = [];
    readonly columns: LinearColumn[] = [];
    /** False where there would be more arcs than were asked for, or what cannot be is not known exactly. */
    readonly isWhole: boolean;
    private readonly problem: CuttingProblem;
    private readonly tables: SectionTables;
    private readonly ways: Way[] = [];
    private readonly into: Map<number, Arc[]>[] = [];
    private readonly lanes = new Map<number, number>();

    constructor(
        problem: CuttingProblem, { items: values, sections: worths }: Prices, counts: Counts, dearest: number, most: number, private readonly effort: Effort,
    ) {
        this.problem = problem;
        const { items, boards } = problem;
        this.tables = new SectionTables(problem, items.map(item => item.count), effort);
        this.isWhole = false;
        if (!this.tables.isExact || !this.tables.isSmall || !this.tables.places.areSingle) return;
        const { floors, usable } = floorsOf(problem, this.tables, values, worths, counts, dearest);

        const families = [...new Set(boards.flatMap((_, k) => (usable[k] ? [this.tables.family(k)] : [])))];
        const kindsOf = families.map(family => boards.flatMap((_, k) => (usable[k] && this.tables.family(k) === family ? [k] : [])));
        const places = this.tables.places.first;
        const graphs = families.map((family, f) => this.graphOf(family, kindsOf[f]!, floors, values, worths, places, most));
        const lanes = problem.strips.map((_, i) => this.laneGraph(i + 1, graphs, families, values, most));
        const arcs = [...graphs.map(({ graph }) => graph), ...lanes].reduce((sum, graph) => sum + (graph?.arcs.length ?? 0), 0);
        if (arcs > most) return;
        effort.spent += STEPS.program + arcs * STEPS.newColumn;
        this.program(graphs, lanes, kindsOf, families, counts, dearest);
        this.isWhole = this.columns.length <= most;
    }

    /** What is cut across the boards of a family, and which sections, each with what a board that holds it may lose at most. */
    private graphOf(
        family: Family, kinds: readonly number[], floors: readonly number[], values: ArrayLike<number>, worths: readonly SectionWorth[],
        places: readonly number[], most: number,
    ) {
        const { items, boards, shortestSection } = this.problem;
        const best = (room: number): number => (room < 0 ? -Infinity : family.worthCut(room));
        const graph = new Graph();
        const sections = new Map<number, number>();
        const loses = (size: number, value: number, at: number): number =>
            kinds.reduce((slack, k) => Math.max(slack, best(at) + value + best(boards[k]!.capacity - at - size) - floors[k]!), -Infinity);
        const longest = Math.max(...kinds.map(k => boards[k]!.capacity));
        const ripped = (size: number): number => family.bestRipping(size) + worthOfSection(worths, Math.max(size, shortestSection ?? 0));
        const add = (size: number, from: number, slack: number): void => {
            sections.set(size, Math.max(sections.get(size) ?? 0, slack));
            graph.arcs.push({ from, to: from + size, section: size });
        };
        const reached = new Uint8Array(longest + 1);
        reached[0] = 1;
        if (shortestSection !== undefined) {
            for (const size of [...new Set(places.map(place => Math.max(place, shortestSection)))].sort((a, b) => b - a)) {
                if (size > longest) continue;
                const value = ripped(size);
                this.effort.spent += STEPS.placed * family.some.length + longest * STEPS.cell;
                for (let at = 0; at + size <= longest && graph.arcs.length <= most; at++) {
                    if (!reached[at]) continue;
                    this.effort.spent += kinds.length * STEPS.placed * 2;
                    const slack = loses(size, value, at);
                    if (!(slack >= 0)) continue;
                    add(size, at, slack);
                    reached[at + size] = 1;
                }
            }
        }
        for (const k of kinds) {
            const { capacity } = boards[k]!;
            graph.ends.add(capacity);
            const slack = ripped(capacity) - floors[k]!;
            // a board long enough for a section that is ripped over its whole length is one with a section and nothing beside it
            if (capacity < (shortestSection ?? Infinity) && slack >= 0 && this.problem.strips.length > 0) add(capacity, 0, slack);
        }
        if (!family.isRipOnly) this.itemArcs(WHOLE, graph, reached, (size, value, at) => loses(size, value, at) >= 0, values, longest, most);
        return { graph, sections, items };
    }

    /** Strips of a lane: paths that end where a section may. */
    private laneGraph(
        lane: number, graphs: readonly { sections: ReadonlyMap<number, number> }[], families: readonly Family[], values: ArrayLike<number>, most: number,
    ): Graph | undefined {
        const table = this.tables.strips[lane];
        if (!table) return undefined;
        const slacks = new Map<number, number>();
        graphs.forEach(({ sections }, f) => {
            const with_ = (families[f]!.rippings ?? []).filter(ripping => ripping[lane - 1]! > 0);
            for (const [size, slack] of sections) {
                const all = families[f]!.bestRipping(size);
                for (const ripping of with_) {
                    if (slack - (all - families[f]!.bestRipping(size, [ripping])) < 0) continue;
                    // as many times the best strip may seem worth more than strips abreast can be: so much more one of them may lose
                    const apart = ripping.reduce((sum, count, i) => sum + count * (this.tables.strips[i + 1]?.[size] ?? 0), 0);
                    slacks.set(size, Math.max(slacks.get(size) ?? 0, slack - all + apart));
                }
            }
        });
        if (slacks.size === 0) return undefined;
        const graph = new Graph();
        const ends = [...slacks].sort(([a], [b]) => b - a);
        for (const [size] of ends) graph.ends.add(size);
        const longest = ends[0]![0];
        const reached = new Uint8Array(longest + 1);
        reached[0] = 1;
        const fits = (size: number, value: number, at: number): boolean =>
            ends.some(([end, slack]) => at + size <= end && table[at]! + value + table[end - at - size]! >= table[end]! - slack);
        this.itemArcs(lane, graph, reached, fits, values, longest, most);
        return graph;
    }

    /** Arcs over the pieces of a lane, the longest first on every path, each at most as often as it is wanted. */
    private itemArcs(
        lane: number, graph: Graph, reached: Uint8Array, fits: (size: number, value: number, at: number) => boolean, values: ArrayLike<number>,
        longest: number, most: number,
    ): void {
        const { items } = this.problem;
        const order = items.flatMap(({ lanes }, i) => (lanes.includes(lane) ? [i] : [])).sort((a, b) => items[b]!.size - items[a]!.size);
        for (const item of order) {
            const { size, count } = items[item]!;
            const before = reached.slice();
            const times = new Uint32Array(longest + 1);
            this.effort.spent += 4 * longest * STEPS.cell;
            for (let at = 0; at + size <= longest && graph.arcs.length <= most; at++) {
                if (!reached[at]) continue;
                const used = before[at] ? 0 : times[at]!;
                this.effort.spent += graph.ends.size * STEPS.placed * 2;
                if (used >= count || !fits(size, values[item]!, at)) continue;
                graph.arcs.push({ from: at, to: at + size, item });
                if (!reached[at + size] || (!before[at + size] && used + 1 < times[at + size]!)) times[at + size] = used + 1;
                reached[at + size] = 1;
            }
        }
    }

    private program(
        graphs: readonly { readonly graph: Graph; readonly sections: ReadonlyMap<number, number> }[], lanes: readonly (Graph | undefined)[],
        kindsOf: readonly (readonly number[])[], families: readonly Family[], counts: Counts, dearest: number,
    ): void {
        const { items, boards, shortestSection } = this.problem;
        for (const { count } of items) this.rows.push({ least: count, most: Infinity });
        const costRow = this.rows.push({ least: -Infinity, most: dearest }) - 1;
        const countRows = counts.sections?.map(({ from, least, most }) => ({ from, row: this.rows.push({ least, most }) - 1 })) ?? [];
        const balances = new Map<string, number>();
        const balance = (family: number, section: number): number => {
            const key = `${family} ${section}`;
            if (!balances.has(key)) balances.set(key, this.rows.push({ least: 0, most: 0 }) - 1);
            return balances.get(key)!;
        };
        const counted = (section: number): [number, number][] =>
            countRows.flatMap(({ from, row }): [number, number][] => (Math.max(section, shortestSection ?? 0) >= from ? [[row, 1]] : []));
        const ends: Map<number, number>[] = [];
        graphs.forEach(({ graph }, f) => { ends[f] = this.arcs(f, graph, section => [[balance(f, section), 1], ...counted(section)]); });
        const laneEnds = lanes.map((graph, i) => {
            if (!graph) return undefined;
            this.lanes.set(i + 1, this.into.length);
            return this.arcs(this.into.length, graph, () => []);
        });
        kindsOf.forEach((kinds, f) => kinds.forEach(board => {
            const { cost, capacity } = boards[board]!;
            this.ways.push({ board, family: f, column: this.columns.length });
            const entries = [[ends[f]!.get(capacity)!, -1] as const, ...cost > 0 ? [[costRow, cost] as const] : []];
            this.columns.push({ cost, entries, least: counts.least[board]!, most: counts.most[board]! });
        }));
        graphs.forEach(({ sections }, f) => {
            for (const [section, slack] of sections) {
                const best = families[f]!.bestRipping(section);
                for (const ripping of families[f]!.rippings!) {
                    const own = families[f]!.bestRipping(section, [ripping]);
                    const used = ripping.flatMap((count, i): [number, number][] => {
                        const row = laneEnds[i]?.get(section);
                        return count > 0 && row !== undefined ? [[row, -count]] : [];
                    });
                    if (own < best - slack || used.length === 0) continue;
                    this.ways.push({ family: f, section, ripping, column: this.columns.length });
                    this.columns.push({ cost: 0, entries: [[balance(f, section), -1], ...used], most: MANY });
                }
            }
        });
    }

    /** The arcs of a graph as columns, each place a row; says which row an end is. */
    private arcs(g: number, graph: Graph, onSection: (section: number) => [number, number][]): Map<number, number> {
        const { items } = this.problem;
        // an arc ends at the next place from where another begins, or where a board or section ends
        const places = [...new Set([...graph.ends, ...graph.arcs.map(({ from }) => from)])].sort((a, b) => a - b).filter(place => place > 0);
        const rows = new Map(places.map(place => [place, this.rows.push({ least: 0, most: 0 }) - 1]));
        const into = new Map<number, Arc[]>(places.map(place => [place, []]));
        const add = (from: number, to: number, what: { item?: number; section?: number }, entries: (readonly [number, number])[], most: number): void => {
            into.get(to)!.push({ from, to, column: this.columns.length, ...what });
            this.columns.push({ cost: 0, entries: [[rows.get(to)!, 1], ...from > 0 ? [[rows.get(from)!, -1] as const] : [], ...entries], most });
        };
        for (const { from, to, item, section } of graph.arcs) {
            const end = nextPlace(places, to);
            if (end === undefined) continue;
            if (item !== undefined) add(from, end, { item }, [[item, 1]], items[item]!.count);
            else add(from, end, { section: section! }, onSection(section!), MANY);
        }
        for (let p = 0; p < places.length; p++) add(p === 0 ? 0 : places[p - 1]!, places[p]!, {}, [], MANY);
        this.into[g] = into;
        return rows;
    }

    /** The boards of a solution. */
    layouts(values: readonly number[]): Layout[] {
        const left = [...values];
        const ripped = new Map<string, Ripping[]>();
        for (const way of this.ways) {
            if ('board' in way) continue;
            const key = `${way.family} ${way.section}`;
            for (let n = values[way.column]!; n > 0; n--) ripped.set(key, [...ripped.get(key) ?? [], way.ripping]);
        }
        return this.ways.flatMap(way => {
            if (!('board' in way)) return [];
            const g = way.family;
            return Array.from({ length: values[way.column]! }, (): Layout => {
                const { picks, sections } = this.path(g, this.problem.boards[way.board]!.capacity, left);
                const strips: StripCut[] = picks.length > 0 && canCut(this.problem.boards[way.board]!, WHOLE) ? [{ lane: WHOLE, picks }] : [];
                // beside a section as long as the board there is no other
                const isOver = sections[0] === this.problem.boards[way.board]!.capacity;
                sections.forEach((size, section) => {
                    const ripping = ripped.get(`${g} ${size}`)?.pop() ?? [];
                    ripping.forEach((count, i) => {
                        const lane = this.lanes.get(i + 1);
                        if (lane === undefined || !this.into[lane]!.has(size)) return;
                        for (let n = 0; n < count; n++) strips.push({ lane: i + 1, picks: this.path(lane, size, left).picks, ...isOver ? {} : { section } });
                    });
                });
                const cut: Cut = { board: way.board, strips, ...sections.length > 0 && !isOver ? { sections } : {} };
                return { ...cut, times: 1 };
            });
        });
    }

    /** Follows a path back from its end, and takes it out. */
    private path(g: number, end: number, left: number[]): { picks: Picks; sections: number[] } {
        const picks = new Map<number, number>();
        const sections: number[] = [];
        for (let at = end; at > 0;) {
            const arc = this.into[g]!.get(at)?.find(({ column }) => left[column]! > 0);
            if (!arc) break;
            left[arc.column]! -= 1;
            if (arc.item !== undefined) picks.set(arc.item, (picks.get(arc.item) ?? 0) + 1);
            if (arc.section !== undefined) sections.push(arc.section);
            at = arc.from;
        }
        return { picks: [...picks].sort(([a], [b]) => a - b), sections };
    }
}

function nextPlace(places: readonly number[], at: number): number | undefined {
    let low = 0, high = places.length;
    while (low < high) { const middle = (low + high) >> 1; if (places[middle]! < at) low = middle + 1; else high = middle; }
    return places[low];
}
