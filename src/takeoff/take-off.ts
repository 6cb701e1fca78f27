import { unchanged } from '../ceiling/as-before.ts';
import type { Ceiling } from '../ceiling/model.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import { isSpoiled } from '../job/not-computed.ts';
import { keptInSteps, MOST_ROOMS } from '../plain/kept.ts';
import { atOnce, eachInSteps, type Steps } from '../plain/steps.ts';
import { bandOf, trimOf } from './band-and-trim.ts';
import { blockingOf, bottomsOf, timbersOf } from './blocking-and-bottoms.ts';
import { leftOut, saidWays } from './closing/said.ts';
import type { SaidWays } from './closing/slots.ts';
import { consumablesOf } from './consumables.ts';
import { moldingsOf } from './moldings.ts';
import { jointsOf } from './joints.ts';
import { halfBeamPieces } from './half-beams.ts';
import type { Joint, Part, Piece, TakeOff } from './model.ts';
import { panelPieces } from './panels.ts';
import { pooled } from './pooled.ts';
import { settingOf } from './setting.ts';
import { cleatsOfLine, sidesOfLine } from './sides-and-cleats.ts';
import { spacersOf } from './spacers.ts';

/** The same, kept as long as the ceiling is the same, and nobody asked for many others since. */
export const takeOffOf = Object.assign(
    (ceiling: Ceiling): TakeOff => takenOff(unchanged(ceiling)), { inSteps: (ceiling: Ceiling): Steps<TakeOff> => takenOff.inSteps(unchanged(ceiling)) },
);
const takenOff = keptInSteps(takingOff, MOST_ROOMS);

/**
 * Every piece of a ceiling, the joints between them, and what holds and fills them. Part by part in the order they go
 * up, line by line within a part. A part of which the text does not say enough has no pieces; pieces that something not
 * computed makes wrong are left out, with the joints and fasteners that they would have.
 */
export function takeOff(ceiling: Ceiling): TakeOff {
    return atOnce(takingOff(ceiling));
}

/** Lines of which the pieces of a part are made in one step. */
const LINES_AT_ONCE = 20;

function* takingOff(ceiling: Ceiling): Steps<TakeOff> {
    const setting = settingOf(ceiling);
    const eachLine = function* (make: typeof blockingOf): Steps<Piece[]> {
        const ofLines = yield* eachInSteps(ceiling.lines, LINES_AT_ONCE, line => make(line, setting));
        return ofLines.flat();
    };
    const halves = (part: Part): Piece[] => halfBeamPieces(part, setting);
    const bottomsWith = (said: SaidWays): Piece[] => [...ceiling.lines.flatMap(line => bottomsOf(line, setting, said)), ...halfBeamPieces('bottom', setting, said)];
    // which of them close is known once they are there; what is said of those changes their slots and their work, and no length
    const plain = bottomsWith(new Map());
    yield;
    const said = saidWays(ceiling, plain), bottoms = said.size === 0 ? plain : bottomsWith(said);
    const all = [
        ...panelPieces(setting), ...yield* eachLine(blockingOf), ...halves('blocking'), ...yield* eachLine(spacersOf), ...yield* eachLine(sidesOfLine), ...halves('side'),
        ...yield* eachLine(cleatsOfLine), ...halves('cleat'), ...bottoms, ...yield* eachLine(timbersOf), ...halves('timber'), ...moldingsOf(setting),
        ...bandOf(setting), ...trimOf(setting),
    ];
    yield;
    const { name, notComputed } = ceiling.room;
    const beside = (coffer: number, wall: string): boolean => {
        const { edges } = arrangedOf(ceiling).exact.coffers.find(({ number }) => number === coffer)!;
        return edges.some(({ along }) => along.includes(wall));
    };
    const leftOut = all.filter(piece => isSpoiled(piece, notComputed, beside));
    const profileOf = (name: string | null) => (name === null ? undefined : setting.beam(name)?.section.profile);
    const made = leftOut.length === 0 ? all : all.filter(piece => !leftOut.includes(piece));
    const pieces = pooled(made, ceiling.room.job, profileOf);
    yield;
    const joints = withoutBiscuits(jointsOf(pieces, setting), said);
    yield;
    return { room: name, pieces, joints, consumables: consumablesOf(pieces, joints, setting), leftOut };
}

/** Joints of closing pieces that the biscuits are left out of. */
function withoutBiscuits(joints: readonly Joint[], said: SaidWays): Joint[] {
    const without = new Set([...said.values()].flatMap(one => leftOut(one).flatMap((is, i) =>
        (is ? one.closing.ends[i]!.against.map(({ id }) => `${one.closing.piece.id} ${id}`) : []))));
    return joints.map(joint => (joint.kind === 'butt' && without.has(joint.pieces.join(' ')) ? { ...joint, biscuits: null } : joint));
}
