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
    const over = BigInt(a) * BigInt(d) - BigInt(b) * BigInt(c);
    const divisor = BigInt(by);
    return Number(divisor > 0n ? floorOf(2n * over + divisor, 2n * divisor) : floorOf(-2n * over - divisor, -2n * divisor));
}

function floorOf(over: bigint, under: bigint): bigint {
    const quotient = over / under;
    return over % under < 0n ? quotient - 1n : quotient;
}
