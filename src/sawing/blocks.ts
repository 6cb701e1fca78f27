import { inches } from '../quantity/rational.ts';
import type { JobSettings, Stock } from '../job/model.ts';
import { tapeOf } from '../job/tape.ts';
import { printMark } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { FlatCut, Piece } from '../takeoff/model.ts';
import { isTurned, sawDegrees } from '../takeoff/ends.ts';
import type { Block, LaidBoard } from './model.ts';
import { grouped } from '../plain/groups.ts';

/** Long enough to be held at the saw and the router with the hands away from the blade. Common practice, no source. */
const TEST_LENGTH: Ticks = inches(12);
const GAUGE_LENGTH: Ticks = inches(8);
/** Of a gauge block the thickness counts; narrower ones do not lie still. Common practice, no source. */
const GAUGE_WIDTH: Ticks = inches(2);

/** Long enough to be bent by hand, and for glue to hold: common practice, no source. */
const BEND_LENGTH: Ticks = inches(24);
const JOINT_LENGTH: Ticks = inches(6);

/** How far the middle of a trial hangs that is bent as a piece of that length is whose middle hangs so far: with the square of the length. */
function bentAs(hangs: Ticks, length: Ticks): Ticks {
    return Math.round(hangs * (BEND_LENGTH / length) ** 2);
}

/**
 * What is cut from the leftovers before the real pieces are machined: a pair for every angle, a length for every rabbet and
 * biscuit, the blocks that cleats are set with, out of the bottom's own stock, since it is its thickness that counts; and
 * what ways in want: a trial of kerfs in the same board, blocks for the backs of joints.
 */
export function blocksOf(boards: readonly LaidBoard[], job: JobSettings): Block[] {
    const pieces = boards.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece);
    const takeFrom = new Leftovers(boards, job.kerf.value), size = (ticks: Ticks): string => printMark(ticks, tapeOf(job));
    const block = (kind: Block['kind'], stock: Stock, count: number, length: Ticks, use: string, width: Ticks): Block =>
        ({
            kind, stock, count, length, for: use,
            out: Array.from({ length: count }, () => takeFrom.shortest(stock, length, width)).flatMap(board => board ?? []),
        });
    return [
        ...each(gaugingBottoms(pieces), p => [p.stock.key]).map(([p]) => block('cleat gauge', p!.stock, 2, GAUGE_LENGTH, 'cleats, held between them and the lower edge of the side', GAUGE_WIDTH)),
        ...miterTests(pieces).map(({ stock, width, count, use }) => block('miter test', stock, count, TEST_LENGTH, use, width)),
        ...each(pieces.flatMap(p => p.work.flatMap(w => (w.kind === 'rabbet' ? [{ stock: p.stock, width: p.width, rabbet: w }] : []))), r => [r.rabbet.width, r.rabbet.height, r.rabbet.edge, r.rabbet.face])
            .map(([r]) => block('rabbet test', r!.stock, 1, TEST_LENGTH, 'rabbet', r!.width)),
        ...each(pieces.flatMap(p => p.work.flatMap(w => (w.kind === 'slots' ? [{ stock: p.stock, width: p.width, size: w.size }] : []))), s => [s.size])
            .map(([s]) => block('slot test', s!.stock, 2, TEST_LENGTH, `${s!.size} biscuit`, s!.width)),
        ...each(pieces.flatMap(p => p.work.flatMap(w => (w.kind === 'kerfs' ? [{ piece: p, kerfs: w }] : []))), ({ piece, kerfs }) => [piece.stock.key, piece.overall, kerfs])
            .map(([k]) => block('bend trial', k!.piece.stock, 1, BEND_LENGTH, `the kerfs, ${size(k!.kerfs.apart)} apart and ${size(k!.kerfs.depth)} deep: bent until its middle hangs ${size(bentAs(k!.kerfs.hangs, k!.piece.overall))}`, k!.piece.width)),
        ...each(pieces.flatMap(p => p.work.flatMap(w => (w.kind === 'block' ? [{ piece: p, width: w.width }] : []))), ({ piece, width }) => [piece.stock.key, width])
            .map(found => block('joint block', found[0]!.piece.stock, found.length, JOINT_LENGTH, `the backs of joints, ripped to ${size(found[0]!.width)}`, found[0]!.width)),
    ];
}

interface Miter { readonly stock: Stock; readonly width: Ticks; readonly thickness: Ticks; readonly degrees: number; readonly flat: FlatCut | undefined }

/** A pair for every setting of the saw; where boards of two thicknesses meet in a square corner, each at its own angle, one of either. */
function miterTests(pieces: readonly Piece[]): { stock: Stock; width: Ticks; count: number; use: string }[] {
    const all = pieces.flatMap(({ ends, stock, width, thickness }) => ends.filter(isTurned)
        .map((end): Miter => ({ stock, width, thickness, degrees: sawDegrees(end), flat: end.flat })));
    const settings = each(all, m => [m.degrees, m.flat?.miter.toFixed(1), m.flat?.bevel.toFixed(1)]);
    const kinds = each(all, m => [m.degrees, m.thickness]).map(([m]) => m!);
    return settings.map(([first, ...others]) => {
        for (const own of [first!, ...others]) {
            const other = own.flat ? undefined : kinds.find(kind => isOther(own, kind));
            if (other) return { ...own, count: 1, use: `${settingText(own)}, against ${settingText(other)} on ${other.stock.name}` };
        }
        return { ...first!, count: 2, use: `${settingText(first!)} pair` };
    });
}

/** At a square corner of two thicknesses each miter goes as deep as the other board is thick; to a tenth of a degree. */
function isOther(own: Miter, other: Miter): boolean {
    const angle = Math.atan2(other.thickness, own.thickness) * 180 / Math.PI;
    return own.thickness !== other.thickness && !other.flat && Math.abs(own.degrees - angle) < 0.1 && Math.abs(own.degrees + other.degrees - 90) < 0.15;
}

/** `45°`, or of a crown `miter 31.62°, bevel 33.86°`: what a saw is set to. */
export function settingText({ degrees, flat }: { readonly degrees: number; readonly flat?: FlatCut }): string {
    return flat ? `miter ${degreesText(flat.miter)}, bevel ${degreesText(flat.bevel)}` : degreesText(degrees);
}

function degreesText(degrees: number): string {
    return `${Math.round(degrees * 100) / 100}°`;
}

/** The bottoms that lie against a cleat: those of lines that have cleats. */
function gaugingBottoms(pieces: readonly Piece[]): Piece[] {
    const lines = new Set(pieces.filter(p => p.part === 'cleat').map(p => `${p.room} ${p.line}`));
    return pieces.filter(p => p.part === 'bottom' && lines.has(`${p.room} ${p.line}`));
}

function each<T>(items: readonly T[], keyOf: (item: T) => readonly unknown[]): T[][] {
    return [...grouped(items, item => JSON.stringify(keyOf(item))).values()];
}

/** Offcuts of the plan, of boards and of the strips that they are ripped to, and what is left beside these; what one block takes is gone for the next. */
class Leftovers {
    private readonly left: { readonly board: LaidBoard; readonly width: Ticks; length: Ticks }[];

    constructor(boards: readonly LaidBoard[], private readonly kerf: Ticks) {
        this.left = boards.flatMap(board => [
            ...board.strips.map(({ rippedTo, offcut }) => ({ board, width: rippedTo ?? Infinity, length: offcut })),
            ...board.sections.length === 0 ? [{ board, width: board.besideStrips, length: board.along }] : [],
        ]);
    }

    /** The shortest that is long and wide enough, so that the long ones stay whole; of these the narrowest. */
    shortest(stock: Stock, length: Ticks, width: Ticks): LaidBoard | undefined {
        const need = length + this.kerf;
        const fitting = this.left.filter(l => l.board.stock.key === stock.key && l.length >= need && l.width >= width)
            .sort((a, b) => a.length - b.length || a.width - b.width);
        const taken = fitting[0];
        if (!taken) return undefined;
        taken.length -= need;
        return taken.board;
    }
}
