import type { Source } from '../../provenance/source.ts';
import { printLength } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import { replacing } from '../types/report.ts';
import { quoted } from '../types/words.ts';
import type { Raise } from './raised.ts';
import type { Value } from './value.ts';

/** Where a value is bound: which property of which kind of block, and how to say what is wrong with it. */
export interface Binding {
    /** `Sides.rabbet`, `Stock.price/for`. */
    readonly path: string;
    /** Its own name, for messages. */
    readonly name: string;
    readonly at: () => Source; readonly via: readonly Source[]; readonly raise: Raise;
}

/** Longer than any room, and short enough for every sum to stay exact. */
export const LONGEST: Ticks = 1000 * TICKS_PER_FOOT;
export const MOST_COUNTED = 1_000_000;

/**
 * Least values of what nothing after the language looks at. Sizes that a section or a layout is made of are not here:
 * there the rules say what is wrong with them, in terms of the beam.
 */
const MORE_THAN_NOTHING: ReadonlySet<string> = new Set([
    'Stock.lengths', 'Stock.on-hand', 'Stock.price/for', 'Stock.sheet', 'Measured.cut', 'Job.cut-to', 'Job.longest-board', 'Ceiling.height', 'Ceiling.covering/thickness',
    'Sides.rabbet', 'Cleats.gauge', 'Blocking.screws', 'Sides.nails', 'Cleats.nails', 'Bottom.nails', 'Trim.nails', 'Perimeter.nails',
    'Fixture.value/diameter', 'Board.rabbet', 'Board.width', 'Board.thickness', 'Board.length',
]);
const NOTHING_OR_MORE: ReadonlySet<string> = new Set([
    'Job.cut-tolerance', 'Job.kerf', 'Job.end-trim', 'Job.paint-film', 'Bottom.gap', 'Bottom.ease', 'Fixture.value/at', 'Fixture.value/keep-clear',
    'BeamLine.splice', 'Measured.cut/left', 'Job.shortest-offcut', 'Grid.lines-north', 'Grid.lines-east',
]);

/** Most values of a job's settings: more is a slip of the pen, and every board would be counted wrong. Common practice, no source. */
export const KIND_WITH_A_MOST = 'Job';
const AT_MOST: ReadonlyMap<string, Ticks> = new Map([
    ['Job.kerf', TICKS_PER_INCH], ['Job.end-trim', 4 * TICKS_PER_FOOT], ['Job.paint-film', TICKS_PER_INCH / 8], ['Job.cut-tolerance', TICKS_PER_INCH],
]);

/** The length, or undefined where no job has one like it; then that is raised. */
export function checkLength(ticks: Ticks, { path, name, at, via, raise }: Binding): Ticks | undefined {
    if (!(Math.abs(ticks) <= LONGEST)) {
        raise({ rule: 'out-of-range', at: at(), via, message: `${quoted(name)} is ${ticks < 0 ? 'less than -' : 'more than '}${printLength(LONGEST)}. Is the unit right?` });
        return undefined;
    }
    if (ticks <= 0 && MORE_THAN_NOTHING.has(path) || ticks < 0 && NOTHING_OR_MORE.has(path)) {
        raise({ rule: 'out-of-range', at: at(), via, message: `${quoted(name)} is ${printLength(ticks)}; it has to be ${MORE_THAN_NOTHING.has(path) ? 'more than nothing' : 'nothing or more'}.` });
        return undefined;
    }
    const most = AT_MOST.get(path);
    if (most !== undefined && ticks > most) {
        raise({ rule: 'out-of-range', at: at(), via, message: `${quoted(name)} is ${printLength(ticks)}; ${printLength(most)} is the most that is read. Is the unit right?` });
        return undefined;
    }
    return ticks;
}

/** A whole number from zero up, or undefined. */
export function checkCount(value: Value, { name, at, via, raise }: Binding): number | undefined {
    if (value.is !== 'quantity') return undefined;
    const count = value.exact.valueOf();
    if (value.exact.d !== 1n) raise({ rule: 'not-whole', at: at(), via, message: `${quoted(name)} is a count, so it wants a whole number; this is ${Number(count.toFixed(4))}.` });
    else if (count < 0 || count > MOST_COUNTED) raise({ rule: 'out-of-range', at: at(), via, message: `${quoted(name)} is ${count < 0 ? count : "more than a million"}; no job has that many.` });
    else return count;
    return undefined;
}

/** Whether a range goes upward; where it does not, that is raised. */
export function checkOrder(least: Ticks, most: Ticks, { name, at, via, raise }: Binding): boolean {
    if (least <= most) return true;
    const a = printLength(least), b = printLength(most);
    const sure = via.length === 0 && !a.startsWith('~') && !b.startsWith('~');
    const order = a === b ? 'Write the smaller one first.' : `${a} is more than ${b}. Write ${b} to ${a}.`;       // `~1/128"`, both of them
    raise({
        rule: 'range-upside-down', at: at(), via, message: `${quoted(name)} goes from the least to the most. ${order}`,
        fixes: sure ? [replacing(at(), `${b} to ${a}`)] : [],
    });
    return false;
}
