import type { AstNode } from 'langium';
import type { NominalSize, Profile, Stock } from '../../job/model.ts';
import type { Source } from '../../provenance/source.ts';
import type { Tolerance } from '../../quantity/measure.ts';
import { Rational } from '../../quantity/rational.ts';
import type * as ast from '../generated/ast.ts';
import { typeOfWords } from '../types/declared.ts';
import { atom, COUNT, DATE, fits, GAUGE, isPlainNumber, NUMBER_SIZE, pair, PERCENT, SIZE, TEXT, type Quantity, type Type } from '../types/type.ts';

/**
 * What an expression comes to. Quantities are exact, in ticks, minutes, degrees and whole units of money and their
 * products; they are rounded once, when they are bound to a length.
 */
export type Value =
    | { readonly is: 'quantity'; readonly exact: Rational; readonly type: Quantity; readonly tolerance: Tolerance; /** What it is for each of, where something counted stands after `per`: `joint`. */ readonly per?: string }
    | { readonly is: 'word'; readonly word: string; readonly list: ast.Words }
    | { readonly is: 'text' | 'number-size' | 'date'; readonly text: string }
    | { readonly is: 'gauge'; readonly gauge: number }
    | { readonly is: 'size'; readonly size: NominalSize }
    | { readonly is: 'pair' | 'range'; readonly first: Known; readonly second: Known }
    | { readonly is: 'comparison'; readonly holds: boolean; readonly left: Value; readonly operator: string; readonly right: Value }
    | { readonly is: 'stock'; readonly stock: Stock }
    | { readonly is: 'profile'; readonly profile: Profile }
    | { readonly is: 'thing'; readonly node: ast.Fixture | ast.Room };

/** A value and the arguments it came through, innermost first. Unknown is `undefined`, everywhere. */
export interface Known { readonly value: Value; readonly via: readonly Source[] }

export function known(value: Value, via: readonly Source[] = NO_VIA): Known {
    return { value, via };
}
const NO_VIA: readonly Source[] = [];

export function number(exact: Rational, type: Quantity, tolerance: Tolerance = NO_TOLERANCE, per?: string): Value {
    return per === undefined ? { is: 'quantity', exact, type, tolerance } : { is: 'quantity', exact, type, tolerance, per };
}
const NO_TOLERANCE: Tolerance = [];

/** Whether a value may stand where a type is declared. Where it may not, the checker of types has said so. */
export function conforms(want: Type | undefined, value: Value): boolean {
    if (!want) return true;
    if (want.is === 'many') return conforms(want.of, value);
    if ((want.is === 'pair' || want.is === 'range') && value.is === want.is) {
        return conforms(want.first, value.first.value) && conforms(want.second, value.second.value);
    }
    return fits(want, typeOf(value));
}

const STOCK = atom('Stock'), PROFILE = atom('Profile');

function typeOf(value: Value): Type | undefined {
    switch (value.is) {
        // Of a number only its wholeness matters from here on, and that is checked where it is bound.
        case 'quantity': return isPlainNumber(value.type) && value.type !== PERCENT ? COUNT : value.type;
        case 'word': return typeOfWords(value.list);
        case 'text': return TEXT;
        case 'number-size': return NUMBER_SIZE;
        case 'date': return DATE;
        case 'gauge': return GAUGE;
        case 'size': return SIZE;
        case 'pair': case 'range': return pair(typeOf(value.first.value), typeOf(value.second.value), value.is);
        case 'comparison': return undefined;
        case 'stock': return STOCK;
        case 'profile': return PROFILE;
        case 'thing': return undefined;
    }
}

/** Equal values have equal keys. Things declared elsewhere count by their own keys. */
export function keyOf(value: Value | undefined): string {
    if (!value) return '?';
    switch (value.is) {
        case 'quantity': return `${value.exact.toFraction()}${value.type.currency}${value.type === PERCENT ? '%' : ''}${value.tolerance.map(t => `±${t.reach} ${t.cause}`).join('')}`;
        case 'word': return value.word;
        case 'text': case 'number-size': case 'date': return value.text;
        case 'gauge': return `${value.gauge} ga`;
        case 'size': return value.size.text;
        case 'pair': case 'range': return `${keyOf(value.first.value)} ${value.is === 'pair' ? 'x' : 'to'} ${keyOf(value.second.value)}`;
        case 'comparison': return `${keyOf(value.left)} ${value.operator} ${keyOf(value.right)}`;
        case 'stock': return value.stock.key;
        case 'profile': return value.profile.key;
        case 'thing': return nameOf(value.node);
    }
}

function nameOf(node: AstNode & { name?: string }): string {
    return node.name ?? '?';
}

/** Equal, and made from the very same things: a stock that has changed since is another one. */
export function sameValue(a: Value | undefined, b: Value | undefined): boolean {
    if (a === b) return true;
    if (!a || !b || a.is !== b.is) return false;
    if (a.is === 'stock') return a.stock === (b as typeof a).stock;
    if (a.is === 'profile') return a.profile === (b as typeof a).profile;
    if (a.is === 'thing') return a.node === (b as typeof a).node;
    if (a.is === 'pair' || a.is === 'range') return sameValue(a.first.value, (b as typeof a).first.value) && sameValue(a.second.value, (b as typeof a).second.value);
    if (a.is === 'quantity') return sameQuantity(a, b as typeof a);
    return keyOf(a) === keyOf(b);
}

function sameQuantity(a: Extract<Value, { is: 'quantity' }>, b: typeof a): boolean {
    const x = a.exact, y = b.exact;
    return a.type === b.type && a.per === b.per && x.n === y.n && x.d === y.d && x.s === y.s && a.tolerance.length === b.tolerance.length
        && a.tolerance.every((term, i) => term.cause === b.tolerance[i]!.cause && term.reach === b.tolerance[i]!.reach);
}

/** What both sides of an operation came through, each argument once. */
export function both(a: readonly Source[], b: readonly Source[]): readonly Source[] {
    if (a.length === 0) return b;
    return b.length === 0 ? a : [...a, ...b.filter(source => !a.includes(source))];
}
