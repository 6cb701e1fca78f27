import type { Tape } from '../quantity/print-length.ts';
import type { JobSettings } from './model.ts';

/** What lengths that are worked out are read off in this job. */
export function tapeOf({ show, cutTo }: Pick<JobSettings, 'show' | 'cutTo'>): Tape {
    return { show: show.value, step: cutTo.value };
}
