import { knownText, weakest } from '../../cutting/known.ts';
import { besideStrips, leftoversOf } from '../../cutting/leftovers.ts';
import { rippedParts, stripNumbers } from '../../cutting/rips.ts';
import type { Board, BoardPlan, Money, StockPlan, Strip } from '../../cutting/model.ts';
import type { JobSettings, Stock } from '../../job/model.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { roundDown } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import type { Piece } from '../../takeoff/model.ts';
import { boardKnownWords } from '../../measure/lengths-at-hand.ts';
import { titleOf, type House, type HousePlan } from '../house.ts';
import { countText, sizeText, there } from './there.ts';
import { marksText } from '../marks.ts';
import { columns, wrap, type Files, type Paint } from '../look.ts';
import { choiceText } from '../choice.ts';
import { spareText } from '../spare.ts';
import { cleanText } from '../../text/clean-text.ts';
import { standingText } from '../standing.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { TerminalText } from '../../text/fit.ts';
import { terminalParagraphs } from '../../text/terminal.ts';
import { grouped } from '../../plain/groups.ts';
import { capitalized, counted } from '../../plain/words.ts';

const WIDTH = 100;

/** What to buy, what it costs, how good that is known to be, what to cut from each board, and what is left in the end. */
export function humanBoards(plans: readonly HousePlan[], paint: Paint, files: Files): TerminalText {
    return terminalParagraphs([...plans.map(plan => boards(plan, paint, files)), leftText(plans, paint)].filter(lines => lines.length > 0));
}

function boards({ house, plan }: HousePlan, paint: Paint, files: Files): string[] {
    const { job, rooms } = house;
    const show = job.show.value;
    const length = (ticks: number): string => printLength(ticks, show);
    const stockName = stockNames(plan.stocks.map(({ stock }) => stock));
    const nameOf = (piece: Piece): string => (rooms.length > 1 ? piece.id : nameInRoom(piece));
    return [
        paint.strong(`BOARDS TO BUY  ${cleanText(titleOf(job))}`),
        ...wrap(`For ${rooms.map(r => r.room.name).join(', ')}.${plan.stocks.length === 0 ? '' : ` ${capitalized(knownText(weakest(plan)))}.`}`, WIDTH),
        ...wrap(spareText([plan], show), WIDTH),
        ...standingText(rooms, { dont: 'order', lacks: 'its boards are not here' }, paint, WIDTH),
        ...columns(plan.stocks.flatMap(stock => shoppingRows(stock, stockName(stock.stock), show)), [1, 2, 4]).map(line => `  ${line}`),
        paint.strong(`  ${totalText(plan, rooms.every(r => r.takeOff))}`),
        ...plan.unpriced.flatMap(u => wrap(`no price for ${stockName(u.stock)}: ${u.count} x ${length(u.length)} not in the total`, WIDTH - 2)).map(l => paint.warning(`  ${l}`)),
        ...unplacedTexts(plan, files).flatMap(text => wrap(text, WIDTH - 2)).map(l => paint.error(`  ${l}`)),
        '',
        paint.strong('HOW TO CUT THEM'),
        `kerf ${length(job.kerf.value)}, end trim ${length(job.endTrim.value)} a board; lengths between the long points; offcuts after kerf and trim,`,
        `those of ${length(job.shortestOffcut.value)} and more are kept`,
        ...plan.stocks.flatMap(stock => ['', `${paint.strong(stockName(stock.stock))}  ${knownText(stock.known)}`, ...stock.choice ? wrap(choiceText(stock.choice), WIDTH) : [], ...stockCuts(stock, house, nameOf)]),
    ];
}

/** What no board holds; the pieces of one part that it is so for the same reason share a line. */
function unplacedTexts({ unplaced }: BoardPlan, files: Files): string[] {
    const alike = grouped(unplaced, ({ piece: { part, room, stock: { at: { uri, range } } }, reason }) =>
        `${part}, ${room}): ${reason} (see ${files.nameOf(uri)}:${range.start.line + 1})`);
    return [...alike].map(([what, all]) => {
        const others = all.length > 1 ? ` and ${all.length - 1} more` : '';
        return `no board for ${all[0]!.piece.id}${others} (${what}`;
    });
}

function totalText({ costs, unpriced }: BoardPlan, isWhole: boolean): string {
    if (costs.length === 0 && unpriced.length === 0) return isWhole ? 'nothing to buy' : 'no total';
    const sum = costs.length === 0 ? 'no total' : `total ${costs.map(money).join(' + ')}`;
    return unpriced.length > 0 ? `${sum}, without the boards that have no price` : sum;
}

function shoppingRows({ stock, boards: all, buy }: StockPlan, name: string, show: Show): string[][] {
    const rows = [
        ...there(all).map(({ from, count, worth, ...size }) => [String(count), sizeText(stock, size, show), worth ? `${from}, worth ${money(worth)}` : from, '']),
        ...buy.map(p => [String(p.count), sizeText(stock, { length: p.length }, show), p.each ? `at ${money(p.each)}` : 'no price', p.cost ? money(p.cost) : '']),
    ];
    return rows.map(([count, ...rest], i) => [i === 0 ? name : '', `${count} x`, ...rest]);
}

/** Each board: its length, then from one end what is cut off it, pieces of one length together, and what is left. */
function stockCuts({ stock, boards }: StockPlan, { job, rooms }: House, nameOf: (piece: Piece) => string): string[] {
    const { show: { value: show }, cutTo: { value: step } } = job;
    const known = ({ from, measured, length, width }: Board): string[] =>
        (from === 'on hand' ? [measured ?? '', cleanText(boardKnownWords(rooms.map(({ room }) => room), { stock, measured, length, width }))] : []);
    const there = (b: Board): string => [`${sizeText(stock, b, show)}${b.from === 'bought' ? '' : ` ${b.from}`}`, ...known(b).filter(words => words !== '')].join(', ');
    const heads = columns(boards.map(b => [`#${b.number}`, there(b), '|']));
    const indent = Math.max(...heads.map(head => head.length)) + 2;
    return boards.flatMap((board, i) => wrap([boardText(board, step, show, nameOf), ...besideText(board, stock, job)].join('; '), WIDTH - indent)
        .map((line, j) => (j === 0 ? `  ${heads[i]!.slice(0, -1)} ${line}` : ' '.repeat(indent) + line)));
}

function boardText(board: Board, step: Ticks, show: Show, nameOf: (piece: Piece) => string): string {
    const numbers = stripNumbers(board);
    const whole = board.strips.filter(strip => strip.rippedTo === undefined).map(strip => stripText(strip, step, show, nameOf)).filter(words => words !== '');
    const parts = rippedParts(board).map(({ section, strips }) => {
        // a strip on hand that is as wide as its pieces
        if (strips.length === 1 && strips[0]!.rippedTo === board.width) return stripText(strips[0]!, step, show, nameOf);
        const widths = [...new Set(strips.map(strip => strip.rippedTo!))];
        return [
            `${section === undefined ? '' : `cut off ${printLength(section, show)}, `}rip${board.crosswise ? ' across the sheet' : ''} ${widths.map(width => `${counted(strips.filter(strip => strip.rippedTo === width).length, 'strip')} of ${printLength(width, show)}`).join(', ')}`,
            ...strips.map(strip => `strip ${numbers[board.strips.indexOf(strip)]}: ${stripText(strip, step, show, nameOf)}`),
        ].join('; ');
    });
    return [...whole, ...parts].join('; ');
}

function besideText(board: Board, stock: Stock, job: JobSettings): string[] {
    return besideStrips(board, stock, job).map(({ width, length }) => `keep a strip of ${printLength(width, job.show.value)} beside${board.sections ? ` it, ${printLength(length, job.show.value)} long` : ''}`);
}

/** The offcut is rounded down, so that it is never promised too long. */
function stripText({ pieces, offcut, kept }: Strip, step: Ticks, show: Show, nameOf: (piece: Piece) => string): string {
    const left = roundDown(offcut, step);
    const lengths = [...new Set(pieces.map(each => each.cutOverall))];
    return [
        ...lengths.map(length => {
            const alike = pieces.filter(p => p.cutOverall === length);
            return `${alike.length} x ${printLength(length, show)}: ${marksText(alike, nameOf)}`;
        }),
        ...(left > 0 ? [`${kept ? 'keep' : 'offcut'} ${printLength(left, show)}`] : []),
    ].join(' | ');
}


function money({ amount, currency }: Money): string {
    return printMoney(amount, currency);
}

function leftText(plans: readonly HousePlan[], paint: Paint): string[] {
    const all = leftoversOf(plans.map(({ plan, house: { job } }) => ({ plan, job })));
    if (all.length === 0) return [];
    const stockName = stockNames(all.map(({ stock }) => stock));
    const names = columns(all.map(({ stock }) => [stockName(stock), '|']));
    const indent = Math.max(...names.map(name => name.length)) + 1;
    return [
        paint.strong('LEFT WHEN ALL IS CUT'), '`cofferwright boards --leftovers` prints it as lines for the stocks of the next job',
        ...all.flatMap(({ show, pieces, strips }, i) => {
            const texts = [...pieces.map(left => countText(left, show)), ...strips.map(strip => `${countText(strip, show)} (${printLength(strip.width, show)} wide)`)];
            return wrap(texts.join(', '), WIDTH - indent).map((line, j) => (j === 0 ? `  ${names[i]!.slice(0, -1)}${line}` : ' '.repeat(indent + 1) + line));
        }),
    ];
}
