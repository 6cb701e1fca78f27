import type { Counts, Worth } from './bound.ts';
import { STEPS, type Effort } from './effort.ts';
import type { CuttingProblem } from './problem.ts';
import { Simplex } from './simplex.ts';

/** A limit with its numbers as the small program takes them: to one of cost. */
interface Limit extends Worth { readonly column: { readonly cost: number; readonly entries: readonly (readonly [row: number, value: number])[] } }

/**
 * What is known of how many boards are enough. For any worth of the pieces, the boards of a plan carry together at least what all pieces are worth,
 * and none carries more than its best content: a limit that every plan keeps to, and that costs next to nothing to ask once it is there (J. F. Benders,
 * "Partitioning procedures for solving mixed-variables programming problems", Numerische Mathematik 4, 1962). The limits together make a program of
 * as many figures as there are kinds of boards.
 */
export class Enough {
    private readonly limits: Limit[] = [];
    private readonly costs: readonly number[];

    constructor(problem: CuttingProblem, private readonly effort: Effort) {
        this.costs = problem.boards.map(({ cost }) => cost);
    }

    add(worth: Worth): void {
        const { pieces, boards, scale } = worth;
        const entries = [...boards.map((each, k) => [k, each / scale] as const), [this.costs.length, pieces / scale] as const];
        this.limits.push({ ...worth, column: { cost: -pieces / scale, entries } });
    }

    /**
     * About the cheapest numbers of boards, in parts, that every limit allows; undefined where none within `counts` costs at most `dearest`: that alone is
     * reckoned in whole numbers.
     */
    cheapest({ least, most }: Counts, dearest: number): readonly number[] | undefined {
        const { costs, limits } = this;
        // turned round: what the limits are worth, so that no board comes to more than it costs; the last row keeps that finite where there is no answer
        // boards on hand cost nothing, and many limits may meet in one point: by a hair apart they do not, and it does not go round in circles
        const apart = costs.map((cost, k) => cost + HAIR * Math.max(1, dearest) * (k + 1));
        const program = new Simplex([], [...apart, FAR * Math.max(1, dearest)], Math.max(1, dearest), this.effort);
        for (const { column } of limits) program.add(column);
        costs.forEach((_, k) => {
            program.add({ cost: -least[k]!, entries: [[k, 1]] });
            program.add({ cost: Math.min(most[k]!, MANY), entries: [[k, -1]] });
        });
        this.effort.spent += STEPS.pass / 4 + limits.length * STEPS.look / 2;
        const { values, duals } = program.solve(MOST_PIVOTS);
        const boards = costs.map((_, k) => Math.max(0, -duals[k]!));
        const cost = costs.reduce((sum, each, k) => sum + each * boards[k]!, -duals[costs.length]! * FAR * Math.max(1, dearest));
        return cost > dearest && this.isDearer(values, { least, most }, dearest) ? undefined : boards;
    }

    /** Whether what is told by the limits, each taken so many times, comes to more than `dearest` for any number of boards within `counts`. */
    private isDearer(times: ArrayLike<number>, { least, most }: Counts, dearest: number): boolean {
        const used = this.limits.map((limit, j) => ({ ...limit, times: BigInt(Math.max(0, Math.round(times[j]! * FINE))) })).filter(each => each.times > 0n);
        // all limits to one scale: each is a power of two
        const scale = Math.max(1, ...used.map(each => each.scale)), unit = BigInt(FINE) * BigInt(scale);
        this.effort.spent += 1.5 * (used.length + 1) * this.costs.length * STEPS.look;
        const sum = (of: (limit: Limit) => number): bigint =>
            used.reduce((total, limit) => total + limit.times * BigInt(of(limit)) * BigInt(scale / limit.scale), 0n);
        const bound = this.costs.reduce((total, cost, k) => {
            const over = BigInt(cost) * unit - sum(({ boards }) => boards[k]!);
            return total + over * BigInt(over > 0n ? least[k]! : most[k]!);
        }, sum(({ pieces }) => pieces));
        return bound > BigInt(dearest) * unit;
    }
}

/** Whether so many boards of each kind cannot carry all pieces. */
export function areTooFew({ pieces, boards }: Worth, counts: readonly number[]): boolean {
    return counts.reduce((sum, n, k) => sum + BigInt(n) * BigInt(boards[k]!), 0n) < BigInt(pieces);
}

/** Part of the cost. */
const HAIR = 1e-8;
/** By how much more than any plan it costs to leave all of it uncut. */
const FAR = 1e6;
/** In place of no end. */
const MANY = 1e9;
/** Parts that one time is divided into. */
const FINE = 2 ** 20;
const MOST_PIVOTS = 200;
