import type { DryFit, Fault } from '../../dryfit/model.ts';
import type { JobSettings } from '../../job/model.ts';
import { cofferOffSize, cofferWords } from '../../rules/coffer-off-size.ts';
import { isRounded, jointOpens, jointWords, severityOf } from '../../rules/joint-opens.ts';
import { countWords, isMiscount, pieceMiscounted } from '../../rules/piece-miscounted.ts';
import { overlaps, overlapWords, piecesOverlap } from '../../rules/pieces-overlap.ts';
import type { NamedRule } from '../../rules/rule.ts';
import { sizesOf } from '../../rules/support/words.ts';
import { undersideNotFlush, undersideWords } from '../../rules/underside-not-flush.ts';
import type { House, RoomPieces } from '../house.ts';
import type { FaultJson } from './shape.ts';

/** A room with how its cut list goes together; none where it could not be laid out. */
export interface RoomFit extends RoomPieces { readonly job: JobSettings; readonly fit: DryFit | undefined }

/** The rooms of a house, put together by whoever keeps the results. */
export function roomFits(houses: readonly House[], fitOf: (room: RoomPieces) => DryFit | undefined): RoomFit[] {
    return houses.flatMap(({ job, rooms }) => rooms.map(room => ({ ...room, job, fit: fitOf(room) })));
}

/** Whether there is nothing to fix in it; what is a hint, such as joints that paint closes, is told and not to be fixed. */
export function closes({ fit, job }: RoomFit): boolean {
    return fit !== undefined && fit.faults.every(fault => faultWords(fault, job).severity === 'hint');
}

/** What the editor says of it too, and the rule whose page explains it. */
export function faultWords(fault: Fault, job: JobSettings): { rule: NamedRule<FaultJson['rule']>; severity: FaultJson['severity']; message: string } {
    const size = sizesOf(job);
    if (isMiscount(fault)) return { rule: pieceMiscounted, severity: 'error', message: countWords(fault) };
    if (fault.kind === 'underside') return { rule: undersideNotFlush, severity: 'error', message: undersideWords(fault, size) };
    if (fault.kind === 'coffer') return { rule: cofferOffSize, severity: fault.planned ? 'warning' : 'error', message: cofferWords(fault, job) };
    const { clashes } = fault;
    return overlaps(fault) ? { rule: piecesOverlap, severity: 'error', message: overlapWords(fault, size) }
        : { rule: jointOpens, severity: isRounded(fault) ? severityOf(clashes) : 'error', message: jointWords(fault, size) };
}

/** What the dry fit shows, and what it does not. */
export const SHOWS = [
    'Every piece here has the form that its own line of the cut list gives it: cut lengths, miters, hand, rabbet, width, thickness. Its place comes from the layout, and so does what it should touch.',
    'It does not show what is not in the file: how flat the ceiling and how square the room is, how far a cut is off, paint, eased edges, slots and nails, or whether a piece can still be put in its place once its neighbors are up. It says nothing of what the ceiling can carry.',
];
