import { describe, expect, test } from 'vitest';
import type { CuttingProblem } from '../../../src/cutting/solve/problem.ts';
import { flowModel, leastCostBy, whatIsMissing } from './flow-model.ts';
import { problemOfPieces, proved } from './problems.ts';
import { drawer } from '../../support/drawer.ts';

/** A room's boards in 1/4": three lengths at prices per foot that rise with the length, and two offcuts. */
function room(pieces: number, seed: number): CuttingProblem {
    const draw = drawer(seed);
    const lengths = Array.from({ length: 7 }, () => 60 + draw(400));
    return problemOfPieces(Array.from({ length: pieces }, () => lengths[draw(lengths.length)]!), [
        { capacity: 160 + draw(40), cost: 0, available: 1 },
        ...[384, 576, 768].map((capacity, i) => ({ capacity, cost: Math.round(capacity * (20 + 3 * i + draw(3)) / 10), available: null })),
    ]);
}

describe('two other programs find the same least cost', () => {
    test.for([1, 2, 3, 4, 5, 6])('glpsol, job %i', (seed, { skip }) => {
        skip(whatIsMissing('glpsol') !== undefined, whatIsMissing('glpsol'));
        const problem = room(18 + seed, seed);
        const { cost, bound } = proved(problem);
        expect(bound).toBe(cost);
        expect(leastCostBy('glpsol', flowModel(problem))).toBe(cost);
    });
    test.for([11, 12, 13, 14, 15, 16])('cbc, job %i', (seed, { skip }) => {
        skip(whatIsMissing('cbc') !== undefined, whatIsMissing('cbc'));
        const problem = room(20 + seed, seed);
        const { cost, bound } = proved(problem);
        expect(bound).toBe(cost);
        expect(leastCostBy('cbc', flowModel(problem))).toBe(cost);
    });
});
