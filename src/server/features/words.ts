import type { Run, Section } from '../../ceiling/model.ts';
import type { JobSettings } from '../../job/model.ts';
import { printLength } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** `12 coffers`, `1 piece`. */
export function counted(count: number, word: string): string {
    return `${count} ${word}${count === 1 ? '' : 's'}`;
}

/** The sizes that the coffers of one direction are cut to: `3' 4 1/2"`, or `3' 4 1/2" to 3' 4 9/16"` where they are not alike. */
export function cofferSizes({ residue }: Run, job: JobSettings): string {
    const sizes = residue.cutCoffers;
    if (sizes.length === 0) return '';
    const least = sizes.reduce((a, b) => Math.min(a, b)), most = sizes.reduce((a, b) => Math.max(a, b));
    return least === most ? print(least, job) : `${print(least, job)} to ${print(most, job)}`;
}

/** `4 3/4" deep, 7" wide`; undefined where neither is known. */
export function beamSize({ depth, outerWidth }: Section, job: JobSettings): string | undefined {
    const parts = [depth && `${print(depth.ticks, job)} deep`, outerWidth && `${print(outerWidth.ticks, job)} wide`].filter(part => part !== undefined);
    return parts.length > 0 ? parts.join(', ') : undefined;
}

/** How the bottom goes in between the sides; the figure is for both sides together. */
export function fitOfBottom({ fit }: Section, job: JobSettings): string | undefined {
    if (!fit) return undefined;
    if (fit.ticks === 0) return 'no play';
    return fit.ticks > 0 ? `${print(fit.ticks, job)} play in all` : `${print(-fit.ticks, job)} too wide`;
}

export function print(ticks: Ticks, job: JobSettings): string {
    return printLength(ticks, job.show.value);
}
