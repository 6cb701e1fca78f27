import type { Passing } from '../arrangement/model.ts';
import type { Grid, JobSettings, LineSpec, Side } from '../job/model.ts';
import { printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { bayAt } from './bays.ts';
import { longestPiece } from './longest.ts';
import type { Line, Splice, Tape, Trouble } from './model.ts';
import { spliceOnCrossings } from './splices.ts';

interface SplicedLine {
    readonly line: Omit<Line, 'splices'>;
    /** Its ends: the walls or the centers of the lines that it runs between, along it; and their names. */
    readonly ends: readonly [number, number];
    readonly names: readonly [string, string];
    readonly spec: LineSpec | undefined;
    readonly neighbor: readonly Splice[];
    readonly splicing: Grid['splices']['value'];
    readonly job: JobSettings;
    readonly step: Ticks;
}

/**
 * Where the bottom and the blocking of a line that runs through are spliced: where the line says so, else on crossings.
 * Both break at the same place, over which the crossing line's pieces lie on either side. A line that is cut between
 * needs none. Empty also where no choice will do: the rule longer-than-the-board tells of the piece that is too long.
 */
export function splicesOf(spliced: SplicedLine, troubles: Trouble[]): readonly Splice[] {
    const { line, spec, neighbor, splicing, job, step } = spliced;
    if (spec && spec.splices.length > 0) return saidSplices(spliced, spec, troubles);
    if (splicing !== 'on-crossings') return [];
    const { blocking, bottom } = line.section.profile;
    const most = Math.min(longestPiece(bottom?.stock?.value, job) - (bottom?.press?.value ?? 0), longestPiece(blocking?.stock?.value, job));
    return stretchesBetween(line).flatMap(({ from, to }) => {
        const run = { from, to, most, neighbor, step };
        return spliceOnCrossings({ ...run, crossings: placesOf(line, crosses) }) ?? spliceOnCrossings({ ...run, crossings: placesOf(line, meets) }) ?? [];
    });
}

/** What crosses it where its bottom runs through: on both sides of the joint bottoms butt against it. */
function crosses(pass: Passing): boolean {
    return pass.stem === null && pass.relation === 'flush' && !pass.cuts;
}

/** Whatever meets it: a joint there is no better hidden below a deeper beam, but where the eye expects one. Common practice, no source. */
function meets({ cuts }: Passing): boolean {
    return !cuts;
}

function placesOf({ passes }: SplicedLine['line'], where: (pass: Passing) => boolean): readonly Omit<Splice, 'said'>[] {
    return passes.filter(where).map(({ at, of }) => ({ at: Math.floor(at), place: `on line ${of}` }));
}

/** From where its bottom is cut to where it is cut again. */
function stretchesBetween({ start, end, passes }: SplicedLine['line']): { from: Ticks; to: Ticks }[] {
    const cuts = passes.filter(pass => pass.cuts), edge = (bottom: number, face: number, dies: boolean): Ticks => Math.round(dies ? face : bottom);
    const starts = [start, ...cuts.map(cut => edge(cut.bottomHigh, cut.high, cut.relation === 'dies'))], ends = [...cuts.map(cut => edge(cut.bottomLow, cut.low, cut.relation === 'dies')), end];
    return starts.map((from, i) => ({ from, to: ends[i]! }));
}

function saidSplices(spliced: SplicedLine, spec: LineSpec, troubles: Trouble[]): readonly Splice[] {
    const { line, ends, job } = spliced;
    const fail = (said: LineSpec['splices'][number], what: string, instead: string): Splice[] => {
        troubles.push({ kind: 'not-supported', what, because: 'nothing is joined there', instead, at: said.at });
        return [];
    };
    const within = stretchesBetween(line);
    const splices = spec.splices.flatMap((said): Splice[] => {
        const hook: Tape | undefined = said.from === undefined ? { at: ends[0], way: 1 } : hooks(spliced).get(said.from);
        if (!hook) {
            const has = [...hooks(spliced).keys()].filter(name => !name.startsWith('wall-'));
            troubles.push({ kind: 'unknown-meeting', of: `the splices of line ${line.name} to be measured from`, name: said.from!, has, at: said.at });
            return [];
        }
        const at = Math.round(hook.at) + hook.way * said.value;
        if (within.some(one => at > one.from && at < one.to)) return [{ at, place: placeOf(at, line), said: said.at, tape: hook }];
        if (at > line.start && at < line.end) return fail(said, `a splice of line ${line.name} where its bottom is cut anyway`, 'a splice within a piece of its bottom');
        const size = (ticks: Ticks): string => printLength(ticks, job.show.value);
        return fail(said, `a splice at ${size(said.value)} on line ${line.name}`, `a place between its ends, less than ${size(Math.round(hook.way > 0 ? line.end - hook.at : hook.at - line.start))}`);
    });
    return splices.sort((a, b) => a.at - b.at).filter(({ at }, i, all) => at !== all[i - 1]?.at);
}

/** Where the tape can be hooked on, and which way it is pulled: the ends of the line, by side and by name, and the centers of the lines that it meets. */
function hooks({ line, ends: [first, last], names: [from, to] }: SplicedLine): ReadonlyMap<string, Tape> {
    const sides: readonly [Side, Side] = line.runs === 'east-west' ? ['west', 'east'] : ['north', 'south'];
    const found = new Map<string, Tape>();
    for (const [at, way, names] of [[first, 1, [sides[0], from]], [last, -1, [sides[1], to]]] as const) {
        for (const name of names) for (const word of [name, `wall-${name}`]) if (!found.has(word)) found.set(word, { at, way });
    }
    for (const { of, at } of line.passes) if (!found.has(of)) found.set(of, { at, way: 1 });
    return found;
}

function placeOf(at: Ticks, line: SplicedLine['line']): string {
    const over = line.passes.filter(crosses).find(({ low, high }) => at > low && at < high);
    return over ? `on line ${over.of}` : `in bay ${bayAt(line, at)}`;
}
