import { Rational } from './rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM } from './ticks.ts';

/** `5 1/2`, `5-1/2`, `5½`, `5 ½`, `½`, `1/2`, `41.5`, `5`. */
const AMOUNT = String.raw`(?:(?<mixed>\d+)(?:[ \t]+|-)(?<over>\d+)\/(?<under>\d+)|(?<whole>\d*)[ \t]*(?<vulgar>[¼½¾⅛⅜⅝⅞])|(?<num>\d+)\/(?<den>\d+)|(?<decimal>\d+(?:\.\d+)?))`;
const FEET = String.raw`(?<feet>\d+(?:\.\d+)?)(?:['′’]|[ \t]*ft)`;
const INCH_MARK = String.raw`(?:["″”]|[ \t]*in)`;
const FORMS = [
    new RegExp(`^${FEET}(?:[ \\t]*|-)${AMOUNT}${INCH_MARK}$`),
    new RegExp(`^${FEET}$`),
    new RegExp(`^${AMOUNT}(?:["″”]|[ \\t]*(?<unit>in|mm|cm|m))$`),
];

const VULGAR: Readonly<Record<string, readonly [number, number]>> =
    { '¼': [1, 4], '½': [1, 2], '¾': [3, 4], '⅛': [1, 8], '⅜': [3, 8], '⅝': [5, 8], '⅞': [7, 8] };
const UNIT: Readonly<Record<string, number>> =
    { in: TICKS_PER_INCH, mm: TICKS_PER_MM, cm: 10 * TICKS_PER_MM, m: 1000 * TICKS_PER_MM };

/** No length on a job needs more; exact arithmetic on a pasted page of digits would stop the editor. */
const LONGEST_TEXT = 80;

/**
 * Reads a length as it is written on a job: `14' 3 1/2"`, `10'-5"`, `5-1/2"`, `5 ½"`, `41.5"`, `5 ft 6 in`, `140 mm`,
 * `1.25 m`, with straight or typographic marks, and a minus before it. Exact, in ticks (1/3" is no whole number of them).
 * Undefined where the text is no length, where a fraction is over zero, and past 80 characters.
 */
export function readLength(text: string): Rational | undefined {
    if (text.length > LONGEST_TEXT) return undefined;
    const trimmed = text.trim();
    const minus = /^[-−][ \t]*/.exec(trimmed);
    const rest = minus ? trimmed.slice(minus[0].length) : trimmed;
    for (const form of FORMS) {
        const groups = form.exec(rest)?.groups;
        if (!groups) continue;
        const size = sizeOf(groups);
        return minus ? size?.neg() : size;
    }
    return undefined;
}

function sizeOf(groups: Record<string, string | undefined>): Rational | undefined {
    const feet = groups.feet === undefined ? undefined : new Rational(groups.feet).mul(TICKS_PER_FOOT);
    const amount = amountOf(groups);
    if (amount === 'none') return feet;
    if (amount === undefined) return undefined;
    const size = amount.mul(UNIT[groups.unit ?? 'in'] ?? TICKS_PER_INCH);
    return feet ? feet.add(size) : size;
}

/** The figure before the unit; 'none' where there are only feet; undefined over zero. */
function amountOf(groups: Record<string, string | undefined>): Rational | 'none' | undefined {
    if (groups.mixed !== undefined) return overOf(groups.over!, groups.under!)?.add(groups.mixed);
    if (groups.vulgar !== undefined) return new Rational(...VULGAR[groups.vulgar]!).add(groups.whole || 0);
    if (groups.num !== undefined) return overOf(groups.num, groups.den!);
    return groups.decimal === undefined ? 'none' : new Rational(groups.decimal);
}

function overOf(over: string, under: string): Rational | undefined {
    return /^0+$/.test(under) ? undefined : new Rational(BigInt(over), BigInt(under));
}
