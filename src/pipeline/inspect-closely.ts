import { unchanged } from '../ceiling/as-before.ts';
import { isLaidOut } from '../ceiling/layout.ts';
import type { Ceiling, LaidOut } from '../ceiling/model.ts';
import { dryFitting } from '../dryfit/dry-fit.ts';
import type { DryFit } from '../dryfit/model.ts';
import { faultAt } from '../findings/fault.ts';
import type { Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import type { Room } from '../job/model.ts';
import { kept, keptInSteps } from '../plain/kept.ts';
import type { Steps } from '../plain/steps.ts';
import { hasError, runFitRules } from '../rules/run-fit.ts';
import { surveyedOf } from '../survey/survey.ts';
import { inspect, layoutOf, takeOffOf } from './inspect.ts';

/**
 * What takes longer to find than a keystroke may take: how the cut list of every room of the file goes together. Silent on a
 * room in which an error stands that `inspect` tells already: what does not fit because of it is not told twice.
 */
export function inspectClosely(file: FileContent): Finding[] {
    return lookedAt(file, () => true);
}

/**
 * What a room is looked at with, step by step, and kept: whoever must not keep others waiting takes a breath after every step, and finds it all there
 * when it looks.
 */
export function* stepsOf(file: FileContent, room: Room): Steps<void> {
    const layout = layoutOf(room), { ceiling } = layout;
    if (ceiling && !hasError(layout, file, inspect(file).findings)) yield* partsOf(ceiling);
}

/** The same of any room that is laid out. */
export function* partsOf(ceiling: Ceiling): Steps<void> {
    try {
        const takeOff = yield* takeOffOf.inSteps(ceiling);
        yield;
        yield* dryFitOf.inSteps(ceiling);
        yield;
        surveyedOf(ceiling, takeOff);
        yield;
    } catch {
        // what fails is told by the look itself
    }
}

/** As much of it as is known without looking: of the rooms that somebody has put together already. */
export function knownClosely(file: FileContent): Finding[] {
    return lookedAt(file, ceiling => dryFitOf.has(ceiling));
}

function lookedAt(file: FileContent, wanted: (ceiling: Ceiling) => boolean): Finding[] {
    const { findings } = inspect(file);
    return file.rooms.flatMap(room => behindWall(room, () => {
        const layout = layoutOf(room);
        return isLaidOut(layout) && wanted(layout.ceiling)
            && !hasError(layout, file, findings) ? foundIn(file)(layout) : [];
    }));
}

/** What the rules find in the rooms of a file, kept: every page of a room asks for it. */
const foundIn = kept((file: FileContent) => kept((layout: LaidOut): readonly Finding[] =>
    runFitRules(file, layout, takeOffOf(layout.ceiling), dryFitOf(layout.ceiling))));

/** A fault in a check must not pass for a room without faults. */
export function behindWall({ at }: Pick<Room, 'at'>, look: () => readonly Finding[]): readonly Finding[] {
    try {
        return look();
    } catch (error) {
        return [faultAt(at, error, 'looking closely at this room')];
    }
}

/** Kept by the ceiling's identity, as the take-off is: a room that nobody changes is put together once. */
export const dryFitOf = Object.assign(
    (ceiling: Ceiling): DryFit => fitted(unchanged(ceiling)),
    {
        has: (ceiling: Ceiling): boolean => fitted.has(unchanged(ceiling)),
        inSteps: (ceiling: Ceiling): Steps<DryFit> => fitted.inSteps(unchanged(ceiling)),
    },
);
const fitted = keptInSteps((ceiling: Ceiling): Steps<DryFit> => dryFitting(ceiling, takeOffOf(ceiling)));
