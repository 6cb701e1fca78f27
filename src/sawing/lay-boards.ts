import type { Board, BoardPlan, Strip } from '../cutting/model.ts';
import type { JobSettings, Stock } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { comparePieces } from '../takeoff/piece-order.ts';
import { blankLength } from '../cutting/blank.ts';
import { rippedParts, stripNumbers } from '../cutting/rips.ts';
import type { LaidBoard, LaidPiece, LaidSection, LaidStrip } from './model.ts';
import { stockNames } from '../job/stock-names.ts';
import { degreesOf, endsFromTheLeft, liesFlat, sawDegrees } from '../takeoff/ends.ts';
import type { Piece } from '../takeoff/model.ts';
import { compareEach } from '../plain/order.ts';
import { mayBeCutOnce } from '../cutting/cut-once.ts';

/**
 * Every board of a plan with the readings of a tape hooked on its left end. On a board the longest piece lies first, so
 * that the stop, set from long to short, always finds its piece at the end that is being cut.
 */
export function layBoards(plan: BoardPlan, job: JobSettings): LaidBoard[] {
    const nameOf = stockNames(plan.stocks.map(({ stock }) => stock));
    return plan.stocks.flatMap(({ stock, boards }) => boards.map(board => layBoard(board, stock, nameOf(stock), job)));
}

function boardName(stock: Pick<Stock, 'name'>, number: number): string {
    return `${stock.name} #${number}`;
}

function layBoard(board: Board, stock: Stock, name: string, job: JobSettings): LaidBoard {
    const taken = Math.max(0, ...rippedParts(board).map(({ strips }) => strips.reduce((sum, { rippedTo }) => sum + (rippedTo ?? 0) + job.kerf.value, 0)));
    const width = board.width ?? stock.width?.value.ticks;
    const [along, across] = board.crosswise && width !== undefined ? [width, board.length] : [board.length, width ?? taken];
    const trim = Math.floor(job.endTrim.value / 2);
    const numbers = stripNumbers(board);
    const strips = board.strips.map((strip, i): { strip: LaidStrip; sections: readonly LaidSection[] } => {
        if (strip.section !== undefined) return { strip: layStrip(strip, numbers[i]!, board.sections![strip.section - 1]!, 0, [], job).strip, sections: [] };
        return layStrip(strip, numbers[i]!, along, trim, strip.rippedTo === undefined ? board.sections ?? [] : [], job);
    });
    return {
        name: boardName({ name }, board.number), stock, number: board.number, length: board.length, along,
        ...width !== undefined && { across }, from: board.from,
        strips: strips.map(({ strip }) => strip), sections: strips.flatMap(({ sections }) => sections).sort((a, b) => a.number - b.number),
        besideStrips: taken === 0 ? 0 : Math.max(0, across - taken),
    };
}

/**
 * The longest first, be it a piece or a section: so the stop, set from long to short, finds each at the end that is being cut. Then what is cut to its
 * miters there, when all that is cut square is off: by the angle, the steepest first, and again the longest first.
 */
function layStrip(
    strip: Strip, number: number, along: Ticks, trim: Ticks, sections: readonly Ticks[], job: JobSettings,
): { strip: LaidStrip; sections: readonly LaidSection[] } {
    const kerf = job.kerf.value;
    let at = trim;
    const laid: LaidPiece[] = [];
    const off: LaidSection[] = [];
    const once = cutOnce(strip, job), blanks = strip.pieces.filter(piece => !once.has(piece)).map(piece => ({ piece, length: blankLength(piece, job) }));
    const all = [
        ...[...blanks, ...sections.map((length, i) => ({ section: i + 1, length }))]
            .sort((a, b) => b.length - a.length || ('piece' in a && 'piece' in b ? comparePieces(a.piece, b.piece) : 'piece' in a ? -1 : 'piece' in b ? 1 : a.section - b.section)),
        ...[...once].map(piece => ({ piece, length: blankLength(piece, job) })),
    ];
    for (const each of all) {
        const from = at, to = at + each.length;
        if ('piece' in each) laid.push({ piece: each.piece, from, to, ...once.has(each.piece) && { once: true }, ends: endsFromTheLeft(each.piece) });
        else off.push({ number: each.section, from, to });
        at = to + kerf;
    }
    return {
        strip: {
            number, ...strip.rippedTo !== undefined && { rippedTo: strip.rippedTo }, ...strip.section !== undefined && { section: strip.section },
            along, trim, pieces: laid, offcut: strip.offcut, kept: strip.kept, rest: along - at,
        },
        sections: off,
    };
}

/**
 * What is cut to its miters straight from a board or strip, in the order it lies there. Its edges have to be run before, so what is left there by then has
 * to be run alike over its whole length; and what is ripped once it is cut to length has to be cut square for that.
 */
function cutOnce({ pieces, rippedTo }: Strip, job: JobSettings): Set<Piece> {
    const able = pieces.filter(piece => mayBeCutOnce(piece, job) && (rippedTo !== undefined || piece.work.every(({ kind }) => kind !== 'rip')));
    const edges = new Set(able.map(({ work }) => JSON.stringify(work.filter(({ kind }) => kind === 'rabbet' || kind === 'ease'))));
    if (edges.size > 1) return new Set();
    const order = (piece: Piece): number[] => [-sawDegrees(piece.ends[0]), -piece.cutOverall, Number(liesFlat(piece)), -degreesOf(piece.ends[0])];
    return new Set(able.sort((a, b) => compareEach(order(a), order(b)) || comparePieces(a, b)));
}
