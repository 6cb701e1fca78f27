import type { Ticks } from '../quantity/ticks.ts';
import type { Step, Take } from './model.ts';

/** What is cut off boards to length at one stop, square or to its miters, and in which step. */
interface CutOff { readonly number: number; readonly stop: Ticks; readonly takes: readonly Take[] }

export function cutOff(step: Step): CutOff[] {
    if (step.do === 'crosscut') return [step];
    return step.do === 'miter' ? step.cuts.flatMap(({ stop, takes }) => (takes && stop !== undefined ? [{ number: step.number, stop, takes }] : [])) : [];
}
