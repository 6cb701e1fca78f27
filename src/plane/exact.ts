/**
 * Sums of two products of whole numbers, without loss: plain arithmetic where that is exact (up to 2^53), big integers
 * beyond. Numbers past 2^53 may come in as long as they are whole: they are taken for just what they are.
 */

/** The sign of a d - b c: -1, 0 or 1. */
export function signOfDifference(a: number, d: number, b: number, c: number): number {
    const left = a * d, right = b * c;
    if (Number.isSafeInteger(left) && Number.isSafeInteger(right)) return Math.sign(left - right) + 0;
    const difference = BigInt(a) * BigInt(d) - BigInt(b) * BigInt(c);
    return difference > 0n ? 1 : difference < 0n ? -1 : 0;
}

/** (a d - b c) / by, rounded to the nearest whole number: half a one towards +infinity. `by` is not 0. */
export function differenceOver(a: number, d: number, b: number, c: number, by: number): number {
    const left = a * d, right = b * c, difference = left - right;
    // the quotient of safe integers may still round to a half that it is not: only small divisors are taken here
    if (Number.isSafeInteger(left) && Number.isSafeInteger(right) && Number.isSafeInteger(difference)
        && Math.abs(by) <= 2) return Math.round(difference / by) + 0;
    return nearestOf(left, lostIn(a, d, left), right, lostIn(b, c, right), by) ?? inBigIntegers(a, d, b, c, by);
}

/**
 * The same from both products with what each lost, in plain numbers; undefined where these leave open to which side it is rounded. Each of the five roundings
 * on the way is at most 2^-53 of what is rounded: all of them together less than 2^-51 of the quotient and 2^-104 of the products over the divisor.
 */
function nearestOf(left: number, leftLost: number, right: number, rightLost: number, by: number): number | undefined {
    const products = Math.abs(left) + Math.abs(right), quotient = (left - right + (leftLost - rightLost)) / by, size = Math.abs(quotient);
    const off = size * 2 ** -51 + products / Math.abs(by) * 2 ** -104;
    // a larger quotient than that has no halves left
    const isOpen = Math.abs(quotient - Math.floor(quotient) - 0.5) <= off || !(size < 2 ** 48) || !(products < MOST_PRODUCT);
    return isOpen ? undefined : Math.round(quotient) + 0;
}
const MOST_PRODUCT = 2 ** 100;

/** What a product of two whole numbers lost when it was rounded, exact (Dekker 1971, with Veltkamp's halves). */
function lostIn(a: number, b: number, product: number): number {
    const aHigh = highHalf(a), aLow = a - aHigh, bHigh = highHalf(b), bLow = b - bHigh;
    return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
}

function highHalf(a: number): number {
    const wide = a * HALVES;
    return wide - (wide - a);
}
const HALVES = 2 ** 27 + 1;

function inBigIntegers(a: number, d: number, b: number, c: number, by: number): number {
    const over = BigInt(a) * BigInt(d) - BigInt(b) * BigInt(c);
    const divisor = BigInt(by);
    return Number(divisor > 0n ? floorOf(2n * over + divisor, 2n * divisor) : floorOf(-2n * over - divisor, -2n * divisor));
}

function floorOf(over: bigint, under: bigint): bigint {
    const quotient = over / under;
    return over % under < 0n ? quotient - 1n : quotient;
}
