/**
 * Pairs places along a line, both lists from the least on, so that none of the shorter list is left alone and the pairs keep their order, with the
 * least sum of distances: exactly, by trying every split (dynamic programming). Each place of either list comes once; `undefined` for the side it lacks.
 */
export function matchInOrder(before: readonly number[], after: readonly number[]): [number | undefined, number | undefined][] {
    const turned = before.length > after.length, [few, many] = turned ? [after, before] : [before, after];
    // best[i][j]: the least distance of the first i of the few, all paired with some of the first j of the many
    const best = [many.map(() => 0).concat(0)];
    for (let i = 1; i <= few.length; i++) {
        const row: number[] = new Array<number>(many.length + 1).fill(Infinity);
        for (let j = i; j <= many.length; j++) row[j] = Math.min(row[j - 1]!, best[i - 1]![j - 1]! + Math.abs(few[i - 1]! - many[j - 1]!));
        best.push(row);
    }
    const pairs: [number | undefined, number | undefined][] = [];
    for (let i = few.length, j = many.length; j > 0; j--) {
        const isAlone = i === 0 || j > i && best[i]![j - 1]! <= best[i]![j]!;
        pairs.push(isAlone ? [undefined, j - 1] : [--i, j - 1]);
    }
    return pairs.reverse().map(([a, b]) => (turned ? [b, a] : [a, b]));
}
