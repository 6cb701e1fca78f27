import { atKey } from '../../plain/at-key.ts';

/**
 * What kind of thing an expression is. Quantities are vectors of exponents, so that 3.35 USD per ft times 12' is money
 * without anybody having said so; beside them stand things that are only themselves (a stock, a gauge, a word of a
 * list), pairs (`x`), ranges (`to`) and lists (`many`).
 * Equal types are the same object. Unknown is `undefined`: it goes with everything and says nothing.
 */
export type Type = Quantity | Atom | Pair | Many;

export interface Dimensions {
    readonly length: number; readonly mass: number; readonly time: number; readonly angle: number; readonly money: number;
}
export interface Quantity {
    readonly is: 'quantity';
    readonly dimensions: Dimensions;
    /** ISO code of the money in it; '' where there is none, or where any will do (a declared `Money`). */
    readonly currency: string;
    /** Tells counts from percentages where no dimension does, money for each of something from money, and a price of lumber from one per length. */
    readonly flavor: Flavor;
}
type Flavor = 'plain' | 'count' | 'ratio' | 'percent' | 'lumber' | 'each';
/** Named: `Stock`, `Profile`, `Corners`, `Gauge` … `words` where it is a list of words. */
interface Atom { readonly is: 'atom'; readonly name: string; readonly words?: readonly string[] }
interface Pair { readonly is: 'pair' | 'range'; readonly first: Type | undefined; readonly second: Type | undefined }
interface Many { readonly is: 'many'; readonly of: Type | undefined }

const NONE: Dimensions = { length: 0, mass: 0, time: 0, angle: 0, money: 0 };
const interned = new Map<string, Type>();

function intern<T extends Type>(key: string, make: () => T): T {
    return atKey(interned, key, make) as T;
}

export function quantity(some: Partial<Dimensions>, currency = '', flavor: Flavor = 'plain'): Quantity {
    const dimensions = { ...NONE, ...some };
    const kept = dimensions.money === 0 ? '' : currency;
    const { length, mass, time, angle, money } = dimensions;
    return intern(`${length},${mass},${time},${angle},${money}${kept} ${flavor}`, () => ({ is: 'quantity', dimensions, currency: kept, flavor }));
}
export function atom(name: string, words?: readonly string[]): Atom {
    return intern(`atom ${name} ${words?.join() ?? ''}`, () => ({ is: 'atom', name, ...words && { words } }));
}
export function pair(first: Type | undefined, second: Type | undefined, is: 'pair' | 'range' = 'pair'): Pair {
    return intern(`${is}(${keyOf(first)};${keyOf(second)})`, () => ({ is, first, second }));
}
export function many(of: Type | undefined): Many {
    return intern(`many(${keyOf(of)})`, () => ({ is: 'many', of }));
}
const keys = new WeakMap<Type, number>();
let nextKey = 1;
function keyOf(type: Type | undefined): number {
    return type ? atKey(keys, type, () => nextKey++) : 0;
}

export const LENGTH = quantity({ length: 1 });
const AREA = quantity({ length: 2 });
const VOLUME = quantity({ length: 3 });
export const TIME = quantity({ time: 1 });
export const ANGLE = quantity({ angle: 1 });
export const NUMBER = quantity({});
export const COUNT = quantity({}, '', 'count');
export const RATIO = quantity({}, '', 'ratio');
export const PERCENT = quantity({}, '', 'percent');
export const MONEY = quantity({ money: 1 });
/** What lumber costs: so much per length, per board foot, or each board. */
const PRICE_OF_LUMBER = quantity({ money: 1, length: -1 }, '', 'lumber');
export const TEXT = atom('Text');
export const NAME = atom('Name');
export const SIZE = atom('Size');
export const GAUGE = atom('Gauge');
export const NUMBER_SIZE = atom('NumberSize');
export const DATE = atom('Date');
/** What a comparison is; only `require` wants one. */
export const CONDITION = atom('Condition');

const BUILT_IN: ReadonlyMap<string, Type> = new Map<string, Type>([
    ['Length', LENGTH], ['Area', AREA], ['Volume', VOLUME], ['Money', MONEY], ['Time', TIME], ['Angle', ANGLE], ['Ratio', RATIO], ['Count', COUNT],
    ['Mass', quantity({ mass: 1 })], ['Gauge', GAUGE], ['NumberSize', NUMBER_SIZE], ['Size', SIZE], ['Text', TEXT], ['Date', DATE], ['Name', NAME],
]);
/** The type of a `quantity` of the built-in library. */
export function quantityNamed(name: string | undefined): Type | undefined {
    return name === undefined ? undefined : BUILT_IN.get(name);
}

/** `Money per Time`: the type of a rate that is declared. */
export function rateNamed(of: Type | undefined, per: string | undefined): Type | undefined {
    return of === MONEY && per === 'Lumber' ? PRICE_OF_LUMBER : combine(of, quantityNamed(per), -1);
}

/** `2.70 USD per ft`: the type of a rate. Money per count keeps what it is, since nothing of a count is left in its dimensions. */
export function rate(of: Type | undefined, per: string | undefined): Quantity | undefined {
    const type = combine(of, quantityNamed(per), -1);
    return per === 'Count' && type && sameDimensions(type, MONEY) ? quantity(type.dimensions, type.currency, 'each') : type;
}
/** Whether something is so much money for each board or sheet. */
export function isForEach(type: Type | undefined): boolean {
    return type?.is === 'quantity' && type.flavor === 'each';
}

/** Whether something is so much money per board foot (or other volume). */
export function isPerVolume(type: Type | undefined): boolean {
    return type?.is === 'quantity' && sameDimensions(type, combine(MONEY, VOLUME, -1));
}

/** Product or quotient of two quantities; undefined where one of them is none, or where two currencies meet. */
export function combine(a: Type | undefined, b: Type | undefined, sign: 1 | -1): Quantity | undefined {
    if (a?.is !== 'quantity' || b?.is !== 'quantity' || mixed(a, b)) return undefined;
    const x = a.dimensions, y = b.dimensions;
    return quantity({
        length: x.length + sign * y.length, mass: x.mass + sign * y.mass, time: x.time + sign * y.time,
        angle: x.angle + sign * y.angle, money: x.money + sign * y.money,
    }, a.currency || b.currency);
}
/** Two currencies that are both known and not the same. */
export function mixed(a: Type | undefined, b: Type | undefined): boolean {
    return a?.is === 'quantity' && b?.is === 'quantity' && a.currency !== '' && b.currency !== '' && a.currency !== b.currency;
}

/** Same dimensions, whatever the currency and the flavor: what may be added and compared. */
export function sameDimensions(a: Type | undefined, b: Type | undefined): boolean {
    if (a?.is !== 'quantity' || b?.is !== 'quantity') return a === b;
    const x = a.dimensions, y = b.dimensions;
    return x === y || x.length === y.length && x.mass === y.mass && x.time === y.time && x.angle === y.angle && x.money === y.money;
}
export function isPlainNumber(type: Type | undefined): boolean {
    return type?.is === 'quantity' && sameDimensions(type, NUMBER);
}

/** Whether something of type `got` may stand where `want` is wanted. */
export function fits(want: Type | undefined, got: Type | undefined): boolean {
    if (!want || !got || want === got) return true;
    if (want.is === 'many') return fits(want.of, got.is === 'many' ? got.of : got);
    if (want.is === 'quantity' && got.is === 'quantity') {
        if (want.flavor === 'lumber' && (isPerVolume(got) || isForEach(got))) return !mixed(want, got);
        if (!sameDimensions(want, got) || mixed(want, got)) return false;
        return want.flavor !== 'count' || got.flavor === 'count' || got.flavor === 'plain';
    }
    if (want.is === 'pair' || want.is === 'range') {
        if (got === SIZE && want.is === 'pair') return isPlainNumber(want.first) && isPlainNumber(want.second);    // coffers 4x3
        return got.is === want.is && fits(want.first, got.first) && fits(want.second, got.second);
    }
    if (want === NAME) return got === TEXT || got.is === 'quantity' && got.flavor === 'count';
    return want.is === 'atom' && got.is === 'atom' && want.name === got.name;
}
