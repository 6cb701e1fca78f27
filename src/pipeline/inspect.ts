import { laidOutAsBefore } from '../ceiling/as-before.ts';
import { layOut } from '../ceiling/layout.ts';
import type { Layout } from '../ceiling/model.ts';
import { faultAt, topOf } from '../findings/fault.ts';
import { compareFindings, type Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import type { Room } from '../job/model.ts';
import { kept } from '../plain/kept.ts';
import { besideRules, runRules } from '../rules/run.ts';
import { findingsOfAlternates } from './alternates.ts';

/**
 * The one way from what a file says to what is known about it. The editor, the command line and the tests all ask here,
 * so nothing is computed twice and nobody can disagree: results are kept by identity of the data they were made from.
 * A keystroke in one room makes new data for that room's file only; everything else is found again, unchanged.
 */
export interface Inspection {
    /** Everything wrong in this file, in the order of the text. */
    readonly findings: readonly Finding[];
    /** One a room, in the order of the text. */
    readonly layouts: readonly Layout[];
}

/** Never throws: one file in which something fails must not silence the others. */
export const inspect = kept((file: FileContent): Inspection => {
    try {
        const layouts = file.rooms.map(room => layoutOf(room));
        const ofRules = runRules(file, layouts, findingsOfAlternates(file, layoutOf));
        const findings = [...besideRules(file, ofRules), ...ofRules].sort(compareFindings);
        return { findings, layouts };
    } catch (error) {
        return { findings: [faultAt(topOf(file.uri), error, 'checking this file'), ...file.findings], layouts: [] };
    }
});

export const layoutOf: (room: Room) => Layout = kept(room => laidOutAsBefore(room, layOut));

/** Few findings need the pieces, so they are taken off when somebody asks for them. */
export { takeOffOf } from '../takeoff/take-off.ts';
