import type { JobSettings } from '../../job/model.ts';
import { PLURAL } from '../../job/part.ts';
import type { Row } from '../../takeoff/rows.ts';
import type { Found } from '../rule.ts';
import { FAULT_OF_THE_LIST } from './fit-words.ts';
import { sizesOf } from './words.ts';

/** A row that does not add up to its room, as a finding. */
export function rowFound({ part, pieces: [first], sum, room }: Row, job: JobSettings): Found {
    const size = sizesOf(job), { line, on, source } = first!;
    const where = line === null ? `on the ${on} wall` : `of line ${line}${on === null ? '' : `, ${on} side,`}`;
    return {
        at: source, severity: 'error',
        message: `The ${PLURAL[part]} ${where} with what stands between the pieces come to ${size.fine(sum)}, and there are ${size.fine(room)}: `
            + `${size.fine(Math.abs(sum - room))} too ${sum > room ? 'long' : 'short'}. ${FAULT_OF_THE_LIST}`,
    };
}
