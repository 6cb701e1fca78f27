import type { Ceiling } from '../ceiling/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { shortenedSpacers } from './spacers.ts';
import { surveyedOf } from './survey.ts';

/**
 * Spacers over which the ceiling hangs so low that they are cut lower than the rest, by their names, with how high, at a mark of the tape. None where there is
 * no survey.
 */
export function lowSpacers(ceiling: Ceiling, takeOff: TakeOff): ReadonlyMap<string, Ticks> {
    const { room: { survey, job } } = ceiling, surveyed = survey && surveyedOf(ceiling, takeOff);
    if (!surveyed) return NONE;
    return new Map(shortenedSpacers(surveyed.spacers, job.cutTo.value).flatMap(({ most, spacers }) => spacers.map(({ piece }) => [piece.id, most])));
}
const NONE: ReadonlyMap<string, Ticks> = new Map();
