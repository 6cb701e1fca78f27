import type { BoardPlan } from '../cutting/model.ts';
import { Rational } from '../quantity/rational.ts';
import type { Piece } from '../takeoff/model.ts';
import type { PricedRoom } from './labor.ts';
import type { MaterialLine } from './model.ts';

/** An amount divided in proportion to weights, exactly; evenly where none of them weighs anything. */
export function divided(amount: Rational, weights: readonly Rational[]): Rational[] {
    const all = weights.reduce((sum, weight) => sum.add(weight), ZERO);
    return weights.map(weight => all.equals(0) ? amount.div(weights.length) : amount.mul(weight).div(all));
}

/**
 * What of the boards' price goes to each part of the work: boards are bought for all rooms together, and of each stock the parts bear
 * as much as the faces of their pieces are of all that come out of it.
 */
export function materialsByPart(lines: readonly MaterialLine[], plan: BoardPlan, parts: readonly { readonly rooms: readonly PricedRoom[] }[]): Rational[] {
    const sums = parts.map(() => ZERO);
    const partOf = new Map<Piece, number>(parts.flatMap(({ rooms }, i) =>
        rooms.flatMap(({ takeOff }) => takeOff.pieces.map((piece): [Piece, number] => [piece, i]))));
    for (const { stock, boards } of plan.stocks) {
        const amount = lines.filter(line => line.stock.key === stock.key).reduce((sum, line) => sum.add(line.amount), ZERO);
        const areas = parts.map(() => ZERO);
        for (const piece of boards.flatMap(board => board.strips).flatMap(strip => strip.pieces)) {
            const part = partOf.get(piece);
            if (part !== undefined) areas[part] = areas[part]!.add(new Rational(piece.cutOverall).mul(piece.width));
        }
        divided(amount, areas).forEach((own, i) => { sums[i] = sums[i]!.add(own); });
    }
    return sums;
}

const ZERO = new Rational(0);
