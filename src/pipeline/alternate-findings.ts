import { isLaidOut } from '../ceiling/layout.ts';
import type { Finding } from '../findings/finding.ts';
import type { Alternate, ChangedRoom } from '../job/alternate.ts';
import type { FileContent } from '../job/file.ts';
import type { Room } from '../job/model.ts';
import { hasError, runFitRules } from '../rules/run-fit.ts';
import { newFindings } from './alternates.ts';
import { dryFitOf } from './inspect-closely.ts';
import { inspect, layoutOf, takeOffOf } from './inspect.ts';

/**
 * What is wrong with the rooms of an alternate, or not computed there, and is not so with the rooms of the job.
 * @param fileOf what the file of a room says, where what the dry fit finds is wanted too, which takes longer
 */
export function alternateFindings(alternate: Alternate, fileOf?: (uri: string) => FileContent | undefined): Finding[] {
    return alternate.rooms.flatMap(changed => {
        const found = newFindings(changed, alternate.at.uri, layoutOf);
        const file = fileOf?.(changed.room.at.uri);
        return file && !found.some(({ severity }) => severity === 'error') ? [...found, ...fitFindings(changed, file)] : found;
    });
}

function fitFindings({ instead, room }: ChangedRoom, file: FileContent): Finding[] {
    const found = ofFit(room, file);
    if (found.length === 0) return found;
    const before = new Set(ofFit(instead, file).map(({ rule, message }) => `${rule} ${message}`));
    return found.filter(({ rule, message, severity, allowed }) => !allowed && severity !== 'hint' && !before.has(`${rule} ${message}`));
}

function ofFit(room: Room, file: FileContent): Finding[] {
    const layout = layoutOf(room);
    if (!isLaidOut(layout) || hasError(layout, file, inspect(file).findings)) return [];
    return runFitRules(file, layout, takeOffOf(layout.ceiling), dryFitOf(layout.ceiling));
}
