import type { Step } from './model.ts';

/** The number of the step of every piece, by its name in the cut list. */
export function stepsOfPieces(steps: readonly Step[]): ReadonlyMap<string, number> {
    return new Map(steps.flatMap(({ number, placings }) => placings.map(({ piece }) => [piece.id, number] as const)));
}
