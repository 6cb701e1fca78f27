import type { CuttingProblem } from '../../../src/cutting/solve/problem.ts';
import { drawer } from '../../support/drawer.ts';
import { problemOfPieces } from './problems.ts';

const boards = (draw: (n: number) => number, ...capacities: readonly number[]) =>
    capacities.map((capacity, i) => ({ capacity, cost: Math.round(capacity * (20 + 3 * i + draw(3)) / 10), available: null, across: 45 }));
const offcut = (capacity: number, available: number, across = 45) => ({ capacity, cost: 0, available, across });

/** In 1/4": three lengths whose price per foot rises, and offcuts. */
function crosscut(pieces: number, seed: number): CuttingProblem {
    const draw = drawer(seed), lengths = Array.from({ length: 7 }, () => 60 + draw(400));
    return problemOfPieces(Array.from({ length: pieces }, () => lengths[draw(lengths.length)]!), [offcut(160 + draw(40), 2), ...boards(draw, 384, 576, 768)]);
}

/** Many lengths, one kind of board. */
function oneLength(pieces: number, seed: number): CuttingProblem {
    const draw = drawer(seed);
    return problemOfPieces(Array.from({ length: pieces }, () => 90 + draw(280)), [{ capacity: 767, cost: 3, available: null }]);
}

/** Every piece of another length: so many that they are planned in groups first. */
function manyLengths(pieces: number, seed: number): CuttingProblem {
    const draw = drawer(seed);
    return problemOfPieces(Array.from({ length: pieces }, (_, i) => 90 + 2 * i + draw(2)), boards(draw, 1536, 2304, 3072));
}

/** In 1/2" and widths in eighths with kerfs: cleats of 3/4", strips of 2 1/4", pieces of the whole width, and such as may be either. */
function ripped(kinds: number, seed: number, shortestSection?: number): CuttingProblem {
    const draw = drawer(seed), lanes = [[0], [1], [1], [2], [0, 2]];
    return {
        items: Array.from({ length: kinds }, (_, i) => ({ size: 26 + draw(110), count: 1 + draw(9), lanes: lanes[(i + draw(2)) % lanes.length]! })),
        boards: [offcut(60 + draw(60), 1, 20), ...boards(draw, 190, 286, 382), { capacity: 190, cost: 900, available: 2, across: 380, ripOnly: true }],
        strips: [7, 19], ...shortestSection !== undefined && { shortestSection },
    };
}

/** Jobs whose search is written down from its first plan to its end. */
export const JOBS: readonly (readonly [name: string, problem: CuttingProblem])[] = [
    ['crosscut 22', crosscut(22, 1)], ['crosscut 33', crosscut(33, 5)], ['one length 40', oneLength(40, 3)],
    ['one length 26', oneLength(26, 4)], ['ripped 6', ripped(6, 2)], ['sections 4', ripped(4, 3, 24)],
    ['sections 6', ripped(6, 4, 24)], ['sections 9', ripped(9, 5, 24)], ['sections 3', ripped(3, 6, 24)], ['ripped 12', ripped(12, 7)], ['crosscut 40', crosscut(40, 8)],
    ['many lengths 170', manyLengths(170, 9)], ['many lengths 310', manyLengths(310, 10)],
];
