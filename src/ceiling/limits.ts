import type { Fixture, JobSettings, Room } from '../job/model.ts';
import { MOST_COFFERS, MOST_SPACERS } from '../job/said-much.ts';
import type { Given } from '../provenance/source.ts';
import { printLength } from '../quantity/print-length.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { baysOf } from './bays.ts';
import type { Line, Run, Trouble } from './model.ts';

/** Figures beyond these are slips of the keyboard: they are told, and not worked out, so that nothing ever hangs. */
const COARSEST_STEP: Ticks = TICKS_PER_INCH / 2;

/** The resolution of cut lengths; undefined where the job's makes none. */
export function cutStep(job: JobSettings, troubles: Trouble[]): Ticks | undefined {
    const { value, at } = job.cutTo;
    if (value > 0 && value <= COARSEST_STEP) return value;
    const size = (ticks: Ticks): string => printLength(ticks, job.show.value);
    troubles.push(value > 0
        ? { kind: 'not-supported', what: `a cut-to of ${size(value)}`, because: 'no tape is read so coarsely', instead: `a resolution of ${size(COARSEST_STEP)} or finer`, at }
        : { kind: 'not-positive', what: 'the resolution of cut lengths', ticks: value, at });
    return undefined;
}

/** Whether there are more coffers than any ceiling has. */
export function tooMany(ceiling: { readonly across: Run<unknown>; readonly down: Run<unknown> }, at: Trouble['at'], troubles: Trouble[]): boolean {
    const count = ceiling.across.coffers.length * ceiling.down.coffers.length;
    if (count > MOST_COFFERS) troubles.push({ kind: 'too-many-coffers', within: 'one room', count, most: MOST_COFFERS, at });
    return count > MOST_COFFERS;
}

/** Whether the rooms of the file come to more than is laid out, with this one. */
export function tooMuchOfFile({ tooMuch, grid, at }: Room, troubles: Trouble[]): boolean {
    if (tooMuch) troubles.push({ kind: 'too-much-in-file', ...tooMuch, at: grid?.at ?? at });
    return tooMuch !== undefined;
}

/** Whether spacers stand so near to each other that their number makes no sense. */
export function tooManySpacers(lines: readonly Omit<Line, 'splices'>[], troubles: Trouble[]): boolean {
    let count = 0;
    for (const line of lines) {
        const spacers = line.section.profile.spacers;
        if (spacers) for (const bay of baysOf(line)) count += (bay.end - bay.start) / spacers.every.value + 2;
        if (!spacers || count <= MOST_SPACERS) continue;
        troubles.push({ kind: 'not-supported', what: `more than ${MOST_SPACERS} spacers in one room`, because: 'no ceiling has so many', instead: 'spacers farther apart', at: spacers.every.at });
        return true;
    }
    return false;
}

/** The feature's place along one direction; undefined where it is not known, null where no feature is asked for. */
export function featureAt(feature: Given<Fixture> | undefined, axis: 'x' | 'y'): { position: Ticks; by: Given<Fixture> } | null | undefined {
    if (!feature) return null;
    const position = feature.value[axis];
    return position === undefined ? undefined : { position, by: feature };
}
