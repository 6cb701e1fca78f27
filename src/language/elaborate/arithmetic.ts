import type { Tolerance } from '../../quantity/measure.ts';
import { minus, plus, times } from '../../quantity/tolerance.ts';
import { combine, isPlainNumber, LENGTH, mixed, quantity, sameDimensions, type Quantity } from '../types/type.ts';
import { number, type Value } from './value.ts';

type Number = Extract<Value, { is: 'quantity' }>;
type Trouble = 'divided-by-zero' | 'too-large' | 'too-many-causes';

/** A length that is off for so many reasons is one that nobody can follow; each is carried through all that is reckoned with it. */
export const MOST_CAUSES = 100;

/** Numerator and denominator stay below this: enough for any job, and nothing that could be typed takes noticeable time. */
const MOST = 1n << 320n;

/** Sum, difference, product or quotient, exact. Undefined where the two do not go together: the checker of types has said so. */
export function computed(operator: string, a: Value, b: Value): Number | Trouble | undefined {
    if (a.is !== 'quantity' || b.is !== 'quantity' || mixed(a.type, b.type)) return undefined;
    const result = operate(operator, a, b);
    if (typeof result !== 'object') return result;
    const per = a.per ?? b.per;          // twice 4 min per joint is still a time per joint
    if (per !== undefined) return { ...result, per };
    if (result.tolerance.length > MOST_CAUSES) return 'too-many-causes';
    return result.exact.n > MOST || result.exact.d > MOST ? 'too-large' : result;
}

function operate(operator: string, a: Number, b: Number): Number | Trouble | undefined {
    switch (operator) {
        case '*': return product(a, b, combine(a.type, b.type, 1));
        case '/': return b.exact.n === 0n ? 'divided-by-zero' : quotient(a, b, combine(a.type, b.type, -1));
    }
    if (!sameDimensions(a.type, b.type)) return undefined;
    const type = a.type === b.type ? a.type : quantity(a.type.dimensions, a.type.currency || b.type.currency);
    switch (operator) {
        case '+': return number(a.exact.add(b.exact), type, plus(off(a), off(b)).tolerance) as Number;
        case '-': return number(a.exact.sub(b.exact), type, minus(off(a), off(b)).tolerance) as Number;
        default: return undefined;
    }
}

function product(a: Number, b: Number, type: Quantity | undefined): Number | undefined {
    if (!type) return undefined;
    const exact = a.exact.mul(b.exact);
    if (isPlainNumber(b.type)) return number(exact, type, times(off(a), b.exact.valueOf()).tolerance) as Number;
    if (isPlainNumber(a.type)) return number(exact, type, times(off(b), a.exact.valueOf()).tolerance) as Number;
    return number(exact, type) as Number;
}

function quotient(a: Number, b: Number, type: Quantity | undefined): Number | undefined {
    if (!type) return undefined;
    const kept = isPlainNumber(b.type) ? times(off(a), 1 / b.exact.valueOf()).tolerance : [];
    return number(a.exact.div(b.exact), type, kept) as Number;
}

/** Only the tolerance is asked of a measure here; its length is kept exact beside it. */
function off(value: Number): { ticks: 0, tolerance: Tolerance } {
    return { ticks: 0, tolerance: value.tolerance };
}

/** `5 1/2" ± 1/64"`: what is on the right is the reach of one cause. Only lengths carry tolerances. */
export function tolerated(a: Value, b: Value, cause: string): Value | undefined {
    if (a.is !== 'quantity' || b.is !== 'quantity' || !sameDimensions(a.type, b.type)) return undefined;
    if (!sameDimensions(a.type, LENGTH)) return a;
    const reach = b.exact.abs().valueOf();
    const one: Tolerance = reach === 0 ? [] : [{ cause, reach }];
    return number(a.exact, a.type, plus(off(a), { ticks: 0, tolerance: one }).tolerance);
}

/** Undefined where the two cannot be compared. */
export function compared(operator: string, a: Value, b: Value): boolean | undefined {
    if (a.is !== 'quantity' || b.is !== 'quantity' || !sameDimensions(a.type, b.type) || mixed(a.type, b.type)) return undefined;
    const order = a.exact.compare(b.exact);
    switch (operator) {
        case '<': return order < 0;
        case '<=': return order <= 0;
        case '>': return order > 0;
        case '>=': return order >= 0;
        default: return undefined;
    }
}

export function negated(value: Value): Value | undefined {
    return value.is === 'quantity' ? number(value.exact.neg(), value.type, times(off(value), -1).tolerance, value.per) : undefined;
}

