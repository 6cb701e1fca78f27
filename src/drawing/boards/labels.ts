import { cutOff } from '../../sawing/cut-off.ts';
import type { LaidBoard, LaidPiece, LaidStrip, SawOrder } from '../../sawing/model.ts';
import { partsTitle, partTitle, PLURAL } from '../../job/part.ts';
import { grouped } from '../../plain/groups.ts';
import { atOnce, eachInSteps, type Steps } from '../../plain/steps.ts';
import { cutAlike } from '../../takeoff/cut-alike.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { comparePieces } from '../../takeoff/piece-order.ts';
import { nameInRoom, placeInRoom } from '../../takeoff/ids.ts';
import type { Work } from '../../takeoff/work.ts';
import { group, line, polygon, rectangle, sheet, text, type Group, type Item, type Point, type Sheet } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { figure, figureWithUnit } from '../figures.ts';
import { PAPERS } from '../paper.ts';
import { fitText } from '../text/fit-text.ts';
import { textWidth } from '../text/measure-text.ts';
import type { EndCut } from '../../takeoff/model.ts';
import { degreesOf, edgesText } from '../../takeoff/ends.ts';

/** Labels on a sheet: a plain grid, to be cut apart along its lines. */
interface LabelGrid { readonly paper: 'letter' | 'A4'; readonly columns: number; readonly rows: number }
const MARGIN = 36;
const PAD = 8;
/** Sheets that are drawn in one step. */
const AT_ONCE = 30;

export function labelGridFor(order: SawOrder): LabelGrid {
    return { paper: order.job.show.value === 'millimeters' ? 'A4' : 'letter', columns: 3, rows: 8 };
}

/**
 * A label for every piece that is still to be cut, in the order in which the pieces come off the saw, so that the next label
 * on the sheet belongs to the next piece; spacers that are cut alike go anywhere, and have one for their bundle, at the first of
 * them. `job` stands small on each. `low`: spacers that a low ceiling wants lower than the rest, by their names, with how high.
 */
export function drawLabels(order: SawOrder, job: string, grid: LabelGrid = labelGridFor(order), low: Low = new Map()): readonly Sheet[] {
    return atOnce(labelsInSteps(order, job, grid, low));
}

/** The same step by step. */
export function* labelsInSteps(order: SawOrder, job: string, grid: LabelGrid = labelGridFor(order), low: Low = new Map()): Steps<readonly Sheet[]> {
    const paper = PAPERS[grid.paper];
    const cell = { width: (paper.width - 2 * MARGIN) / grid.columns, height: (paper.height - 2 * MARGIN) / grid.rows };
    const cuts = bundled(cutsInOrder(order), low);
    const perSheet = grid.columns * grid.rows;
    const sheets = Math.ceil(cuts.length / perSheet);
    yield;
    return yield* eachInSteps(Array.from({ length: sheets }), AT_ONCE, (_, i) => {
        const own = cuts.slice(i * perSheet, (i + 1) * perSheet);
        const labels = own.map((cut, n) => {
            const left = MARGIN + (n % grid.columns) * cell.width, top = MARGIN + Math.floor(n / grid.columns) * cell.height;
            return label(cut, low.get(cut.laid.piece.id), order, job, { left, top, right: left + cell.width, foot: top + cell.height });
        });
        const words = { id: `labels-${i + 1}`, title: `Labels, ${job}, sheet ${i + 1} of ${sheets}`, description: `${own.length} labels, in the order the pieces are cut; spacers cut alike have one for their bundle.` };
        return sheet(words, paper, [...cutLines(grid, cell, Math.ceil(own.length / grid.columns)), ...labels]);
    });
}

type Low = ReadonlyMap<string, Ticks>;
interface Cut { readonly laid: LaidPiece; readonly board: LaidBoard; readonly strip: LaidStrip; readonly step: number }
/** What one label is for: a piece, or a bundle, whose first piece stands for all. */
interface Labeled extends Cut { readonly bundle: readonly Cut[] }

function cutsInOrder({ steps }: SawOrder): Cut[] {
    return steps.flatMap(cutOff).flatMap(({ number: step, takes }) =>
        takes.flatMap(({ board, strip, pieces }) => pieces.map(laid => ({ laid, board, strip, step }))));
}

/**
 * A piece has a label of its own where its name is needed: sides, bottoms, blocking, band, trim and cleats hang in a place with a number,
 * and most differ by hand or slots. A spacer hangs wherever one of its size is wanted; one that is cut lower, where the
 * ceiling hangs low, is another size, and its line and place are told.
 */
function bundled(cuts: readonly Cut[], low: Low): Labeled[] {
    const bundles = grouped(cuts, ({ laid: { piece } }) =>
        (piece.part === 'spacer' ? JSON.stringify([piece.room, piece.stock.key, cutAlike(piece), low.get(piece.id)]) : piece.id));
    return [...bundles.values()].map(bundle => ({ ...bundle[0]!, bundle }));
}

function cutLines({ columns }: LabelGrid, cell: { readonly width: number; readonly height: number }, rows: number): Item[] {
    const right = MARGIN + columns * cell.width, foot = MARGIN + rows * cell.height;
    return [
        ...Array.from({ length: columns + 1 }, (_, i) => line([MARGIN + i * cell.width, MARGIN - 8], [MARGIN + i * cell.width, foot + 8], 'hidden')),
        ...Array.from({ length: rows + 1 }, (_, i) => line([MARGIN - 8, MARGIN + i * cell.height], [right + 8, MARGIN + i * cell.height], 'hidden')),
    ];
}

/** The mark large enough to be read from across the shop; what it is, its lengths and its board around it. */
function label({ laid, board, strip, step, bundle }: Labeled, low: Ticks | undefined, order: SawOrder, job: string, at: Extent): Group {
    const { piece } = laid;
    const show = order.job.show.value;
    const left = at.left + PAD, right = at.right - PAD, width = right - left;
    const isBundle = bundle.length > 1;
    const from = `${isBundle ? boardsOf(bundle) : `${board.name}${strip.rippedTo === undefined ? '' : `, strip ${strip.number}`}`} · stop ${step}`;
    const boardWords = fitText(from, width * 0.62, 7, 5);
    const part = (isBundle ? partsTitle(piece.part) : partTitle(piece.part)).toUpperCase();
    const mark = fitText(isBundle ? `${bundle.length} alike` : placeInRoom(piece), width, 23, 11, 600);
    const length = figureWithUnit(piece.cutOverall, show);
    const after = textWidth(length, 12.5, 600) + 6, beside = piece.part === 'panel' ? `× ${figureWithUnit(piece.width, show)}` : low !== undefined ? `${figureWithUnit(low, show)} high: low ceiling`
        : edgesText(piece, ticks => figure(ticks, show));
    const edges = fitText(beside, width - after - SHAPE.width - 6, 8.6, 5);
    const where = fitText(`${piece.room}: ${isBundle ? low === undefined ? linesOf(bundle) : bundle.map(({ laid }) => placeInRoom(laid.piece)).join(', ') : piece.where}`, width, 7.4, 5.4);
    const work = fitText(piece.work.filter(each => each.kind !== 'rip' || strip.rippedTo === undefined).map(shortWork).join(', '), width * 0.62, 7, 5.4);
    const jobWords = fitText(job, width * 0.36, 6.4, 5);
    return group(`label.${board.name}.${strip.number}.${strip.pieces.indexOf(laid) + 1}`, { piece: piece.id, part: piece.part, title: `${isBundle ? `${bundle.length} ${PLURAL[piece.part]}` : nameInRoom(piece)}, ${length}` }, [
        text([left, at.top + 13], part, { size: 7, weight: 600, spaced: 0.8 }),
        text([right, at.top + 13], boardWords.text, { size: boardWords.size, anchor: 'end', tone: 'soft' }),
        text([left, at.top + 36], mark.text, { size: mark.size, weight: 600 }),
        text([left, at.top + 53], length, { size: 12.5, weight: 600 }),
        ...edges.text === '' ? [] : [text([left + after, at.top + 53], edges.text, { size: edges.size })],
        ...silhouette(laid, right, at.top + 44),
        text([left, at.top + 66], where.text, { size: where.size, tone: 'soft' }),
        ...work.text === '' ? [] : [text([left, at.top + 78], work.text, { size: work.size })],
        text([right, at.top + 78], jobWords.text, { size: jobWords.size, anchor: 'end', tone: 'soft' }),
    ]);
}

/** `poplar-1x6 #1, #4`. */
function boardsOf(bundle: readonly Cut[]): string {
    const boards = [...new Set(bundle.map(({ board }) => board))];
    return [boards[0]!.name, ...boards.slice(1).map(({ number }) => `#${number}`)].join(', ');
}

function linesOf(bundle: readonly Cut[]): string {
    const lines = [...new Set(bundle.map(({ laid }) => laid.piece).sort(comparePieces).map(({ line }) => line))];
    return `${lines.length === 1 ? 'line' : 'lines'} ${lines.join(', ')}`;
}

const SHAPE = { width: 46, height: 9, slope: 8 };

/** What a steep end is drawn at; lesser ones lean less, but to be seen. */
function slopeOf(end: EndCut): number {
    const off = degreesOf(end);
    return Math.sign(off) * (off === 0 ? 0 : Math.max(2.4, Math.min(SHAPE.slope, SHAPE.slope * Math.abs(off) / 45)));
}

/** The piece from its edge, back up, or as it lies flat, as it is cut at the saw: which ends are mitered, and which way. Its hand stands in it. */
function silhouette({ ends, piece }: LaidPiece, right: number, top: number): Item[] {
    const left = right - SHAPE.width, foot = top + SHAPE.height, shape = piece.work.find(({ kind }) => kind === 'shape');
    if (shape?.kind === 'shape') {
        const { cutBack, width } = piece;
        const corner = ([along, across]: readonly [number, number]): Point => [left + SHAPE.width * along / cutBack, top + SHAPE.height * across / width];
        return [rectangle(left, top, right, foot, 'hidden', null), polygon(shape.corners.map(corner), 'thin', 'wash')];
    }
    const [a, b] = ends.map(slopeOf) as [number, number];
    const out = (slope: number): number => Math.max(0, -slope), inward = (slope: number): number => Math.max(0, slope);
    return [
        polygon([[left + out(a), top], [right - out(b), top], [right - inward(b), foot], [left + inward(a), foot]], 'thin', 'wash'),
        ...piece.hand === null ? [] : [text([(left + right) / 2, foot - 2.2], piece.hand, { size: 7, anchor: 'middle', weight: 600 })],
    ];
}

/** What is still to be done to it, short. */
function shortWork(work: Work): string {
    switch (work.kind) {
        case 'rip': return 'rip';
        case 'rabbet': return 'rabbet';
        case 'scribe': return 'scribe';
        case 'ease': return 'ease';
        case 'slots': return `${work.count} × ${work.size} ${work.where.startsWith('in both edges') ? 'edges' : work.places === 2 ? 'both ends' : work.where.replace(/^in the | end$/g, '')}${work.opened ? ', opened' : ''}`;
        case 'block': return work.end === 'middle' ? 'block in the middle' : 'block at the joint';
        case 'halve': return 'in two';
        case 'kerfs': return `${work.count} kerfs`;
        case 'pocket-holes': return 'pocket holes';
        case 'nip': return 'nipped corner';
        case 'shape': return 'cut to shape';
    }
}
