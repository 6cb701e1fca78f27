/** The greatest common divisor of two whole numbers of one kind, neither less than nothing; of 0 and another the other. */
export function gcd<Whole extends number | bigint>(a: Whole, b: Whole): Whole {
    // whichever kind they are of, they are both
    let [x, y] = [a as number, b as number];
    while (y > 0) [x, y] = [y, x % y];
    return x as Whole;
}
