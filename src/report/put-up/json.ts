import type { Placing, Pose } from '../../putup/model.ts';
import type { Rational } from '../../quantity/rational.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { printJson } from '../../text/json.ts';
import type { JsonText } from '../../text/fit.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { RoomPutUp } from './content.ts';
import { isBeside, wayOf } from './way.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { otherChoice, type OtherChoice } from './other-choice.ts';
import type { OtherChoiceJson, PlacingJson, PoseJson, PutUpJson, PutUpRoomJson } from './shape.ts';

export function jsonPutUp(houses: readonly House[], putUpOf: (room: RoomPieces) => RoomPutUp | undefined, files: Files): JsonText {
    return printJson<PutUpJson>({
        version: 1, kind: 'cofferwright.put-up', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map((room): PutUpRoomJson => {
            const told = putUpOf(room), putUp = told?.putUp, length = (ticks: Ticks): LengthJson => lengthJson(ticks, ticks, job.show.value);
            return {
                ...roomHead(room, room.takeOff !== undefined, job, files),
                steps: told?.steps.map(({ step: { number, kind, of, placings }, people, minutes, shift, fasteners, joints, up, waits }) => ({
                    number, kind, of, people, minutes: minutes ? tenths(minutes) : null,
                    days: shift ? { first: shift.first, last: shift.last } : null, crew: shift?.crew ?? null,
                    after: waits.map(({ name }) => name),
                    pieces: placings.map(placing => placingJson(placing, up.has(placing.piece), length)),
                    fasteners: fasteners.map(({ what, count }) => ({ what, count })),
                    joints: joints.map(({ kind: joint, at, pieces }) => ({ kind: joint, at, pieces })),
                })) ?? [],
                byDay: told?.byDay.map(({ day, minutes, steps: on, hasLayout, hasFinish }) =>
                    ({ day, minutes: tenths(minutes), steps: on, layout: hasLayout, finish: hasFinish })) ?? [],
                waits: told?.waits.map(({ kind, name, before, until, circle }) => ({ kind, name, before, untilDay: until, circle })) ?? [],
                fromDay: room.room.putUp?.fromDay?.value ?? null,
                firstBay: putUp?.firstBay ? {
                    coffer: putUp.firstBay.coffer, pieces: putUp.firstBay.pieces,
                    measures: told!.measures.map(({ kind, of, wanted, goesTo: { words, stock } }) =>
                        ({ kind, of, wanted: length(wanted), goesTo: { words, stock: stock ?? null } })),
                } : null,
                cycle: putUp?.cycle?.map(({ first }) => first) ?? [], stuck: putUp?.stuck ?? [],
                before: putUp?.before.map(({ first, then, why }) => ({ first, then, why })) ?? [],
                inTurn: putUp?.inTurn ?? [],
                otherChoice: told ? otherJson(otherChoice(layoutOf(room.room).ceiling!, told.putUp), length) : null,
                pressed: told?.pressed.map(({ lines, press, said, pieces, between, sum, asCut, bows, force, pushes }) => ({
                    lines, press: length(press), said, pieces, between, sum: length(sum), asCut: length(asCut),
                    bows: { length: length(bows.length), by: length(bows.by), straightUpTo: length(bows.straightUpTo) },
                    force: force === null ? null : Math.round(force), pushes: pushes && { lines: pushes.lines, by: length(pushes.by) },
                })) ?? [],
                layoutMinutes: told?.hours ? tenths(told.hours.layout) : null, finishMinutes: told?.hours ? tenths(told.hours.finish) : null,
                ladder: {
                    moves: told?.moves.count ?? 0, distance: length(told?.moves.distance ?? 0),
                    atLeast: told && told.moves.atLeast !== null ? length(told.moves.atLeast) : null,
                },
            };
        })),
    });
}

function placingJson({ piece: { id }, path, blockedBy }: Placing, isUp: boolean, length: (ticks: Ticks) => LengthJson): PlacingJson {
    const isAside = path !== null && isBeside(path);
    const moves = path?.moves.map(({ kind, from, to }) => ({ kind, from: poseJson(from, length), to: poseJson(to, length) }));
    return {
        id, isUp, way: wayOf(path),
        east: isAside ? length(Math.round(path.aside.x)) : null, south: isAside ? length(Math.round(path.aside.y)) : null,
        by: path?.by?.kind ?? null, moves: moves ?? [], blockedBy,
    };
}

function poseJson({ aside, below, shape, angle, low }: Pose, length: (ticks: Ticks) => LengthJson): PoseJson {
    return {
        east: length(Math.round(aside.x)), south: length(Math.round(aside.y)), below: length(below), shape,
        degrees: Math.round(angle * 180 / Math.PI * 1000) / 1000, low: shape === 'leaning' || shape === 'tipped' ? low === 0 ? 'first' : 'second' : null,
    };
}

function otherJson(other: OtherChoice | undefined, length: (ticks: Ticks) => LengthJson): OtherChoiceJson | null {
    if (!other) return null;
    const { words, closing, proved, longest, splices, boards, minutes } = other;
    return {
        words, closing, proved, longest: { now: length(longest.now), then: length(longest.then) }, splices, boards,
        minutes: minutes && { now: tenths(minutes.now), then: tenths(minutes.then) },
    };
}

function tenths(minutes: Rational): number {
    return Math.round(minutes.valueOf() * 10) / 10;
}
