import type { Use } from '../../cutting/uses.ts';
import { recordOf } from '../../cutting/as-cut.ts';
import type { Fix } from '../../findings/finding.ts';
import type { AsCut, CutBoard, CutName, JobSettings } from '../../job/model.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import { roughWidth } from '../../takeoff/rough-width.ts';
import { intoFix } from './cut-boards.ts';
import { replacing } from './fixes.ts';
import { sizesOf } from './words.ts';

/** What a piece that is cut becomes, as a sentence. */
export function useText({ into, how }: Use, { length }: Pick<AsCut, 'length'>, job: JobSettings): string {
    const name = nameInRoom(into), off = length - into.cutOverall, size = sizesOf(job);
    if (how === 'keep') return `It fits as it is for ${name}.`;
    const ripped = how === 'rip' ? `Ripped to ${size(roughWidth(into))} and cut` : 'Recut', rest = off >= job.shortestOffcut.value ? `, with an offcut of ${size(off)},` : `, ${size(off)} shorter,`;
    return `${ripped} to ${size(into.cutOverall)}${off > 0 ? rest : ''} it becomes ${name}, which keeps the most of the wood in this room: then write that name, and how it was recut.`;
}

/** Writes what it became: another name where it is taken as it is, else how it was recut too. */
export function useFix(board: CutBoard, name: CutName, { into, how }: Use, job: JobSettings): Fix[] {
    const now = nameInRoom(into);
    if (how === 'keep') return replacing(name, now, `Use it for ${now}`);
    const title = how === 'rip' ? `It has been ripped and recut as ${now}: write so` : `It has been recut as ${now}: write so`;
    return intoFix(board, one => (one === name ? recordOf(into) : one.asCut), job, title, one => (one === name ? now : one.value));
}

/** Where nothing of its room is best made from it. */
export const USELESS = 'No piece of this room that is still to be cut comes out of it. Whether another room of the house has a use for it is told by `compare`, and in the pane of changes.';
