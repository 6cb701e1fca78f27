import { pieceTitle } from '../../drawing/plan/pieces.ts';
import { meshOf, type Mesh } from '../../drawing/view/mesh.ts';
import type { Fault, Solid } from '../../dryfit/model.ts';
import type { Severity } from '../../findings/finding.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { dryFitOf, inspectClosely } from '../../pipeline/inspect-closely.ts';
import { PARTS } from '../../takeoff/model.ts';
import type { PageContent, RoomOnPage, Wishes } from '../page.ts';
import { findingsOnPlan } from '../plan/findings.ts';
import { putUpOnPage } from '../put-up/content.ts';
import { eachInSteps, type Steps } from '../../plain/steps.ts';
import { Sources } from '../shared/sources.ts';
import { Numbered } from '../../plain/at-key.ts';
import { changesInView, type ChangesInView } from './changed.ts';
import type { ViewPiece } from './piece.ts';
import { orderInView, type OrderInView } from './order.ts';

/** All that the view in three dimensions shows: whole ticks, x east, y south, z down from the ceiling. */
export interface ViewContent extends PageContent {
    readonly title: string;
    /** Corners of the room, clockwise. */
    readonly outline: readonly (readonly [x: Ticks, y: Ticks])[];
    /** The box round the room, and how far down its lowest piece reaches. */
    readonly size: { readonly width: Ticks; readonly length: Ticks; readonly depth: Ticks };
    /** Faces and edges by the numbers of corners: pieces of one form share them. */
    readonly shapes: readonly Shape[];
    /** In the order of the parts, from the ceiling down, then of the cut list. */
    readonly pieces: readonly ViewPiece[];
    readonly findings: readonly ViewFinding[];
    /** Pieces that do not go together, by the dry fit. */
    readonly wrong: readonly string[];
    /** How it is put up; null while that is worked out. */
    readonly order: OrderInView | null;
    /** What is otherwise since a commit, where somebody looks for that. */
    readonly changes?: ChangesInView;
}
export type { ViewPiece };
type Shape = Pick<Mesh, 'faces' | 'edges'>;

export interface ViewFinding { readonly severity: Severity; readonly message: string; readonly at: number; readonly keys: readonly string[] }

/** Solids that are described in one step. */
const SOLIDS_IN_STEP = 500;

export function* viewInSteps(room: RoomOnPage, { changes: known }: Wishes = {}): Steps<ViewContent> {
    const { ceiling, layout } = room;
    const show = layout.room.job.show.value;
    const sources = new Sources();
    const shapes = new Numbered<Shape>();
    const { solids, faults } = dryFitOf(ceiling);
    yield;
    const pieceOf = (solid: Solid): ViewPiece => {
        const { piece } = solid, { faces, edges, corners } = meshOf(solid);
        return {
            key: piece.id, part: piece.part, words: pieceTitle(piece, show), at: sources.number(piece.source),
            shape: shapes.at(JSON.stringify([faces, edges]), () => ({ faces, edges })), corners: corners.flat(),
        };
    };
    const pieces = yield* eachInSteps(PARTS.flatMap(part => solids.filter(solid => solid.piece.part === part)), SOLIDS_IN_STEP, pieceOf);
    yield;
    const changes = changesInView(room, known, pieceOf);
    yield;
    const found = inspectClosely(room.file);
    yield;
    const all = { ceiling, layout, takeOff: room.takeOff, findings: [...room.findings, ...found] };
    const findings = findingsOnPlan(all, { pointsPerTick: 0, left: 0, top: 0 }, sources)
        .map(({ severity, message, at, keys }) => ({ severity, message, at, keys }));
    const told = room.order === 'looking' ? null : room.order ?? putUpOnPage(ceiling);
    yield;
    return {
        title: layout.room.title ?? layout.room.name,
        outline: ceiling.walls.map(({ from: { x, y } }) => [x, y] as const),
        size: { width: ceiling.width, length: ceiling.length, depth: Math.max(0, ...solids.flatMap(({ prisms }) => prisms.map(({ foot }) => foot))) },
        shapes: shapes.list, pieces,
        findings,
        wrong: [...new Set(faults.flatMap(wrongPieces))].sort(),
        order: told && orderInView(told, solids),
        ...changes && { changes },
        sources: sources.list,
    };
}

/** The pieces that a fault is about. A coffer of another size stands wrong in none of its own pieces. */
function wrongPieces(fault: Fault): readonly string[] {
    switch (fault.kind) {
        case 'misfit': return [fault.piece, ...fault.alike, ...fault.clashes.map(({ other }) => other)].flatMap(piece => (typeof piece === 'string' ? [] : [piece.id]));
        case 'underside': return [fault.piece, ...fault.alike].map(({ id }) => id);
        case 'doubled': case 'no-place': return [fault.id];
        default: return [];
    }
}
