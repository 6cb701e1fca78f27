import type { Source } from '../../provenance/source.ts';
import { printLength } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../quantity/ticks.ts';
import type { Facts } from '../types/facts.ts';
import { quoted } from '../types/words.ts';
import type { Raise } from './raised.ts';
import type { Value } from './value.ts';
import { replacing } from '../../findings/finding.ts';

/** Where a value is bound: what the library says of it, and how to say what is wrong with it. */
export interface Binding {
    readonly facts: Facts;
    /** Its own name, for messages. */
    readonly name: string;
    readonly at: () => Source; readonly via: readonly Source[]; readonly raise: Raise;
}

/** Longer than any room, and short enough for every sum to stay exact. */
export const LONGEST: Ticks = 1000 * TICKS_PER_FOOT;
const MOST_COUNTED = 1_000_000;

/** The length, or undefined where no job has one like it; then that is raised. */
export function checkLength(ticks: Ticks, { facts, name, at, via, raise }: Binding): Ticks | undefined {
    if (!(Math.abs(ticks) <= LONGEST)) {
        raise({ rule: 'out-of-range', at: at(), via, message: `${quoted(name)} is ${ticks < 0 ? 'less than -' : 'more than '}${printLength(LONGEST)}. Is the unit right?` });
        return undefined;
    }
    const { moreThan, least, most } = facts;
    if (moreThan !== undefined && ticks <= moreThan || least !== undefined && ticks < least) {
        const wanted = moreThan === undefined ? `${nothingOr(least!)} or more` : `more than ${nothingOr(moreThan)}`;
        raise({ rule: 'out-of-range', at: at(), via, message: `${quoted(name)} is ${printLength(ticks)}; it has to be ${wanted}.` });
        return undefined;
    }
    if (most !== undefined && ticks > most) {
        raise({ rule: 'out-of-range', at: at(), via, message: `${quoted(name)} is ${printLength(ticks)}; ${printLength(most)} is the limit. Is the unit right?` });
        return undefined;
    }
    return ticks;
}

function nothingOr(ticks: Ticks): string {
    return ticks === 0 ? 'nothing' : printLength(ticks);
}

/** A whole number from zero up, or undefined. */
export function checkCount(value: Value, { name, at, via, raise }: Binding): number | undefined {
    if (value.is !== 'quantity') return undefined;
    const count = value.exact.valueOf();
    if (value.exact.d !== 1n) raise({ rule: 'not-whole', at: at(), via, message: `${quoted(name)} is a count, so it needs a whole number; this is ${Number(count.toFixed(4))}.` });
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
