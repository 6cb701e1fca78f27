import { knownText, weakest } from '../../cutting/known.ts';
import { leftoversOf } from '../../cutting/leftovers.ts';
import type { JobSettings } from '../../job/model.ts';
import { tapeOf } from '../../job/tape.ts';
import type { BoardPlan, Money, StockPlan } from '../../cutting/model.ts';
import { boardKnownWords } from '../../measure/lengths-at-hand.ts';
import { textWidth } from '../../drawing/text/measure-text.ts';
import { drawBoard, longestOf, toPaneSvg } from '../../drawing/index.ts';
import type { Group } from '../../drawing/display-list.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, printMark, type Show, type Tape } from '../../quantity/print-length.ts';
import { titleOfHouse } from '../../report/house.ts';
import { choiceText } from '../../report/choice.ts';
import { spareText } from '../../report/spare.ts';
import { howToMiter, namesIn, STAGES, stepWords } from '../../report/sawing/step-words.ts';
import { setUpsText } from '../../report/sawing/human.ts';
import { tapingOf, tapingWords, type LaidBoard, type LaidPiece, type LaidStrip, type SawOrder } from '../../sawing/index.ts';
import { fingerprintOf } from '../../takeoff/cut-alike.ts';
import { toldLengths } from '../../takeoff/ends.ts';
import type { Piece } from '../../takeoff/model.ts';
import { LEAST_LETTERS, type PageContent, type Proving, type RoomOnPage, type Wishes } from '../page.ts';
import { Sources } from '../shared/sources.ts';
import { t } from '../shared/words.ts';
import { boardKey, hash } from './board-key.ts';
import { boardsInSteps, type HouseBoards } from './house-plan.ts';
import { eachInSteps, type Steps } from '../../plain/steps.ts';
import { stockNames, titleOrName } from '../../job/stock-names.ts';
import { grouped } from '../../plain/groups.ts';
import { capitalized } from '../../plain/words.ts';

/** All the boards of a house: what to buy, every board at the saw, and the order of the work. Words are plain text. */
export interface BoardsContent extends PageContent {
    readonly title: string;
    readonly rooms: readonly { readonly uri: string; readonly room: string }[];
    /** What keeps these boards from being cut or bought as they are. */
    readonly troubles: readonly string[];
    readonly buy: readonly BuyRow[];
    readonly total: string;
    /** How good the plan is known to be. */
    readonly known: string;
    readonly isProven: boolean;
    /** What is reckoned for defects. */
    readonly spare: string;
    readonly proving: Proving | null;
    /** The search for cheaper boards was stopped: these are the best found so far. */
    readonly stopped: boolean;
    readonly leftovers: readonly string[];
    readonly setUps: string;
    readonly stocks: readonly StockOnPage[];
    readonly stages: readonly StageOnPage[];
    readonly cautions: readonly string[];
}
interface BuyRow { readonly stock: string; readonly count: number; readonly length: string; readonly from: 'buy' | 'on hand'; readonly each: string; readonly cost: string }
export interface StockOnPage {
    readonly name: string; readonly at: number; readonly size: string; readonly known: string; readonly choice: string; readonly boards: readonly BoardOnPage[];
}
export interface BoardOnPage {
    readonly key: string;
    readonly number: number;
    readonly length: string;
    readonly from: 'bought' | 'on hand' | 'already cut';
    /** Of one on hand: its name, where it was measured, and how its length is known, where that is said. */
    readonly there: string;
    /** The drawing: markup that src/drawing made; nothing where a house has too many boards to draw them all. */
    readonly svg: string;
    /** Pieces that are too small for their names in the drawing, or that are not drawn, with their marks. */
    readonly small: readonly string[];
    readonly pieces: readonly PieceOnPage[];
}
export interface PieceOnPage {
    readonly id: string;
    /** What it is ticked off by, here and in the cut list. */
    readonly tick: string;
    readonly name: string; readonly where: string; readonly length: string; readonly face: string;
    readonly hand: string; readonly measure: string; readonly then: string; readonly marks: string; readonly at: number;
}
export interface StageOnPage {
    readonly title: string; readonly notes: readonly string[]; readonly cautions: readonly string[]; readonly steps: readonly StepOnPage[];
}
interface StepOnPage { readonly number: number; readonly key: string; readonly set: string; readonly lines: readonly string[] }

/** Boards are drawn no narrower than this: their words would not be read. A narrower pane scrolls them. */
const LEAST_WIDTH = 700;
/** So many boards of a house are drawn in a pane; the pieces of others are told with their marks, and paper has them all. Common practice, no source. */
const MOST_DRAWN = 250;
/** CSS pixels a point of the drawing takes, so that its figures are as large as the editor's small print. */
const PIXELS_PER_POINT = 1.5;

/** Boards that are drawn in one step. */
export const BOARDS_IN_STEP = 12;

export function* boardsContentInSteps(room: RoomOnPage, wishes: Wishes, house?: HouseBoards): Steps<BoardsContent> {
    const { plan, order, proving, stopped = false } = house ?? (yield* boardsInSteps(room));
    yield;
    const { job } = room.layout.room;
    const show = job.show.value, stockName = stockNames(plan.stocks.map(({ stock }) => stock), titleOrName);
    const sources = new Sources();
    const width = Math.max(LEAST_WIDTH, (wishes.width ?? 900) - 28) / PIXELS_PER_POINT;
    const nameOf = namesIn(order);
    const drawn = new Set(order.boards.slice(0, MOST_DRAWN)), known = weakest(plan), ofStock = grouped(order.boards, ({ stock }) => stock.key);
    // in their order, since it numbers the sources
    const stocks: StockOnPage[] = [];
    for (const [i, stock] of plan.stocks.entries()) {
        stocks.push({
            name: stockName(stock.stock), at: sources.number(stock.stock.at),
            size: [stock.stock.thickness, stock.stock.width].flatMap(m => (m ? printLength(m.value.ticks, show) : [])).join(' x '),
            known: knownText(stock.known), choice: choiceText(stock.choice),
            boards: yield* eachInSteps(ofStock.get(stock.stock.key) ?? [], BOARDS_IN_STEP, board => ({
                ...boardOnPage(board, drawn.has(board), order, `boards-${i}-${board.number}`, width, nameOf, sources),
                there: thereText(stock, board.number, room),
            })),
        });
    }
    yield;
    const stages = stagesOf(order, nameOf);
    return {
        title: titleOfHouse({ job, rooms: room.house.map(({ layout }) => layout), picked: room.picked ?? false }),
        rooms: room.house.map(({ file, layout }) => ({ uri: file.uri, room: layout.room.name })),
        troubles: troublesOf(plan),
        buy: plan.stocks.flatMap(stock => buyRows(stock, stockName(stock.stock), show)),
        total: totalOf(plan),
        known: plan.stocks.length === 0 ? '' : sentence(knownText(known)),
        isProven: known.as === 'none cheaper', spare: plan.stocks.length === 0 ? '' : spareText([plan], show), proving: proving ?? null, stopped,
        leftovers: leftTexts(plan, job),
        setUps: order.steps.length === 0 ? '' : setUpsText(order.setUps),
        stocks, stages,
        cautions: order.cautions.filter(c => c.at === 'all').map(c => c.words),
        sources: sources.list,
    };
}

function boardOnPage(
    board: LaidBoard, isDrawn: boolean, order: SawOrder, id: string, width: number, nameOf: (piece: Piece) => string, sources: Sources,
): Omit<BoardOnPage, 'there'> {
    const show = order.job.show.value;
    return {
        key: boardKey(board), number: board.number, length: printLength(board.length, show), from: board.from,
        svg: isDrawn ? toPaneSvg(drawBoard(order, board, id, width, LEAST_LETTERS / PIXELS_PER_POINT), attributesOf) : '',
        small: smallOn(board, order, isDrawn ? width : 0, nameOf),
        pieces: board.strips.flatMap((strip: LaidStrip) => strip.pieces.map((laid): PieceOnPage => pieceOnPage(laid, tapeOf(order.job), nameOf, sources))),
    };
}

function thereText({ stock, boards }: StockPlan, number: number, { house }: RoomOnPage): string {
    const board = boards.find(one => one.number === number);
    if (board?.from !== 'on hand') return '';
    return [board.measured ?? '', boardKnownWords(house.map(({ layout }) => layout.room), { ...board, stock })].filter(words => words !== '').join(', ');
}

/** Pieces that the drawing has no room to name, each with its marks. */
function smallOn(board: LaidBoard, order: SawOrder, width: number, nameOf: (piece: Piece) => string): readonly string[] {
    const tape = tapeOf(order.job), longest = longestOf(order), laid = board.strips.flatMap(strip => strip.pieces);
    return laid.filter(({ piece, from, to }) => (to - from) / longest * width < textWidth(nameOf(piece), NAMED.size, 600) + NAMED.beside)
        .map(({ piece, from, to }) => `${nameOf(piece)} ${printMark(from, tape)} – ${printMark(to, tape)}`);
}
/** What a name takes on a board, in points: its letters, and the number of the stop beside it. */
const NAMED = { size: 7.6, beside: 26 };

function pieceOnPage({ piece, from, to }: LaidPiece, tape: Tape, nameOf: (piece: Piece) => string, sources: Sources): PieceOnPage {
    const { show } = tape, { face, back } = toldLengths(piece);
    return {
        id: piece.id, tick: tickOf(piece), name: nameOf(piece), where: piece.where, length: printLength(piece.cutOverall, show),
        face: face === back ? '' : printLength(face, show), hand: piece.hand ?? '', measure: tapingWords(tapingOf(piece)),
        then: piece.machining.join('; '), marks: `${printMark(from, tape)} – ${printMark(to, tape)}`, at: sources.number(piece.source),
    };
}

/** A piece of a drawing is a button: it shows what is known of it below its board. */
function attributesOf({ id, piece, title }: Group): Readonly<Record<string, string>> {
    if (id.startsWith('words.')) return { 'class': 'words-on-board', 'aria-hidden': 'true' };
    if (piece === undefined || title === undefined) return {};
    return { 'class': 'part', 'data-key': piece, 'data-state': 'piece', 'data-value': piece, role: 'button', tabindex: '-1', 'aria-label': title };
}

function stagesOf(order: SawOrder, nameOf: (piece: Piece) => string): StageOnPage[] {
    return STAGES.flatMap(stage => {
        const steps = order.steps.filter(step => stage.has(step));
        if (steps.length === 0) return [];
        const kinds = new Set<string>(steps.map(step => step.do));
        return [{
            title: stage.title, notes: steps[0]!.do === 'miter' ? howToMiter(steps) : [], cautions: order.cautions.filter(c => kinds.has(c.at)).map(c => c.words),
            steps: steps.map(step => {
                const words = stepWords(step, order, nameOf);
                // a step that has changed is another one, whatever its number
                return { number: step.number, key: `step.${hash(JSON.stringify(words))}`, ...words };
            }),
        }];
    });
}

function buyRows({ boards, buy }: StockPlan, name: string, show: Show): BuyRow[] {
    const sizeOf = ({ length, width }: (typeof boards)[number]): string => (
        width === undefined ? printLength(length, show) : t('{0}, {1} wide', printLength(length, show), printLength(width, show)));
    const onHand = grouped(boards.filter(({ from }) => from === 'on hand'), sizeOf);
    return [
        ...buy.map((p): BuyRow => ({ stock: name, count: p.count, length: printLength(p.length, show), from: 'buy', each: p.each ? money(p.each) : '', cost: p.cost ? money(p.cost) : '' })),
        ...[...onHand].map(([length, own]): BuyRow => ({ stock: name, count: own.length, length, from: 'on hand', each: '', cost: '' })),
    ];
}

function totalOf({ costs, unpriced, stocks }: BoardPlan): string {
    if (costs.length === 0) return unpriced.length > 0 || stocks.length === 0 ? '' : t('nothing to buy');
    const sum = costs.map(money).join(' + ');
    return unpriced.length > 0 ? t('{0}, without the boards that have no price', sum) : sum;
}

function troublesOf({ unplaced, unpriced }: BoardPlan): string[] {
    const reasons = grouped(unplaced, ({ reason }) => reason);
    return [
        ...[...reasons].map(([reason, all]) => {
            const { id } = all[0]!.piece;
            return all.length > 1 ? t('No board for {0} and {1} more: {2}.', id, all.length - 1, reason) : t('No board for {0}: {1}.', id, reason);
        }),
        ...unpriced.length === 0 ? [] : [t('There is no price for {0}.', [...new Set(unpriced.map(u => u.stock.title ?? u.stock.name))].join(', '))],
    ];
}

/** What is there when all is cut, the long ones first: the next job's stock. */
function leftTexts(plan: BoardPlan, job: JobSettings): string[] {
    return leftoversOf([{ plan, job }]).flatMap(({ stock: { title, name }, show, pieces, strips }) => [
        ...pieces.map(({ count, length }) => `${count} × ${printLength(length, show)} ${title ?? name}`),
        ...strips.map(({ count, length, width }) => t('{0} × {1} {2}, ripped to {3}', count, printLength(length, show), title ?? name, printLength(width, show))),
    ]);
}

function tickOf(piece: Piece): string {
    return `${piece.id}#${fingerprintOf(piece)}`;
}

function sentence(words: string): string {
    return `${capitalized(words)}.`;
}

function money({ amount, currency }: Money): string {
    return printMoney(amount, currency);
}
