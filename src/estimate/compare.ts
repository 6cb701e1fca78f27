import type { BoardPlan } from '../cutting/model.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { PARTS, type Part, type Piece } from '../takeoff/model.ts';
import type { Estimate } from './model.ts';
import { stockNames } from '../job/stock-names.ts';

/** A job as it is and as it would be. */
export interface Side { readonly pieces: readonly Piece[]; readonly plan: BoardPlan; readonly estimate: Estimate }

/** What changes from one to the other: only what differs is listed. */
export interface Comparison {
    readonly total: Change<Rational>;
    readonly minutes: Change<Rational>;
    readonly days?: Change<Rational>;
    readonly boards: readonly ({ readonly stock: string; readonly length: Ticks } & Change<number>)[];
    readonly pieces: readonly ({ readonly part: Part; readonly feet: Change<Ticks> } & Change<number>)[];
}
export interface Change<T> { readonly before: T; readonly after: T }

export function compare(before: Side, after: Side): Comparison {
    const days = before.estimate.days && after.estimate.days && { before: before.estimate.days, after: after.estimate.days };
    return {
        total: { before: before.estimate.sums.total, after: after.estimate.sums.total },
        minutes: { before: before.estimate.minutes, after: after.estimate.minutes },
        ...days && { days },
        boards: boardChanges(before.plan, after.plan), pieces: pieceChanges(before.pieces, after.pieces),
    };
}

function boardChanges(before: BoardPlan, after: BoardPlan): Comparison['boards'] {
    const nameOf = stockNames([before, after].flatMap(({ stocks }) => stocks.map(({ stock }) => stock)));
    const bought = (plan: BoardPlan) => plan.stocks.flatMap(({ stock, buy }) => buy.map(({ length, count }) => ({ stock: nameOf(stock), length, count })));
    const was = bought(before), is = bought(after);
    const rows = new Map([...was, ...is].map(({ stock, length }) => [`${stock} ${length}`, { stock, length }]));
    const countIn = (list: typeof was, row: { stock: string; length: Ticks }): number =>
        list.filter(other => other.stock === row.stock && other.length === row.length).reduce((sum, { count }) => sum + count, 0);
    return [...rows.values()].map(row => ({ ...row, before: countIn(was, row), after: countIn(is, row) }))
        .filter(row => row.before !== row.after)
        .sort((a, b) => (a.stock < b.stock ? -1 : a.stock > b.stock ? 1 : b.length - a.length));
}

function pieceChanges(before: readonly Piece[], after: readonly Piece[]): Comparison['pieces'] {
    const longOf = (pieces: readonly Piece[]): Ticks => pieces.reduce((sum, piece) => sum + piece.cutBack, 0);
    return PARTS.map(part => {
        const was = before.filter(piece => piece.part === part), is = after.filter(piece => piece.part === part);
        return { part, before: was.length, after: is.length, feet: { before: longOf(was), after: longOf(is) } };
    }).filter(row => row.before !== row.after || row.feet.before !== row.feet.after);
}
