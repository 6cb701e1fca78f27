import { layOut } from '../ceiling/layout.ts';
import type { Layout } from '../ceiling/model.ts';
import { faultAt, topOf } from '../findings/fault.ts';
import { compareFindings, type Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import type { Room } from '../job/model.ts';
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
export function inspect(file: FileContent): Inspection {
    return inspections.for(file, () => {
        try {
            const layouts = file.rooms.map(layoutOf);
            const ofRules = runRules(file, layouts, findingsOfAlternates(file, layoutOf));
            const findings = [...besideRules(file, ofRules), ...ofRules].sort(compareFindings);
            return { findings, layouts };
        } catch (error) {
            return { findings: [faultAt(topOf(file.uri), error, 'checking this file'), ...file.findings], layouts: [] };
        }
    });
}

export function layoutOf(room: Room): Layout {
    return layouts.for(room, () => layOut(room));
}

/** Few findings need the pieces, so they are taken off when somebody asks for them. */
export { takeOffOf } from '../takeoff/take-off.ts';

class Kept<Key extends object, Value> {
    private readonly values = new WeakMap<Key, Value>();

    for(key: Key, make: () => Value): Value {
        let value = this.values.get(key);
        if (value === undefined) this.values.set(key, value = make());
        return value;
    }
}

const inspections = new Kept<FileContent, Inspection>();
const layouts = new Kept<Room, Layout>();
