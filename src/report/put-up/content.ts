import type { Ceiling } from '../../ceiling/model.ts';
import { closingPieces } from '../../putup/closing/pieces.ts';
import type { Closing } from '../../takeoff/closing/pieces.ts';
import { waysIn, type Way } from '../../takeoff/closing/ways.ts';
import { grouped } from '../../plain/groups.ts';
import { dayLoads, type DayLoad } from '../../putup/by-day.ts';
import type { Shift } from '../../putup/calendar.ts';
import { hoursOf, type Hours } from '../../putup/hours.ts';
import { measuresOf, type Measure } from '../../putup/measures.ts';
import type { PutUp, Step } from '../../putup/model.ts';
import { pressedRows, type Pressed } from '../../putup/pressed.ts';
import { ladderMoves } from '../../putup/ladder/of-crews.ts';
import { peopleFor } from '../../putup/people.ts';
import { putUpOf } from '../../putup/put-up.ts';
import { piecesUp } from '../../putup/said.ts';
import { stepsOfPieces } from '../../putup/steps-of-pieces.ts';
import { controlOf, type Control } from '../../putup/control.ts';
import { fastenersOf } from '../../takeoff/consumables.ts';
import type { Consumable, Joint, Piece, TakeOff } from '../../takeoff/model.ts';
import { settingOf } from '../../takeoff/setting.ts';
import type { Rational } from '../../quantity/rational.ts';
import { daysOf } from './days.ts';
import { waitsTold, type WaitTold } from './waits.ts';

/** How a room's ceiling is put up, as it is told. */
export interface RoomPutUp {
    readonly putUp: PutUp;
    readonly steps: readonly StepTold[];
    /** What others finish first, in the order of the text. */
    readonly waits: readonly WaitTold[];
    /** Empty where there is no first bay. */
    readonly measures: readonly Measure[];
    /** Bottoms that biscuits keep from going straight up, each with its ways in, the best first. */
    readonly closings: readonly { readonly closing: Closing; readonly ways: readonly Way[] }[];
    /** What bottoms that are cut long do along their rows: by the press that is said, else by two that are usual. */
    readonly pressed: readonly Pressed[];
    /** Undefined where nothing of it is timed. */
    readonly hours: Hours | undefined;
    /** How far the ladder is moved, from the middle of a step to that of the next, and how often; of several crews all their ladders together. */
    readonly moves: PutUp['moves'];
    /** What is done on each day; empty where it is not known how many people work. */
    readonly byDay: readonly DayLoad[];
    /** What the layout on the ceiling is squared by; null where no lines cross. */
    readonly control: Control | null;
}
export interface StepTold {
    readonly step: Step;
    /** Joints that are closed in it: their other pieces are up by then. */
    readonly joints: readonly Joint[];
    readonly fasteners: readonly Consumable[];
    readonly people: 1 | 2;
    /** Those of its pieces that are up by now, as the text says. */
    readonly up: ReadonlySet<Piece>;
    /** Minutes of one person. */
    readonly minutes: Rational | undefined;
    readonly shift: Shift | undefined;
    /** What others finish before it: of the waits of the room those that hold it up, and not all of the room. */
    readonly waits: readonly WaitTold[];
}
export function putUpContent(ceiling: Ceiling, takeOff: TakeOff): RoomPutUp {
    const putUp = putUpOf(ceiling), hours = hoursOf({ ceiling, takeOff }, putUp);
    const calendar = daysOf(ceiling), days = calendar?.shifts, waits = new Map(waitsTold(ceiling, putUp).map(told => [told.said, told]));
    const setting = settingOf(ceiling), up = piecesUp(ceiling.room, takeOff.pieces);
    const stepOf = stepsOfPieces(putUp.steps);
    const closedIn = grouped(takeOff.joints, joint => Math.max(...joint.pieces.map(id => stepOf.get(id) ?? Infinity)));
    return {
        closings: closingPieces(ceiling, putUp, takeOff).map(closing => ({ closing, ways: waysIn(closing, ceiling) })),
        pressed: pressedRows(ceiling, takeOff, putUp),
        waits: [...waits.values()], putUp, hours, moves: ladderMoves(putUp, days), byDay: calendar && hours ? dayLoads(calendar, hours) : [],
        measures: putUp.firstBay ? measuresOf(putUp.firstBay, ceiling) : [], control: controlOf(ceiling),
        steps: putUp.steps.map((step): StepTold => {
            const pieces = step.placings.map(({ piece }) => piece), joints = closedIn.get(step.number) ?? [];
            return {
                step, joints, up: new Set(pieces.filter(piece => up.has(piece))), fasteners: fastenersOf(pieces, joints, setting),
                people: peopleFor(pieces), minutes: hours?.steps.get(step.number), shift: days?.get(step.number),
                waits: step.waits.map(wait => waits.get(wait)!),
            };
        }),
    };
}
