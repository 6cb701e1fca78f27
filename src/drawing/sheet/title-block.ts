import type { JobSettings } from '../../job/model.ts';
import { sizeWithUnit } from '../figures.ts';
import type { TitleBlock } from './frame.ts';

/** What a sheet says of itself. `unnamed`: what the job is called where it has no title. */
export type OfSheet = Pick<TitleBlock, 'room' | 'drawing' | 'detail' | 'scale' | 'sheet'> & { readonly unnamed: string; readonly of?: string };

/** The title block of a sheet of a job: what all of them say, and what this one is. */
export function titleBlock(job: JobSettings, { unnamed, of = '', ...said }: OfSheet): TitleBlock {
    const show = job.show.value;
    return {
        ...said, of, job: job.title?.value ?? unnamed, ...job.client === undefined ? {} : { client: job.client.value },
        cutTo: sizeWithUnit(job.cutTo.value, show), lengths: show === 'millimeters' ? 'millimeters' : 'feet, inches',
    };
}
