import type { Ceiling } from '../ceiling/model.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import { atOnce, type Steps } from '../plain/steps.ts';
import { kept, MOST_ROOMS } from '../plain/kept.ts';
import type { Point } from '../plane/point.ts';
import { extentOf, middleOf } from '../plane/polygon.ts';
import type { Piece } from '../takeoff/model.ts';
import { takeOffOf } from '../takeoff/take-off.ts';
import { beforesOf, splicedBefores } from './before.ts';
import { biscuited } from './biscuit-reach.ts';
import { firstBayOf } from './first-bay.ts';
import { cycleIn, inCircles, ofPieces } from './graph.ts';
import type { Before, PutUp, Step } from './model.ts';
import { Nearby } from './nearby.ts';
import { waysOfClosing } from './motion/closing-ways.ts';
import { inTurnOf } from './in-turn.ts';
import { inLeastOrder } from './ladder/in-least-order.ts';
import { hopsOf } from './ladder/of-crews.ts';
import { getsRound, pathOf, wouldBlock, type Scene } from './path.ts';
import { heldUp, latenessOf, namesOf, saidBefore, together, unknownNames, type Held } from './said.ts';
import { scheduled, type Batch, type Scheduled, type Wishes } from './schedule.ts';
import { stoodOf, wallsOf, type Stood } from './stood.ts';

/** Steps whose ways are tried in one part of the work. */
const STEPS_IN_A_PART = 50;

/** The same, kept as long as the ceiling is the same. `made`: where somebody has made it already. */
export const putUpOf = kept((ceiling: Ceiling, made?: PutUp): PutUp => made ?? putUp(ceiling), MOST_ROOMS);

/** Makes it and keeps it in parts, for whoever must not keep others waiting. */
export function* puttingUpOf(ceiling: Ceiling): Steps<void> {
    if (!putUpOf.has(ceiling)) putUpOf(ceiling, yield* puttingUp(ceiling));
}

/** How a ceiling is put up: see model.ts. Every piece is put up in the order of the steps, and its way tried among all that is up before it. */
export function putUp(ceiling: Ceiling): PutUp {
    return atOnce(puttingUp(ceiling));
}

function* puttingUp(ceiling: Ceiling): Steps<PutUp> {
    const takeOff = takeOffOf(ceiling), all = stoodOf(ceiling, takeOff), nearby = new Nearby(all);
    const names = namesOf(takeOff.pieces), said = saidBefore(ceiling, names);
    const held = heldUp(ceiling, names), late = (id: string): number => { const own = held.pieces.get(id); return own ? latenessOf(own) : 0; };
    yield;
    const standing = [...yield* beforesOf(all, nearby, takeOff, ceiling), ...said];
    yield;
    const befores = [...standing, ...splicedBefores(ceiling, takeOff, { band: 'last' })], firstBay = firstBayOf(ceiling, takeOff, befores);
    const joints = biscuited(takeOff), walls = wallsOf(ceiling), openOf = middlesOf(ceiling);
    const byId = new Map(all.map(one => [one.piece.id, one]));
    const getsPast = ({ first, then }: Before): boolean => getsRound(byId.get(first)!, [byId.get(then)!], { nearby, walls, openOf });
    yield;
    let ordered = yield* inOrder(all, befores, { firstBay, late }, getsPast);
    yield;
    const band = bandIn(ordered.batches);
    // with the band up there is no room at the ends of a run
    if (band === 'first') ordered = yield* inOrder(all, [...standing, ...splicedBefores(ceiling, takeOff, { band })], { firstBay, late }, getsPast);
    const { before, stuck } = ordered, hasCrews = (ceiling.room.putUp?.crews.value ?? 1) > 1, least = yield* inLeastOrder(ordered.batches, before);
    yield;
    const inRoom = { nearby, walls, openOf, jointsOf: (id: string) => joints.get(id) ?? [], waysOf: waysOfClosing(ceiling, takeOff, { band }) };
    const stepsOf = (batches: readonly Batch[]): Steps<Tried> => tried(batches, inRoom, { held: held.pieces, hasCrews });
    let { steps, blocks } = yield* stepsOf(least.batches), atLeast: number | null = least.atLeast;
    if (lostIn(steps) > 0) {
        // a shorter way of the ladder is worth no piece
        const asScheduled = yield* stepsOf(ordered.batches);
        if (lostIn(asScheduled.steps) < lostIn(steps)) { ({ steps, blocks } = asScheduled); atLeast = null; }
    }
    const moved = hopsOf(steps.map(({ at }) => at));
    const cycle = cycleIn(stuck, before), isPiece = (id: string): boolean => byId.has(id);
    return {
        steps: withJoined(steps), begin: held.begin, before, inTurn: hasCrews ? inTurnOf({ steps, before }, blocks, takeOff.joints) : [],
        stuck: stuck.filter(isPiece), firstBay, cycle: cycle && ofPieces(cycle, isPiece),
        unknown: unknownNames(ceiling, names), band,
        moves: { count: moved.length, distance: moved.reduce((sum, far) => sum + far, 0), atLeast },
    };
}

interface Tried { readonly steps: readonly Step[]; readonly blocks: ReadonlyMap<string, readonly string[]> }

/** Every piece put up in the order of the batches. `blocks`: where there are crews, what later ones would be in the way of each. */
function* tried(batches: readonly Batch[], room: Omit<Scene, 'up'>, { held, hasCrews }: { readonly held: ReadonlyMap<string, Held>; readonly hasCrews: boolean }): Steps<Tried> {
    const up = new Map<string, Stood>(), scene = { ...room, up }, steps: Step[] = [], blocks = new Map<string, readonly string[]>();
    for (const { group: { kind, of }, pieces, at } of batches) {
        if (steps.length % STEPS_IN_A_PART === STEPS_IN_A_PART - 1) yield;
        steps.push({
            number: steps.length + 1, kind, of, at, ...together(pieces.flatMap(({ piece }) => held.get(piece.id) ?? [])),
            placings: pieces.map(one => {
                const placing = pathOf(one, scene);
                if (hasCrews) blocks.set(one.piece.id, wouldBlock(one, placing, scene));
                up.set(one.piece.id, one);
                return placing;
            }),
        });
    }
    return { steps, blocks };
}

/** Pieces for which no way was found. */
function lostIn(steps: readonly Step[]): number {
    return steps.reduce((sum, { placings }) => sum + placings.filter(({ path }) => !path).length, 0);
}

interface Ordered extends Scheduled { readonly before: readonly Before[] }

/**
 * What goes up late by custom alone goes up earlier where something else needs it to: a band before the trim that ends at it, where that has to be there
 * before bottoms that hang under it. Where that is not enough, since the text wants something up before what it then hangs in the way of, what gets round it
 * need not come first.
 */
function* inOrder(
    all: readonly Stood[], before: readonly Before[], wishes: Wishes, getsPast: (before: Before) => boolean,
): Steps<Ordered> {
    const first: Ordered = { ...yield* scheduled(all, before, wishes), before };
    if (first.stuck.length === 0) return first;
    const circles = inCircles(before), kinds = [['last'], ['custom', 'spliced'], ['last', 'custom', 'spliced']] as const;
    const withoutThese = function* (gone: ReadonlySet<Before>): Steps<Ordered> {
        const needed = before.filter(one => !gone.has(one));
        return { ...yield* scheduled(all, needed, wishes), before: needed };
    };
    // as little as will do
    let least = first;
    for (const past of [() => [], () => [...circles].filter(one => one.why === 'in-the-way' && getsPast(one))]) {
        const around = past();
        for (const custom of [...around.length > 0 ? [[]] : [], ...kinds]) {
            const now = yield* withoutThese(new Set([...around, ...[...circles].filter(({ why }) => (custom as readonly string[]).includes(why))]));
            if (now.stuck.length < least.stuck.length) least = now;
            if (least.stuck.length === 0) return least;
        }
    }
    return least;
}

/** The middle of the coffer that a piece stands in, if it stands in one. */
function middlesOf(ceiling: Ceiling): (piece: Piece) => Point | undefined {
    const middles = new Map(arrangedOf(ceiling).exact.coffers.map(({ number, outline }) => [number, middleOf(extentOf(outline))] as const));
    return ({ coffer }) => (coffer === null ? undefined : middles.get(coffer));
}

function bandIn(batches: Scheduled['batches']): 'first' | 'last' {
    const kinds = batches.map(({ group }) => group.kind), band = kinds.indexOf('band');
    return band >= 0 && band < kinds.lastIndexOf('bottoms') ? 'first' : 'last';
}

/** What a run takes that is joined before it goes up is the way of all of it. */
function withJoined(steps: readonly Step[]): Step[] {
    const joined = new Map(steps.flatMap(({ placings }) => placings).flatMap(({ path, run }) => (path?.by?.kind === 'join-first' && run ? run.map(id => [id, path] as const) : [])));
    if (joined.size === 0) return [...steps];
    return steps.map(step => ({ ...step, placings: step.placings.map(one => ({ ...one, path: joined.get(one.piece.id) ?? one.path })) }));
}
