import type { Run, Section } from '../../ceiling/model.ts';
import type { JobSettings } from '../../job/model.ts';
import { t } from '../../pages/shared/words.ts';
import { printLength } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';

export function pieces(count: number): string {
    return count === 1 ? t('1 piece') : t('{0} pieces', count);
}

export function coffers(count: number): string {
    return count === 1 ? t('1 coffer') : t('{0} coffers', count);
}

/** The sizes that the coffers of one direction are cut to: `3' 4 1/2"`, or `3' 4 1/2" to 3' 4 9/16"` where they are not alike. */
export function cofferSizes({ residue }: Run, job: JobSettings): string {
    const sizes = residue.cutCoffers;
    if (sizes.length === 0) return '';
    const least = sizes.reduce((a, b) => Math.min(a, b)), most = sizes.reduce((a, b) => Math.max(a, b));
    return least === most ? print(least, job) : t('{0} to {1}', print(least, job), print(most, job));
}

/** `4 3/4" deep, 7" wide`; undefined where neither is known. */
export function beamSize({ depth, outerWidth }: Section, job: JobSettings): string | undefined {
    const parts = [depth && t('{0} deep', print(depth.ticks, job)), outerWidth && t('{0} wide', print(outerWidth.ticks, job))].filter(part => part !== undefined);
    return parts.length > 0 ? parts.join(', ') : undefined;
}

/** How the bottom goes in between the sides; the figure is for both sides together. */
export function fitOfBottom({ fit }: Section, job: JobSettings): string | undefined {
    if (!fit) return undefined;
    if (fit.ticks === 0) return t('no play');
    return fit.ticks > 0 ? t('{0} play in all', print(fit.ticks, job)) : t('{0} too wide', print(-fit.ticks, job));
}

export function print(ticks: Ticks, job: JobSettings): string {
    return printLength(ticks, job.show.value);
}
