import { stepsOfPieces, waitsOf } from './steps-of-pieces.ts';
import type { Joint } from '../takeoff/model.ts';
import type { InTurn, PutUp, StepKind } from './model.ts';

/** What is cut and put up before the first bay is measured. */
const BEFORE_MEASURED: readonly StepKind[] = ['panel', 'blocking', 'spacers', 'first-bay'];

/**
 * What several crews have to keep in turn so that every way that was tried in the order of the steps goes in whatever order they do them. `blocks`: of every
 * piece the names of those later ones that would be in the way of its path if they were up.
 *
 * Why that is enough. Let the steps be done in any order in which everything waits for what it needs and for what is in turn. When a piece goes up, what is
 * up comes either before it in the order of the steps: then its way was tried past it; or after it: then it is not in the way, since else it would have
 * had to wait. And of two pieces with a joint with biscuits always the same one is up first, so a piece finds the same biscuits as when it was tried. A way is
 * tried past each piece for itself, so nothing but these pairs matters. Pieces go up one at a time there: of two that are in the air at once
 * one gives way where their ways cross.
 */
export function inTurnOf({ steps, before }: Pick<PutUp, 'steps' | 'before'>, blocks: ReadonlyMap<string, readonly string[]>, joints: readonly Joint[]): InTurn[] {
    const stepOf = stepsOfPieces(steps), waits = waitsOf({ steps, before, inTurn: [] }), found = new Map<string, InTurn>();
    const add = (first: number | undefined, then: number | undefined, why: InTurn['why']): void => {
        // what it waits for anyway is not told twice
        if (first === undefined || then === undefined || first >= then || waits.get(then)!.has(first)) return;
        const key = `${first} ${then}`;
        if (!found.has(key)) found.set(key, { first, then, why });
    };
    for (const [id, others] of blocks) for (const other of others) add(stepOf.get(id), stepOf.get(other), 'in-the-way');
    for (const { biscuits, pieces } of joints) {
        const [a, b] = pieces.map(id => stepOf.get(id)) as [number | undefined, number | undefined];
        if (biscuits && a !== undefined && b !== undefined) add(Math.min(a, b), Math.max(a, b), 'biscuits');
    }
    const gate = steps.findLast(({ kind }) => kind === 'first-bay');
    if (gate) for (const { number, kind } of steps) if (!BEFORE_MEASURED.includes(kind)) add(gate.number, number, 'first-bay');
    return [...found.values()].sort((a, b) => a.first - b.first || a.then - b.then);
}
