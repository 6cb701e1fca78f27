import { inches, millimeters } from '../quantity/rational.ts';
import type { JobSettings } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { comparePieces } from '../takeoff/piece-order.ts';
import type { Work } from '../takeoff/work.ts';
import type { EaseStep, Gauging, HalveStep, KerfStep, LaidBoard, PocketStep, RabbetStep, ShapeStep, SlotStep } from './model.ts';
import { grouped } from '../plain/groups.ts';

/** Nothing deeper in one pass of a router. Common practice, no source. */
const DEEPEST_PASS = { us: inches('1/8'), metric: millimeters(3) };

/** A cutter creeps: the first piece and then every fifth is gauged. Common practice, no source. */
function gaugingIn(job: JobSettings): Gauging {
    return isMetric(job)
        ? { every: 5, warn: millimeters('0.4'), reject: millimeters('0.8') }
        : { every: 5, warn: inches('1/64'), reject: inches('1/32') };
}

/** Rabbets, then eased edges: along the whole piece, before its ends are mitered, so that no point breaks out. */
export function edgesOf(boards: readonly LaidBoard[], job: JobSettings): (Omit<RabbetStep, 'number'> | Omit<EaseStep, 'number'>)[] {
    const deepest = isMetric(job) ? DEEPEST_PASS.metric : DEEPEST_PASS.us;
    const rabbets = batches(boards, 'rabbet').map(({ work, ...batch }): Omit<RabbetStep, 'number'> => ({
        do: 'rabbet', width: work.width, height: work.height, edge: work.edge, face: work.face, passes: passes(Math.max(work.width, work.height), deepest), gauging: gaugingIn(job), ...batch,
    }));
    const eased = batches(boards, 'ease').map(({ work, ...batch }): Omit<EaseStep, 'number'> => ({ do: 'ease', by: work.by, passes: passes(work.by, deepest), ...batch }));
    return [...rabbets, ...eased];
}

/** Slots for biscuits, by size; the ends they sit in are final by now. */
export function slotStepsOf(pieces: readonly Piece[]): Omit<SlotStep, 'number'>[] {
    return gathered(pieces.flatMap(piece => slotsOf(piece).map(([size, count]) => ({ piece, size, count, key: JSON.stringify([size, piece.thickness]) }))))
        .map(found => ({
            do: 'slots', size: found[0]!.size, fence: found[0]!.piece.thickness / 2,
            count: found.reduce((sum, { count }) => sum + count, 0), pieces: inOrder(found.map(f => f.piece)),
            ...otherSlots(inOrder(found.map(f => f.piece)), found[0]!.size),
        }));
}

/** Of pieces with slots for that size those whose slots are opened to the back, and those whose slots are wider towards it, alike together. */
function otherSlots(pieces: readonly Piece[], size: string): Pick<SlotStep, 'opened' | 'wider'> {
    const slots = pieces.flatMap(piece => piece.work.flatMap(work => (work.kind === 'slots' && work.size === size ? [{ piece, work }] : [])));
    const alike = <T>(of: (work: Extract<Work, { kind: 'slots' }>) => T | undefined): { readonly what: T; readonly pieces: readonly Piece[] }[] => {
        const found = slots.flatMap(({ piece, work }) => {
            const what = of(work);
            return what === undefined ? [] : [{ piece, what, key: JSON.stringify(what) }];
        });
        return gathered(found).map(own => ({ what: own[0]!.what, pieces: [...new Set(own.map(one => one.piece))] }));
    };
    return {
        opened: alike(({ opened }) => opened).map(({ what, pieces: own }) => ({ ...what, pieces: own })),
        wider: alike(({ wider }) => wider).map(({ what: by, pieces: own }) => ({ by, pieces: own })),
    };
}

/** Kerfs across the backs, those of one pattern together; and pieces that are cut in two. How they get in has a time of its own, set-ups and all. */
export function kerfsOf(pieces: readonly Piece[]): Omit<KerfStep, 'number'>[] {
    return gathered(pieces.flatMap(piece => piece.work.flatMap(work => (work.kind === 'kerfs' ? [{ piece, work, key: JSON.stringify([work.count, work.apart, work.depth]) }] : []))))
        .map(found => { const { count, apart, depth } = found[0]!.work; return { do: 'kerfs', count, apart, depth, pieces: inOrder(found.map(f => f.piece)) }; });
}
export function halvesOf(pieces: readonly Piece[]): Omit<HalveStep, 'number'>[] {
    return gathered(pieces.flatMap(piece => piece.work.flatMap(work => (work.kind === 'halve' ? [{ piece, work, key: `${piece.cutOverall} ${work.relieved}` }] : []))))
        .map(found => ({ do: 'halve', stop: Math.floor(found[0]!.piece.cutOverall / 2), relieved: found[0]!.work.relieved, pieces: inOrder(found.map(f => f.piece)) }));
}

/** Slots in one piece, at ends and edges together, by the size of the biscuit. */
function slotsOf({ work }: Piece): [size: string, count: number][] {
    const counts = new Map<string, number>();
    for (const each of work) if (each.kind === 'slots') counts.set(each.size, (counts.get(each.size) ?? 0) + each.count * each.places);
    return [...counts];
}

/** All in one step: each is cut along its own lines, and nothing is set for it. */
export function shapesOf(pieces: readonly Piece[]): Omit<ShapeStep, 'number'>[] {
    const shaped = gathered(inOrder(pieces.filter(({ work }) => work.some(({ kind }) => kind === 'shape'))).flatMap(piece => piece.work.flatMap(work => (work.kind === 'shape' ? [{ piece, work, key: JSON.stringify(work) }] : []))));
    const shapes = shaped.map(alike => ({ corners: alike[0]!.work.corners, from: alike[0]!.work.from, pieces: alike.map(({ piece }) => piece) }));
    return shapes.length === 0 ? [] : [{ do: 'shape', shapes, pieces: shapes.flatMap(shape => shape.pieces) }];
}

export function pocketsOf(pieces: readonly Piece[]): Omit<PocketStep, 'number'>[] {
    return gathered(pieces.flatMap(piece => piece.work.flatMap(work => (work.kind === 'pocket-holes' ? [{ piece, work, key: String(work.count) }] : []))))
        .map(found => ({ do: 'pocket holes', each: found[0]!.work.count, pieces: inOrder(found.map(f => f.piece)) }));
}

type Edge = Extract<Work, { kind: 'rabbet' | 'ease' }>;

function batches<Kind extends Edge['kind']>(boards: readonly LaidBoard[], kind: Kind) {
    type Own = Extract<Work, { kind: Kind }>;
    const isOwn = (work: Work): work is Own => work.kind === kind;
    const pieces = boards.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece);
    const found = gathered(pieces.flatMap(piece => piece.work.filter(isOwn).map(work => ({ piece, work, key: JSON.stringify(work) }))));
    return found.map(alike => {
        const own = inOrder(alike.map(a => a.piece));
        const has = new Set(own);
        return {
            work: alike[0]!.work, pieces: own, run: own.reduce((sum, piece) => sum + piece.cutOverall, 0) * (kind === 'ease' ? 2 : 1),
            whole: boards.filter(b => b.strips.length === 1 && b.strips[0]!.pieces.every(p => has.has(p.piece))),
            uncut: boards.filter(b => b.strips.some(s => s.pieces.some(p => p.once && has.has(p.piece)))),
        };
    });
}

function gathered<T extends { readonly key: string }>(items: readonly T[]): T[][] {
    return [...grouped(items, ({ key }) => key).values()];
}

function inOrder(pieces: readonly Piece[]): Piece[] {
    return [...pieces].sort(comparePieces);
}

function passes(depth: Ticks, deepest: Ticks): number {
    return Math.max(1, Math.ceil(depth / deepest));
}

function isMetric(job: JobSettings): boolean {
    return job.show.value === 'millimeters';
}
