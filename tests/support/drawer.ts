/** Whole numbers below n, the same for the same seed. */
export function drawer(seed: number): (n: number) => number {
    let state = seed * 2654435761 >>> 0;
    return n => {
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
        return Math.floor(state / 2 ** 32 * n);
    };
}
