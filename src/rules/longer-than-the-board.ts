import { flanksOf, sectionLooking } from '../ceiling/flanks.ts';
import type { Ceiling, Layout } from '../ceiling/model.ts';
import { longestPiece } from '../ceiling/longest.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import type { JobSettings, Profile, Stock } from '../job/model.ts';
import { blockOf, PARTS_OF_BEAM } from '../job/parts-of.ts';
import { perimetersOf } from '../job/perimeters.ts';
import type { Limit } from '../job/settings.ts';
import { recordWords } from '../job/status.ts';
import { grouped } from '../plain/groups.ts';
import type { Given, Source } from '../provenance/source.ts';
import { roundTo } from '../quantity/round.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { defineRule, type Found } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(changed(HALL, 'stock poplar-1x4 { size 1x4 }', `stock poplar-1x4 {
  size     1x4
  lengths  6', 8'
}`), 'through        north-south', `through        north-south
    splices        where-said`);

export const longerThanTheBoard = defineRule({
    name: 'longer-than-the-board',
    severity: 'error',
    title: 'A piece is longer than any board it could be cut from',
    explanation: `
A piece in one length needs a board that is longer by the end trim: one that the yard sells and that may come into the house
(\`longest-board\`), or one on hand, each for one piece. And it has to get into the room, up the stair: \`longest-piece\`.

A bottom of 9' 5" from boards of at most 8', less 1" of end trim, is 1' 6" too long. Where the grid says \`splices
on-crossings\` what runs through is spliced on a crossing, and sides and trim anywhere: sides behind what dies into them, or out in
the coffer, away from other joints. Otherwise write a splice, buy longer boards, or let the other direction run through.`,
    wrong,
    right: changed(wrong, 'where-said', 'on-crossings'),
    basis: 'Lengths as the stock says them.',
    check: {
        room({ layout, job, pieces }, report) {
            if (!layout.ceiling || nothingIsLong(layout, layout.ceiling)) return;
            for (const long of tooLongForBoards(pieces(), job)) report(foundOf(long, layout.ceiling));
        },
    },
});

/** A piece that no board is there for, and the longest that is to be had of its stock; less than nothing without end, where no board of it may come in. */
interface TooLong {
    readonly piece: Piece; readonly longest: Ticks;
    /** Boards on hand that it would come out of, which as long or longer pieces need. */
    readonly taken: readonly LongBoard[];
}

/**
 * Pieces that are longer than any board that is sold and that no long board on hand is there for. One is told for each stock, the
 * longest: what mends it mends the others.
 */
export function tooLongForBoards(pieces: readonly Piece[], job: JobSettings): TooLong[] {
    // whether a panel comes out of its sheet has a rule of its own
    const long = pieces.filter(({ part, overall, stock }) => part !== 'panel' && overall > longestPiece(stock, job));
    return [...grouped(long, ({ stock }) => stock.key).values()].flatMap(ofStock => {
        const stock = ofStock[0]!.stock, boards = longBoards(stock, job);
        const piece = longestWithoutBoard(ofStock, boards);
        const shorter = boards.filter(({ longest, width }) => width === undefined && longest < (piece?.overall ?? 0)).map(({ longest }) => longest);
        return piece ? [{ piece, longest: Math.max(longestPiece(stock, job), ...shorter), taken: boards.filter(board => holds(board, piece)) }] : [];
    });
}

/**
 * Each long board on hand is there for one piece, the longest board for the longest piece, a strip before it for what is no wider. Of two as long the
 * bottom is told before what it hides.
 */
function longestWithoutBoard(pieces: readonly Piece[], boards: readonly LongBoard[]): Piece | undefined {
    const inOrder = [...pieces].sort((a, b) => b.overall - a.overall || TOLD_FIRST.indexOf(a.part) - TOLD_FIRST.indexOf(b.part));
    const [whole, strips] = [boards.filter(({ width }) => width === undefined), boards.filter(({ width }) => width !== undefined)];
    let next = 0;
    return inOrder.find(piece => {
        const strip = strips.findIndex(board => holds(board, piece));
        if (strip >= 0) strips.splice(strip, 1);
        else if (next >= whole.length || whole[next]!.longest < piece.overall) return true;
        else next++;
        return false;
    });
}
/** What comes out of a board on hand, at the longest; and its width where it is a strip. */
interface LongBoard { readonly longest: Ticks; readonly length: Ticks; readonly width?: Ticks }

function holds({ longest, width = Infinity }: LongBoard, piece: Piece): boolean {
    return longest >= piece.overall && width >= Math.min(piece.width, piece.thickness);
}

const TOLD_FIRST: readonly Piece['part'][] = ['bottom', 'blocking', 'side', 'cleat', 'spacer', 'timber', 'molding', 'band', 'trim'];

/** The longest pieces that come out of what is on hand, the longest first, one a board. */
function longBoards(stock: Stock, job: JobSettings): LongBoard[] {
    const sold = longestPiece(stock, job);
    return stock.onHand.flatMap(({ value }) => {
        const { count, width } = value, longest = Math.min(value.length - Math.max(0, job.endTrim.value), job.longestPiece?.value ?? Infinity);
        const board: LongBoard = { longest, length: value.length, ...width !== undefined && { width } };
        return longest > sold ? Array.from({ length: Math.min(count, MOST_LOOKED_AT) }, () => board) : [];
    }).sort((a, b) => b.longest - a.longest);
}
/** More long boards than a room has lines. */
const MOST_LOOKED_AT = 200;

/** Whether every piece, were it of the shortest stock there is, would come out of it: so it nearly always is, and no cut list has to be made at a keystroke. */
function nothingIsLong({ room, sections }: Layout, ceiling: Ceiling): boolean {
    let longest = 0, least = Infinity, press = 0;
    for (const { overall } of arrangedOf(ceiling).exact.pieces) longest = Math.max(longest, overall);
    const stocks = new Set<Stock | undefined>([ceiling.beams?.profile.trim?.stock?.value, ...perimetersOf(room).map(each => each.stock?.value)]);
    for (const { profile } of [...sections.values()].flatMap(flanksOf)) {
        for (const part of PARTS_OF_BEAM) stocks.add(blockOf(profile, part)?.stock?.value);
        press = Math.max(press, profile.bottom?.press?.value ?? 0);
    }
    for (const stock of stocks) if (stock) least = Math.min(least, longestPiece(stock, room.job));
    return longest + press + 1 <= least;
}

/** `, told by the owner`; nothing where nobody says how it is known. */
function knownOf(limit: Limit): string {
    const known = recordWords(limit);
    return known && `, ${known}`;
}

/** Where there was a board on hand for it. Found by the room: which of its pieces it is cut into, the plan of boards tells. */
function takenWords(taken: readonly LongBoard[], size: (ticks: Ticks) => string): string {
    if (taken.length === 0) return '';
    const longest = size(Math.max(...taken.map(({ length }) => length)));
    if (taken.length === 1) return `, now that the one of ${longest} on hand is needed for another piece`;
    return `, now that the ${taken.length} on hand, ${longest} at the longest, are needed for others`;
}

function foundOf({ piece, longest, taken }: TooLong, ceiling: Ceiling): Found {
    const { job } = ceiling.room, { part, overall } = piece, size = sizesOf(job), step = job.cutTo.value;
    const { at, splices } = saidOf(piece, ceiling), subject = `The ${part} (${placeOf(piece)})`;
    if (longest === -Infinity) {
        return {
            at,
            message: `${subject} cannot come out of any board: the longest that may come into the house is ${size(job.longestBoard!.value)}, and its stock is only sold longer. Have the yard cut it, and add that length.`,
            related: [{ at: job.longestBoard!.at, message: `the longest board that may come in${knownOf(job.longestBoard!)}` }],
        };
    }
    const isAlong = part === 'side' || part === 'molding' || part === 'trim', cut = roundTo(overall, step);
    const undecided = splices && splices.value !== 'on-crossings' && (!isAlong || longest > 0) ? splices : undefined;
    const isCarried = longest === job.longestPiece?.value;
    const toBeHad = isCarried ? `no more than ${size(longest)} gets into the room` : longest > 0 ? `${size(longest)} is the longest you can get${takenWords(taken, size)}` : 'the end trim leaves nothing of any board';
    const isOnWall = part === 'cleat' && piece.line === null && piece.bay === null;
    const wall = piece.line === null && part !== 'trim' ? piece.on : null;
    const mend = undecided && isAlong ? 'Let it be spliced, as it is with `splices on-crossings`, or buy longer boards.'
        : undecided ? undecided.value === 'never' ? 'Let it be spliced, or buy longer boards.' : 'Splice it on a crossing, or give the place.'
        // a cleat on the wall is spliced where the bottom is, whose stock is longer
        : wall !== null && !isOnWall ? `Say where it is spliced, in the block of its wall: \`wall ${wall} … { splice ${size(roundTo(Math.min(overall / 2, longest), TICKS_PER_INCH))} }\`.`
        : isCarried ? 'Divide the room into smaller coffers, or find a way in for it.'
        : isOnWall ? 'Rip the cleats from a stock that is sold longer.' : 'Buy longer boards, or divide the room into smaller coffers.';
    return {
        at,
        message: `${subject} is ${size(Math.max(cut - Math.max(longest, 0), step))} too long to come in one piece: it is ${size(cut)}, and ${toBeHad}. ${mend}`,
        related: isCarried ? [{ at: job.longestPiece!.at, message: `the longest piece that gets there${knownOf(job.longestPiece!)}` }] : [],
        fixes: undecided ? replacing(undecided, 'on-crossings', 'Splice on the crossings') : [],
    };
}

/** The words that a piece hangs on: a splice that its line is said to have, else its stock. And how it is to be spliced, if it comes in pieces at all. */
function saidOf({ part, line: name, on }: Piece, { room, lines, around, beams }: Ceiling): { at: Source; splices?: Given<string> } {
    if (part === 'trim') return { at: stockAt(beams!.profile, part), splices: room.grid.splices };
    const line = lines.find(one => one.name === name), wall = line ? null : around[on ?? ''];
    if (line) {
        const at = line.splices[0]?.said ?? stockAt(sectionLooking(line, on).profile, part);
        // what runs through at the crossings comes in pieces that are spliced there, and sides in some; all else reaches from one beam to the next
        const isSpliced = part === 'side' || part === 'molding' || (part === 'bottom' || part === 'blocking' || part === 'timber') && line.through;
        return { at, splices: isSpliced ? room.lines.find(spec => spec.name === name)?.splicing ?? room.grid.splices : undefined };
    }
    if (wall?.kind === 'half-beam') return { at: stockAt(wall.section.profile, part) };
    const { stock, splices } = wall!.perimeter;
    return { at: stock!.at, splices };
}

/** What a piece is cut from: there is none without. */
function stockAt(profile: Profile, part: Piece['part']): Source {
    return blockOf(profile, part)!.stock!.at;
}

/** `line B, bay 3`, `line 2` of what runs through, `the north wall`, `coffer 5`. */
function placeOf({ part, line, bay, coffer, on }: Piece): string {
    if (part === 'trim') return `coffer ${coffer}`;
    if (line !== null) return bay === null ? `line ${line}` : `line ${line}, bay ${bay}`;
    return part === 'band' ? `the ${on} wall` : `the half beam along the ${on} wall`;
}
