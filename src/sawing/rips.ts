import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { roughThickness, roughWidth } from '../takeoff/rough-width.ts';
import { onEdgeTo } from '../cutting/rips.ts';
import type { BoardRef, LaidBoard, LaidStrip, RipStep } from './model.ts';
import { atKey } from '../plain/at-key.ts';
import { compareTexts } from '../plain/order.ts';

type Rip = Omit<RipStep, 'number'>;

/**
 * Fence settings for what is ripped before it is cut to length: whole boards before anything is crosscut, sections once they are cut off;
 * into strips, the widest first; then strips that are thinner than their board in both directions once more, on edge.
 */
export function ripsInto(boards: readonly LaidBoard[], what: 'boards' | 'sections'): Rip[] {
    const first = new Settings(what);
    const again = new Settings('on edge');
    for (const board of boards) for (const strip of board.strips) {
        if (strip.rippedTo === undefined || (strip.section === undefined) !== (what === 'boards')) continue;
        // a strip on hand that is as wide as its pieces
        if (strip.rippedTo !== board.across) first.add(strip.rippedTo, fenceOf(strip), board, strip);
        const other = onEdgeTo(strip.pieces.map(({ piece }) => piece), strip.rippedTo, board.stock);
        if (other !== undefined) again.add(other, fenceOf(strip), board, strip);
    }
    return [...first.steps(), ...again.steps()];
}

/** Fence settings after crosscutting: what shares its board with pieces of full width. */
export function ripsOfPieces(boards: readonly LaidBoard[]): Rip[] {
    const settings = new Settings('pieces');
    for (const board of boards) for (const strip of board.strips) {
        if (strip.rippedTo !== undefined) continue;
        for (const { piece } of strip.pieces) {
            const rip = piece.work.find(work => work.kind === 'rip');
            if (!rip) continue;
            for (const width of fencesFor(piece)) settings.addPiece(width, rip.fence, board, strip, piece);
        }
    }
    return settings.steps();
}

/** The widths a piece is ripped to: across its board, and on edge where it is thinner than the board too. */
function fencesFor(piece: Piece): Ticks[] {
    const { stock } = piece, thickness = roughThickness(piece), width = roughWidth(piece);
    const boardThickness = stock.thickness?.value.ticks ?? thickness;
    const onEdge = thickness !== boardThickness && (width === boardThickness || thickness > boardThickness);
    const [across, through] = onEdge ? [thickness, width] : [width, thickness];
    return [...across < (stock.width?.value.ticks ?? Infinity) ? [across] : [], ...through < boardThickness ? [through] : []];
}

function fenceOf(strip: LaidStrip): string | undefined {
    for (const { piece } of strip.pieces) for (const work of piece.work) if (work.kind === 'rip' && work.fence !== undefined) return work.fence;
    return undefined;
}

class Settings {
    private readonly found = new Map<string, { width: Ticks; fence: string | undefined; boards: Map<LaidBoard, Set<number>>; pieces: Piece[] }>();
    constructor(private readonly what: RipStep['what']) {}

    add(width: Ticks, fence: string | undefined, board: LaidBoard, strip: LaidStrip): void {
        const { boards } = this.at(width, fence);
        const strips = boards.get(board) ?? new Set();
        boards.set(board, strips.add(strip.number));
    }

    addPiece(width: Ticks, fence: string | undefined, board: LaidBoard, strip: LaidStrip, piece: Piece): void {
        this.add(width, fence, board, strip);
        this.at(width, fence).pieces.push(piece);
    }

    steps(): Rip[] {
        return [...this.found.values()].sort((a, b) => b.width - a.width || compareTexts(a.fence ?? '', b.fence ?? '')).map(({ width, fence, boards, pieces }): Rip => ({
            do: 'rip', width, ...fence !== undefined && { fence }, what: this.what, pieces,
            boards: [...boards].map(([board, strips]): BoardRef => ({ board, strips: [...strips] })),
        }));
    }

    private at(width: Ticks, fence: string | undefined) {
        return atKey(this.found, JSON.stringify([width, fence]), () => ({ width, fence, boards: new Map(), pieces: [] }));
    }
}
