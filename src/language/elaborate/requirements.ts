import type { Requirement } from '../../job/model.ts';
import { isBroken } from '../types/broken.ts';
import { sourceOf } from '../types/place.ts';
import type { Block } from './block.ts';
import type { Evaluator } from './evaluate.ts';
import { printValue } from './print.ts';

/** What a profile, and what it is like, requires of the arguments, worked out, with both sides in words. */
export function requirementsOf(block: Block, evaluator: Evaluator): Requirement[] {
    return block.requires.filter(require => require.cond).map(require => {
        const found = isBroken(require) ? undefined : evaluator.evaluate(require.cond);
        const value = found?.value.is === 'comparison' ? found.value : undefined;
        return {
            at: sourceOf(require.cond), text: (require.cond.$cstNode?.text ?? '').replace(/\s+/g, ' '), via: found?.via ?? [],
            ...require.title !== undefined && { message: require.title },
            ...value && { holds: value.holds, left: printValue(value.left), operator: value.operator, right: printValue(value.right) },
        };
    });
}
