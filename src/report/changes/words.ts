import type { CutWood, HouseChange, LineChange, LineThere, Pair, RoomChange } from '../../changes/model.ts';
import { tapeOf } from '../../job/tape.ts';
import type { JobSettings } from '../../job/model.ts';
import { PARTS, PLURAL, type Part } from '../../job/part.ts';
import { stockNames } from '../../job/stock-names.ts';
import { capitalized, counted } from '../../plain/words.ts';
import { grouped } from '../../plain/groups.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, printMark, printRun } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { comparePieces } from '../../takeoff/piece-order.ts';
import type { Piece } from '../../takeoff/model.ts';
import { daysText, hoursText } from '../estimate/words.ts';

const ARROW = '→';

/** A house in both states, or in one, with what every line of a report needs of it. */
export function jobOf({ before, after }: HouseChange): JobSettings {
    return (after ?? before)!.job;
}

export function isSame({ rooms, pieces, findings, before, after, price }: HouseChange): boolean {
    return Boolean(before && after) && rooms.every(room => room.isSame && room.renamedFrom === undefined)
        && pieces.same.length === piecesOf(after).length && pieces.gone.length === 0
        && findings.come.length + findings.gone.length === 0 && (price?.difference.equals(0) ?? true);
}
function piecesOf(house: HouseChange['after']): readonly Piece[] {
    return house?.rooms.flatMap(({ takeOff }) => takeOff?.pieces ?? []) ?? [];
}

/** What follows where a room is laid out in one state alone. */
const UNKNOWN = ': nobody can tell what becomes of its pieces, nor what the change costs';

/** What is otherwise of a room's ceiling, in words; `line`: where it is a line that is otherwise. */
export interface RoomWords { readonly words: string; readonly line?: LineChange; readonly wall?: string }

/** What is otherwise of a room's ceiling, a line for each. */
export function roomLines(room: RoomChange, job: JobSettings): string[] {
    return roomWords(room, job).map(({ words }) => words);
}

export function roomWords(room: RoomChange, job: JobSettings): RoomWords[] {
    const { before, after, renamedFrom, walls, lines, coffers } = room, tape = tapeOf(job), mark = (ticks: Ticks): string => printMark(ticks, tape);
    const plain = (words: string): RoomWords => ({ words });
    if (!after) return [plain('is gone')];
    if (!before) return [plain(`is new: ${coffers ? cofferText(coffers.after, mark) : 'not laid out'}`)];
    const wallText = ({ wall, before: was, after: is }: RoomChange['walls'][number]): string => was === undefined ? `wall ${wall}, ${mark(is!)}, is new`
        : is === undefined ? `wall ${wall}, ${mark(was)}, is gone` : `wall ${wall}: ${mark(is)} instead of ${mark(was)}`;
    return [
        ...renamedFrom === undefined ? [] : [plain(`was called ${renamedFrom}`)],
        ...after.takeOff ? [] : [plain(`cannot be laid out as it is now${UNKNOWN}`)], ...before.takeOff ? [] : [plain(`could not be laid out before${UNKNOWN}`)],
        ...walls.map(change => ({ words: wallText(change), wall: change.wall })), ...lines.map(line => ({ words: lineText(line, mark), line })),
        ...coffers ? [plain(`coffers: ${cofferText(coffers.after, mark)} instead of ${cofferText(coffers.before, mark)}`)] : [],
    ];
}

function cofferText({ count, acrossNorth, acrossEast }: NonNullable<RoomChange['coffers']>['after'], mark: (ticks: Ticks) => string): string {
    const size = ([least, most]: readonly [Ticks, Ticks]): string => (mark(least) === mark(most) ? mark(least) : `${mark(least)} to ${mark(most)}`);
    return count === 0 ? 'none' : `${count} of ${size(acrossNorth)} by ${size(acrossEast)}`;
}

function lineText({ runs, before, after, moved }: LineChange, mark: (ticks: Ticks) => string): string {
    const place = ({ center }: LineThere): string => `${mark(center)} from the ${runs === 'north-south' ? 'west' : 'north'}`;
    if (!before) return `line ${after!.name} is new, ${place(after!)}: ${beamText(after!, mark)}`;
    if (!after) return `line ${before.name} is gone, ${place(before)}`;
    const way = runs === 'north-south' ? moved > 0 ? 'east' : 'west' : moved > 0 ? 'south' : 'north';
    const parts = [
        before.name === after.name ? '' : `was line ${before.name}`,
        moved === 0 ? '' : mark(Math.abs(moved)) === mark(0) ? `moves by less than a mark of the tape to the ${way}` : `moves ${mark(Math.abs(moved))} to the ${way}, to ${place(after)}`,
        before.from === after.from && before.to === after.to ? '' : `runs from ${after.from} to ${after.to} instead of from ${before.from} to ${before.to}`,
        before.beam === after.beam && before.depth === after.depth && before.width === after.width ? '' : `${beamText(after, mark)} instead of ${beamText(before, mark)}`,
        before.through === after.through ? '' : after.through ? 'its bottom runs through' : 'its bottom no longer runs through',
    ];
    return `line ${after.name}: ${parts.filter(part => part !== '').join('; ')}`;
}

function beamText({ beam, depth, width }: LineThere, mark: (ticks: Ticks) => string): string {
    return `${beam}, ${mark(depth)} deep and ${mark(width)} wide`;
}

/** How many pieces of each part fare how; the last row is their sum. */
export const FARES = ['the same', 'elsewhere', 'from an old one', 'new', 'no longer wanted'] as const;
export function pieceRows({ pieces }: HouseChange): (readonly [string, ...number[]])[] {
    const lists: readonly (readonly Piece[])[] = [pieces.same.map(after), pieces.moved.map(after), pieces.from.map(after), pieces.fresh, pieces.gone];
    const rows = PARTS.map(part => [PLURAL[part], ...lists.map(list => list.filter(piece => piece.part === part).length)] as const)
        .filter(([, ...counts]) => counts.some(count => count > 0));
    return [...rows, ['together', ...lists.map(list => list.length)]];
}
function after(pair: Pair): Piece {
    return pair.after;
}

/** Pieces that fare alike, in words: `side of poplar-1x8: 3' 6 5/8", new`. Those of the state before where they are wanted no more. */
interface PieceWords { readonly words: string; readonly pieces: readonly Piece[]; readonly isGone: boolean }

/** `4 x side of poplar-1x8: 3' 6 5/8" → 3' 4 1/4"`, alike pieces together. */
export function pieceLines(house: HouseChange, job: JobSettings): string[] {
    return pieceWords(house, job).map(({ words, pieces }) => `${pieces.length} x ${words}`);
}

export function pieceWords({ pieces }: HouseChange, job: JobSettings): PieceWords[] {
    const nameOf = stockNames([...pieces.from.map(after), ...pieces.fresh, ...pieces.gone].map(({ stock }) => stock));
    const size = ({ cutOverall }: Piece): string => printLength(cutOverall, job.show.value);
    const told = (list: readonly Piece[], words: (piece: Piece) => string, isGone = false): PieceWords[] =>
        [...grouped([...list].sort(comparePieces), words)].map(([text, own]) => ({ words: text, pieces: own, isGone }));
    const froms = new Map(pieces.from.map(pair => [pair.after, pair.before]));
    return [
        ...told(pieces.from.map(after), piece => {
            const old = froms.get(piece)!, other = old.part === piece.part ? '' : ` ${old.part}`;
            const width = (of: Piece): string => printLength(of.width, job.show.value), rip = old.width === piece.width ? '' : `, ripped from ${width(old)} to ${width(piece)}`;
            return `${piece.part} of ${nameOf(piece.stock)}: ${size(piece)}, from${other} ${size(old)}${rip}`;
        }),
        ...told(pieces.fresh, piece => `${piece.part} of ${nameOf(piece.stock)}: ${size(piece)}, new`),
        ...told(pieces.gone, piece => `${piece.part} of ${nameOf(piece.stock)}: ${size(piece)}, no longer wanted`, true),
    ];
}

/** What becomes of a piece that is cut. */
export function fateText({ fate, into, length, room }: CutWood, job: JobSettings): string {
    const name = into ? (into.room === room ? into.id.slice(room.length + 1) : into.id) : '', show = job.show.value;
    switch (fate) {
        case 'keep': return 'stays as it is';
        case 'elsewhere': return `goes in as ${name}, as it is`;
        case 'trim': {
            const off = length - into!.cutOverall;
            if (off >= job.shortestOffcut.value) return `becomes ${name}: cut it to ${printLength(into!.cutOverall, show)}, with an offcut of ${printLength(off, show)}`;
            return `becomes ${name}: trim ${off === 0 ? 'its ends' : `${printLength(off, show)} off`}`;
        }
        case 'rip': return `becomes ${name}: rip it to ${printLength(into!.width, show)}, cut it to ${printLength(into!.cutOverall, show)}`;
        case 'offcut': return 'is wanted nowhere: keep it as an offcut';
        case 'lost': return `is wanted nowhere, and is shorter than an offcut worth keeping, ${printLength(job.shortestOffcut.value, show)}`;
    }
}

/** Boards, pieces, hours, days and money, before and after: only what differs. */
export function comparisonRows({ comparison, after: house }: HouseChange, job: JobSettings): string[][] {
    if (!comparison || !house) return [];
    const { boards, minutes, days, total } = comparison, { currency } = house.priced.estimate, show = job.show.value;
    const row = (what: string, was: string, is: string): string[][] => (was === is ? [] : [[what, was, ARROW, is]]);
    return [
        ...boards.flatMap(({ stock, length, before: was, after: is }) => row(`${stock} ${printLength(length, show)}`, counted(was, 'board'), counted(is, 'board'))),
        ...comparison.pieces.flatMap(({ part, before: was, after: is, feet }) => row(capitalized(PLURAL[part as Part]), `${counted(was, 'piece')}, ${printRun(feet.before, show)}`, `${counted(is, 'piece')}, ${printRun(feet.after, show)}`)),
        ...row('Hours', hoursText(minutes.before), hoursText(minutes.after)), ...days ? row('Days', daysText(days.before), daysText(days.after)) : [],
        ...row('Total', printMoney(total.before, currency), printMoney(total.after, currency)),
    ];
}

/** The lines that make the price of the change, and their sum. */
export function priceRows({ price, comparison }: HouseChange): string[][] {
    if (!price || !comparison) return [];
    const { currency, difference, inVain, saved, workInVain, total, atOldRates } = price;
    const money = (amount: typeof total): string => printMoney(amount, currency);
    return [
        ['the new total less the old', `${money(comparison.total.after)} less ${money(comparison.total.before)}`, money(difference)],
        ...inVain.equals(0) ? [] : [['wood that was cut for what is wanted no more', 'at what the yard asks for so much of it', money(inVain)], ['what of it is used for something else', 'the same way', money(saved.neg())]],
        ...workInVain ? [['what cutting it took', `${counted(workInVain.pieces, 'piece')}, ${hoursText(workInVain.minutes)}, at what an hour costs`, money(workInVain.amount)]] : [],
        ['the change costs', '', money(total)],
        ...atOldRates && !atOldRates.equals(total) ? [['with the labor and the bid as they were', 'boards as they cost now', money(atOldRates)]] : [],
    ];
}
