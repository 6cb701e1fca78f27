import { atOnce, type Steps } from '../../src/plain/steps.ts';

/** What is made step by step, made at once. */
export function madeBy<Asked extends readonly unknown[], Made>(steps: (...asked: Asked) => Steps<Made>): (...asked: Asked) => Made {
    return (...asked) => atOnce(steps(...asked));
}
