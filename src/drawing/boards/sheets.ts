import { sizeFigure, figure } from '../figures.ts';
import type { LaidBoard, LaidStrip, SawOrder } from '../../sawing/model.ts';
import { atOnce, eachInSteps, type Steps } from '../../plain/steps.ts';
import { line, sheet, text, type Item, type Sheet } from '../display-list.ts';
import { itemsExtent, type Extent } from '../extent.ts';
import { paperFor } from '../paper.ts';
import { sheetAfter } from '../plan/plan.ts';
import { frame, type TitleBlock } from '../sheet/frame.ts';
import { strip } from '../sheet/strip.ts';
import { fitText } from '../text/fit-text.ts';
import { boardAtTheSaw } from './board.ts';
import { boardsStrip } from './boards-strip.ts';
import { boardView, longestOf } from './view.ts';

/** Boards that are drawn in one step. */
const BOARDS_IN_STEP = 24;
const GUTTER = 74;
const PAD = 20;
const STOCK_HEIGHT = 26;
const GAP = 11;

/** What a title block needs besides the order. */
interface BoardSheetWords { readonly job: string; readonly rooms: string; readonly client?: string }

/** Every board of a job on as many sheets as it takes, all at one scale; each sheet can be carried to the saw alone. */
export function drawBoardSheets(order: SawOrder, words: BoardSheetWords): readonly Sheet[] {
    const paper = paperFor(order.job.show.value);
    const { area, strip: beside } = frame(paper, titleBlock(order, words, '', ''));
    const side = strip(boardsStrip(order), beside);
    const pages = atOnce(flow(order, { left: area.left + PAD, top: area.top + PAD, right: area.right - PAD, foot: area.foot - PAD }));
    return pages.map((items, i) => {
        const id = sheetAfter(FIRST_SHEET, i), whole = frame(paper, titleBlock(order, words, id, `of ${pages.length}`));
        return sheet(
            { id, title: `Boards at the saw, ${words.job}, sheet ${i + 1} of ${pages.length}`, description: descriptionOf(order) }, paper,
            [...items, side, whole.group],
        );
    });
}
/** The same on one sheet, as long as it takes: for a screen, or a roll of paper. */
export function* boardRollInSteps(order: SawOrder, words: BoardSheetWords): Steps<Sheet> {
    const base = paperFor(order.job.show.value), id = FIRST_SHEET;
    const { area } = frame(base, titleBlock(order, words, id, ''));
    const within = { left: area.left + PAD, top: area.top + PAD, right: area.right - PAD };
    const items = (yield* flow(order, { ...within, foot: Infinity }))[0] ?? [];
    yield;
    const foot = items.length === 0 ? 0 : itemsExtent(items).foot + PAD + (base.height - area.foot);
    const height = Math.max(base.height, foot);
    const paper = { ...base, height, cssHeight: `${Math.ceil(height)}pt`, cssWidth: `${Math.ceil(base.width)}pt` };
    const whole = frame(paper, titleBlock(order, words, id, ''));
    return sheet({ id, title: `Boards at the saw, ${words.job}`, description: descriptionOf(order) }, paper, [...items, strip(boardsStrip(order), whole.strip), whole.group]);
}
const FIRST_SHEET = 'B-1';

/** Boards one under the other; a stock's heading stays with its first board. */
function* flow(order: SawOrder, area: Extent): Steps<readonly (readonly Item[])[]> {
    const left = area.left + GUTTER;
    const view = boardView(order, left, (area.right - 8 - left) / longestOf(order));
    const pages: Item[][] = [[]];
    let y = area.top;
    let stock: string | undefined;
    const put = (board: LaidBoard, strips: readonly LaidStrip[]): void => {
        const isNew = board.stock.key !== stock;
        const place = (top: number): { readonly items: readonly Item[]; readonly foot: number } => {
            const heads = isNew || top === area.top;
            const from = top + (heads ? STOCK_HEIGHT : 0);
            const laid = boardAtTheSaw(board, view, from, strips);
            return {
                items: [...heads ? stockHeading(order, board, area, top, !isNew) : [], ...gutter(board, area.left, from, order), laid.group], foot: laid.foot,
            };
        };
        // a roll is as long as it takes
        const alone = area.foot === Infinity ? undefined : place(area.top);
        if (alone && alone.foot > area.foot && strips.length > 1) {
            // ripped into more strips than a sheet holds
            const half = Math.ceil(strips.length / 2);
            put(board, strips.slice(0, half));
            put(board, strips.slice(half));
            return;
        }
        let placed = place(y);
        if (alone && placed.foot > area.foot && y > area.top) {
            pages.push([]);
            placed = alone;
        }
        pages.at(-1)!.push(...placed.items);
        y = placed.foot + GAP;
        stock = board.stock.key;
    };
    yield* eachInSteps(order.boards, BOARDS_IN_STEP, board => put(board, board.strips));
    return pages;
}

function stockHeading(order: SawOrder, { stock }: LaidBoard, area: Extent, top: number, goesOn: boolean): Item[] {
    const show = order.job.show.value;
    const size = [stock.thickness, stock.width].flatMap(m => (m ? sizeFigure(m.value.ticks, show) : [])).join(' × ');
    const count = order.boards.filter(b => b.stock.key === stock.key).length;
    const name = fitText(stock.title ?? stock.name, (area.right - area.left) * 0.6, 13, 8, 600);
    const details = [size, `${count} ${count === 1 ? 'board' : 'boards'}`, goesOn ? 'goes on' : ''].filter(Boolean).join(' · ');
    return [
        text([area.left, top + 11], name.text, { size: name.size, weight: 600 }),
        text([area.right, top + 11], details, { size: 8.4, anchor: 'end', tone: 'soft' }),
        line([area.left, top + 16], [area.right, top + 16], 'thin'),
    ];
}

/** Number, length, how it is ripped, and where the board comes from. */
function gutter(board: LaidBoard, left: number, top: number, order: SawOrder): Item[] {
    const show = order.job.show.value;
    const widths = board.strips.flatMap(strip => strip.rippedTo ?? []);
    const rips = [...new Set(widths)].map(width => `rip ${widths.filter(w => w === width).length} × ${sizeFigure(width, show)}`);
    const small = [...rips.length > 2 ? [`rip ${rips.length} widths`] : rips, ...board.from === 'bought' ? [] : [board.from]];
    return [
        text([left, top + 16], `#${board.number}`, { size: 13, weight: 600 }),
        text([left, top + 27], figure(board.length, show), { size: 8.4 }),
        ...small.map((words, i) => text([left, top + 37 + i * 9], words, { size: 7.4, tone: 'soft' })),
    ];
}

function titleBlock(order: SawOrder, { job, rooms, client }: BoardSheetWords, id: string, of: string): TitleBlock {
    const show = order.job.show.value;
    return {
        job, room: rooms, ...client === undefined ? {} : { client }, drawing: ['Boards', 'at the saw'], scale: 'as the tape',
        cutTo: show === 'millimeters' ? `${figure(order.job.cutTo.value, show)} mm` : sizeFigure(order.job.cutTo.value, show),
        lengths: show === 'millimeters' ? 'millimeters' : 'feet, inches', sheet: id, of,
    };
}

function descriptionOf({ boards, setUps }: SawOrder): string {
    const pieces = boards.flatMap(b => b.strips).reduce((sum, s) => sum + s.pieces.length, 0);
    return `${boards.length} boards with ${pieces} pieces, as they lie at the saw, with the readings of a tape hooked on the left end. ${setUps.stops} settings of the stop.`;
}
