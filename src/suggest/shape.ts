import { inches } from '../quantity/rational.ts';

/** How equal and how square coffers are, by the boxes round them. */
interface Shape { readonly unequal: number; readonly offSquare: number }

/** Coffers that differ by no more pass as equal: as the rule of the end coffers has it. */
const PASSES = inches('1/16');
/** Grids whose shapes differ by less than such a share are as good, and other things decide. Common practice, no source. */
const GRADE = 0.05;

/**
 * Both are 0 of equal squares. `unequal`: by how much of their mean the coffers of a direction differ at most; `offSquare`: how much longer than
 * wide they are on the mean.
 */
export function shapeOf(coffers: readonly { readonly width: number; readonly length: number }[]): Shape {
    const longer = coffers.map(({ width, length }) => Math.max(width, length) / Math.min(width, length) - 1);
    return {
        unequal: Math.max(spreadOf(coffers.map(({ width }) => width)), spreadOf(coffers.map(({ length }) => length))),
        offSquare: longer.reduce((sum, each) => sum + each, 0) / Math.max(1, longer.length),
    };
}

function spreadOf(sizes: readonly number[]): number {
    if (sizes.length === 0) return 0;
    let least = Infinity, most = -Infinity, sum = 0;
    for (const size of sizes) { least = Math.min(least, size); most = Math.max(most, size); sum += size; }
    return most - least <= PASSES ? 0 : (most - least) / (sum / sizes.length);
}

/** The less, the better; whole numbers. */
export function gradeOf({ unequal, offSquare }: Shape): number {
    return Math.floor((unequal + offSquare) / GRADE + 1e-9);
}
