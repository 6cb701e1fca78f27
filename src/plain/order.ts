/**
 * Which of two comes first by figures that count one after the other: less than nothing where the first figure that differs is lower in `a`.
 * A figure that `b` has not is 0.
 */
export function compareEach(a: readonly number[], b: readonly number[]): number {
    return a.map((figure, i) => figure - (b[i] ?? 0)).find(difference => difference !== 0) ?? 0;
}
