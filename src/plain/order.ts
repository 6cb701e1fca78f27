/**
 * Which of two comes first by figures that count one after the other: less than nothing where the first figure that differs is lower in `a`.
 * A figure that `b` has not is 0.
 */
export function compareEach(a: readonly number[], b: readonly number[]): number {
    return a.map((figure, i) => figure - (b[i] ?? 0)).find(difference => difference !== 0) ?? 0;
}

/** Which of two texts comes first by their characters alone, the same on every machine. */
export function compareTexts(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}
