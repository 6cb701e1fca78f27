import { perimetersOf } from '../job/perimeters.ts';
import { planBoards } from '../cutting/first-plan.ts';
import { restToCut } from '../cutting/rest.ts';
import { flanksOf } from '../ceiling/flanks.ts';
import type { Layout } from '../ceiling/model.ts';
import type { JobSettings, Stock } from '../job/model.ts';
import type { OnHand } from '../job/on-hand.ts';
import type { Given } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { sizesOf } from './support/words.ts';
import { counted, listed } from '../plain/words.ts';

const wrong = changed(HALL, 'stock poplar-1x4 { size 1x4 }', `stock poplar-1x4 {
  size     1x4
  on-hand  6 x 10', 1 x 49 1/2"
}`);

export const shortABoard = defineRule({
    name: 'short-a-board',
    severity: 'error',
    title: 'What is on hand is not enough, and the stock is not sold in any length',
    explanation: `
A stock without \`lengths\` cannot be bought: what is on hand is all there is. Old boards, or a run that is milled for the job,
are like that. Then all pieces of a room have to come out of them, each board less the end trim and the kerfs.

Blocking and bottoms of the hall are 4 pieces of 9' 5", each out of a board of 10', and 6 pieces of 48 3/4" and 49 1/2", two out of a
board: 7 boards. With 6 on hand it is one short, and the offcut of 49 1/2" does not help: with 1" of end trim it is 1/4" too short.

Give the \`lengths\` in which it can be bought, find another board, or make the beam of another stock. What is cut and spoiled counts:
a spoiled piece takes its wood twice.`,
    wrong,
    right: changed(wrong, '6 x', '7 x'),
    basis: 'A plan of the boards on hand. It is a good one, not always the best: where it fails by little, look whether you can do better.',
    check: {
        room({ layout, job, pieces }, report) {
            const size = sizesOf(job);
            for (const { value: stock, at, via } of stocksOf(layout)) {
                if (stock.lengths.length > 0 || !stock.onHand.some(({ value }) => value.count > 0)) continue;
                const rest = restToCut([{ room: layout.room, pieces: pieces() }]);
                const wanted = rest.pieces(layout.room).filter(piece => piece.stock.key === stock.key);
                const left = planBoards(wanted, job).unplaced.map(({ piece }) => piece).filter(
                    piece => (piece.stock.width?.value.ticks ?? Infinity) >= Math.min(piece.width, piece.thickness)
                );
                if (left.length === 0) continue;
                const there = rest.now(stock).onHand, whole = there.filter(({ value }) => value.width === undefined);
                const sizeOf = ({ length, width }: OnHand): string => `${size(length)}${width === undefined ? '' : `, ${size(width)} wide`}`;
                report({
                    at, via,
                    message: `${counted(left.length, 'piece')} of ${stock.name} cannot be cut from what is on hand (${named(left)}), and the stock has no \`lengths\` that it is sold in. `
                        + `${wantedText(left, Math.max(...(whole.length > 0 ? whole : there).map(({ value }) => value.length)), stock, job)}${nearMiss(left, whole.map(({ value }) => value.length), job)}`,
                    related: [{ at: stock.onHand[0]!.at, message: `on hand: ${there.map(({ value }) => `${value.count} x ${sizeOf(value)}`).join(', ')}` }],
                });
            }
        },
    },
});

/** Every stock that parts of the room are made of, with the words that say so. */
function stocksOf({ room, sections }: Layout): Given<Stock>[] {
    const parts = [...sections.values()].flatMap(flanksOf).flatMap(
        ({ profile: { blocking, spacers, sides, cleats, bottom, trim } }) => [blocking, spacers, sides, cleats, bottom, trim]
    );
    const all = [...parts, ...perimetersOf(room)].flatMap(part => part?.stock ?? []);
    return all.filter(({ value }, i) => all.findIndex(other => other.value.key === value.key) === i);
}

function named(pieces: readonly Piece[]): string {
    const names = [...new Set(pieces.map(nameInRoom))];
    return names.length <= 3 ? listed(names) : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}

/** How many more boards of the longest kind it takes, where that is long enough. */
function wantedText(left: readonly Piece[], longest: Ticks, stock: Stock, job: JobSettings): string {
    const size = sizesOf(job);
    const sold: Stock = { ...stock, onHand: [], prices: [], lengths: [{ value: longest, at: stock.at, said: false }] };
    const { stocks, unplaced } = planBoards(left.map(piece => ({ ...piece, stock: sold })), job);
    const short = stocks.reduce((sum, { boards }) => sum + boards.length, 0);
    const most = Math.max(...left.map(piece => piece.cutOverall));
    if (unplaced.length > 0) return `The longest is ${size(most)}: with the end trim it needs a board of ${size(most + job.endTrim.value)}.`;
    return `You are ${counted(short, 'board')} of ${size(longest)} short.`;
}

/** The offcut that comes nearest to holding one of the pieces, where it lacks little. */
function nearMiss(left: readonly Piece[], lengths: readonly Ticks[], job: JobSettings): string {
    const size = sizesOf(job);
    let best: { readonly piece: Piece; readonly length: Ticks; readonly lacks: Ticks } | undefined;
    for (const piece of left) {
        for (const length of lengths) {
            const lacks = piece.cutOverall + job.endTrim.value - length;
            if (lacks > 0 && lacks <= job.endTrim.value + 2 * job.kerf.value && (!best || lacks < best.lacks)) best = { piece, length, lacks };
        }
    }
    return best ? ` The ${size(best.length)} piece is ${size(best.lacks)} too short for ${nameInRoom(best.piece)} and the end trim.` : '';
}
