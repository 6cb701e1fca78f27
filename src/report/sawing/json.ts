import { stockNames } from '../../job/stock-names.ts';
import { roundDown, roundTo } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { tapingOf, type BoardRef, type LaidBoard, type LaidStrip, type SawOrder, type Step, type Take } from '../../sawing/index.ts';
import type { EndCut, Piece } from '../../takeoff/model.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import { printJson } from '../../text/json.ts';
import { houseHead } from '../house-json.ts';
import { standingOfRooms } from '../standing.ts';
import { standingJson } from '../standing-json.ts';
import type { HouseSaw } from './house-saw.ts';
import type { SawJson } from './shape.ts';
import { STAGES } from './step-words.ts';
import type { JsonText } from '../../text/fit.ts';

type HouseJson = SawJson['houses'][number];

/** The order at the saw. */
export function jsonSaw(houses: readonly HouseSaw[]): JsonText {
    return printJson<SawJson>({
        version: 1,
        kind: 'cofferwright.saw',
        standing: standingJson(standingOfRooms(houses.flatMap(({ house }) => house.rooms))),
        houses: houses.map(({ house, order }) => ({
            ...houseHead(house),
            meant: 'by setting',
            setUps: order.setUps,
            steps: order.steps.map(step => stepJson(step, order)),
            boards: boardsJson(order),
            cautions: order.cautions,
        })),
    });
}

type Length = (ticks: Ticks) => LengthJson;
const lengthIn = ({ job }: SawOrder): Length => ticks => lengthJson(ticks, ticks, job.show.value);
/** Readings of the tape: its nearest marks. */
const markIn = ({ job }: SawOrder): Length => ticks => lengthJson(ticks, roundTo(ticks, job.cutTo.value), job.show.value);
const ids = (pieces: readonly Piece[]): string[] => pieces.map(p => p.id);

function head<S extends Step>(step: S): { number: number; do: S['do']; stage: string } {
    return { number: step.number, do: step.do, stage: STAGES.find(s => s.has(step))!.title };
}

function takeJson({ board, strip, pieces }: Take): { board: string; strip: number; pieces: string[] } {
    return { board: board.name, strip: strip.number, pieces: ids(pieces.map(p => p.piece)) };
}

function stepJson(step: Step, order: SawOrder): HouseJson['steps'][number] {
    const length = lengthIn(order);
    switch (step.do) {
        case 'rip': return { ...head(step), what: step.what, width: length(step.width), fence: step.fence ?? null, boards: step.boards.map(refJson), pieces: ids(step.pieces) };
        case 'crosscut': return {
            ...head(step), stop: length(step.stop), by: step.by, over: length(step.over),
            of: step.of, sections: step.sections.map(({ board, section }) => ({ board: board.name, section: section.number })),
            takes: step.takes.map(takeJson),
        };
        case 'blocks': return {
            ...head(step),
            blocks: step.blocks.map(({ kind, stock, count, length: each, for: use, out }) => (
                { kind, stock: stock.name, count, length: length(each), for: use, boards: out.map(board => board.name) }
            )),
        };
        case 'rabbet': return {
            ...head(step), width: length(step.width), height: length(step.height), edge: `${step.edge}-${step.face}`, passes: step.passes, run: length(step.run), pieces: ids(step.pieces), wholeBoards: step.whole.map(b => b.name), uncutBoards: step.uncut.map(b => b.name),
            gauging: { every: step.gauging.every, warn: length(step.gauging.warn), reject: length(step.gauging.reject) },
        };
        case 'ease': return { ...head(step), by: length(step.by), passes: step.passes, run: length(step.run), pieces: ids(step.pieces), wholeBoards: step.whole.map(b => b.name), uncutBoards: step.uncut.map(b => b.name) };
        case 'miter': return {
            ...head(step), degrees: step.degrees, ...step.flat && { flat: step.flat },
            cuts: step.cuts.map(
                ({ stop, end, long, flat, hand, pieces, takes = [] }) => (
                    { stop: stop === undefined ? null : length(stop), end, long, flat, hand, pieces: ids(pieces), takes: takes.map(takeJson) }
                ),
            ),
        };
        case 'cope': return { ...head(step), ends: step.ends, pieces: ids(step.pieces) };
        case 'shape': return {
            ...head(step), pieces: ids(step.pieces),
            shapes: step.shapes.map(({ corners, from, pieces }) => (
                { from: [...from], corners: corners.map(([along, across]) => ({ along: length(along), across: length(across) })), pieces: ids(pieces) }
            )),
        };
        case 'slots': return {
            ...head(step), size: step.size, count: step.count, fence: length(step.fence), pieces: ids(step.pieces),
            opened: step.opened.map(
                ({ long, deep, leaves, pieces }) => ({ long: length(long), deep: length(deep), leaves: length(leaves), pieces: ids(pieces) }),
            ),
            wider: step.wider.map(({ by, pieces }) => ({ by: length(by), pieces: ids(pieces) })),
        };
        case 'kerfs': return { ...head(step), count: step.count, apart: length(step.apart), depth: length(step.depth), pieces: ids(step.pieces) };
        case 'halve': return { ...head(step), stop: length(step.stop), relieved: length(step.relieved), pieces: ids(step.pieces) };
        case 'pocket holes': return { ...head(step), each: step.each, pieces: ids(step.pieces) };
    }
}

function endJson({ cut, degrees }: EndCut): HouseJson['boards'][number]['strips'][number]['pieces'][number]['ends'][number] {
    return { cut, ...degrees !== undefined && { degrees } };
}

function refJson({ board, strips }: BoardRef) {
    return { board: board.name, strips };
}

function boardsJson(order: SawOrder): HouseJson['boards'] {
    const nameOf = stockNames(order.boards.map(({ stock }) => stock));
    return order.boards.map(board => boardJson(board, order, nameOf(board.stock)));
}

function boardJson(board: LaidBoard, order: SawOrder, stock: string): HouseJson['boards'][number] {
    const length = lengthIn(order);
    return {
        name: board.name, stock, number: board.number,
        length: length(board.length), along: length(board.along), from: board.from, besideStrips: length(board.besideStrips),
        sections: board.sections.map(({ number, from, to }) => ({ number, from: markIn(order)(from), to: markIn(order)(to) })),
        strips: board.strips.map(strip => stripJson(strip, order)),
    };
}

function stripJson(strip: LaidStrip, order: SawOrder): HouseJson['boards'][number]['strips'][number] {
    const length = lengthIn(order), mark = markIn(order);
    const { cutTo, show } = order.job;
    return {
        number: strip.number, rippedTo: strip.rippedTo === undefined ? null : length(strip.rippedTo), section: strip.section ?? null, trim: mark(strip.trim),
        pieces: strip.pieces.map(({ piece, from, to, ends }) => ({
            piece: piece.id, from: mark(from), to: mark(to), back: lengthJson(piece.back, piece.cutBack, show.value),
            face: lengthJson(piece.face, piece.cutFace, show.value),
            overall: lengthJson(piece.overall, piece.cutOverall, show.value),
            ends: [endJson(ends[0]), endJson(ends[1])], hand: piece.hand, measure: tapingOf(piece),
        })),
        offcut: lengthJson(strip.offcut, roundDown(strip.offcut, cutTo.value), show.value), kept: strip.kept, rest: length(strip.rest),
    };
}
