import type { Grid, JobSettings, LineSpec, Side } from '../job/model.ts';
import { printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { longestPiece } from './longest.ts';
import type { Line, Splice, Trouble } from './model.ts';
import { spliceOnCrossings } from './splices.ts';

export interface SplicedLine {
    readonly line: Line;
    /** The lines that cross it, in order. */
    readonly crossing: readonly Crossed[];
    /** The walls that it runs between: their places along the line, and their names. */
    readonly walls: readonly [number, number];
    readonly names: readonly [string, string];
    readonly spec: LineSpec | undefined;
    readonly neighbor: readonly Splice[];
    readonly splicing: Grid['splices']['value'];
    readonly job: JobSettings;
    readonly step: Ticks;
}

/** A line that crosses another, on the center of that. */
export interface Crossed { readonly name: string; readonly at: Ticks; readonly low: number; readonly high: number }

/**
 * Where the bottom and the blocking of a line that runs through are spliced: where the line says so, else on crossings.
 * Both break at the same place, over which the crossing line's pieces lie on either side. A line that is cut between
 * needs none. Empty also where no choice will do: board-limits.ts tells of the piece that is too long.
 */
export function splicesOf(spliced: SplicedLine, troubles: Trouble[]): readonly Splice[] {
    const { line, crossing, spec, neighbor, splicing, job, step } = spliced;
    if (spec && spec.splices.length > 0) return saidSplices(spliced, spec, troubles);
    if (!line.through || splicing !== 'on-crossings') return [];
    const { blocking, bottom } = line.section.profile;
    const most = Math.min(longestPiece(bottom?.stock?.value, job) - (bottom?.press?.value ?? 0), longestPiece(blocking?.stock?.value, job));
    const crossings = crossing.map(other => ({ at: other.at, place: `on line ${other.name}` }));
    return spliceOnCrossings({ from: line.start, to: line.end, most, crossings, neighbor, step }) ?? [];
}

function saidSplices({ line, crossing, walls, names, job }: SplicedLine, spec: LineSpec, troubles: Trouble[]): readonly Splice[] {
    const ends: readonly [Side, Side] = line.runs === 'east-west' ? ['west', 'east'] : ['north', 'south'], from = Math.round(walls[0]);
    const fail = (said: LineSpec['splices'][number], what: string, instead: string): Splice[] => {
        troubles.push({ kind: 'not-supported', what, instead, at: said.at });
        return [];
    };
    const splices = spec.splices.flatMap((said): Splice[] => {
        if (!line.through) return fail(said, `a splice of line ${line.name}, whose bottoms are cut between`, 'a splice of a line that runs through');
        if (said.from && !ends.includes(said.from) && !names.includes(said.from)) {
            return fail(said, `a splice of line ${line.name} measured from ${said.from}`, `from ${ends[0]} or from ${ends[1]}`);
        }
        const at = said.from === ends[1] || said.from === names[1] ? Math.round(walls[1]) - said.value : from + said.value;
        if (at > line.start && at < line.end) return [{ at, place: placeOf(at, crossing), said: said.at }];
        const size = (ticks: Ticks): string => printLength(ticks, job.show.value);
        return fail(said, `a splice at ${size(said.value)} on line ${line.name}`, `a place between its ends, less than ${size(line.end - from)}`);
    });
    return splices.sort((a, b) => a.at - b.at).filter(({ at }, i, all) => at !== all[i - 1]?.at);
}

function placeOf(at: Ticks, crossing: readonly Crossed[]): string {
    const over = crossing.find(line => at > line.low && at < line.high);
    return over ? `on line ${over.name}` : `in bay ${crossing.filter(line => line.high <= at).length + 1}`;
}
