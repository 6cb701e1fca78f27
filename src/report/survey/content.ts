import type { Ceiling } from '../../ceiling/model.ts';
import { leftOutOfSurvey } from '../../survey/left-out.ts';
import { againstLevel, otherPlanesOf, type AgainstLevel, type OtherPlane } from '../../survey/other-planes.ts';
import { surveyedOf, type Surveyed } from '../../survey/survey.ts';
import type { TakeOff } from '../../takeoff/model.ts';

/** What the survey of a room leaves of its sides. `leftOut`: what hangs there and is not looked at, in sentences. */
export interface RoomSurvey {
    readonly surveyed: Surveyed; readonly leftOut: readonly string[];
    /** What other planes would leave to be scribed, and what is level where the chosen one is not. */
    readonly planes: readonly OtherPlane[]; readonly level: readonly AgainstLevel[];
}

/** Undefined where nobody surveyed the ceiling. */
export function surveyContent(ceiling: Ceiling, takeOff: TakeOff): RoomSurvey | undefined {
    const surveyed = surveyedOf(ceiling, takeOff);
    return surveyed && {
        surveyed, leftOut: leftOutOfSurvey(ceiling), planes: otherPlanesOf(surveyed),
        level: surveyed.chosen ? againstLevel(ceiling, surveyed.chosen.plane) : [],
    };
}
