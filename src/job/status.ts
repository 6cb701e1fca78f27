import type { Given } from '../provenance/source.ts';

/** How a dimension is known, the better the further on: off a drawing, from somebody who said it, measured once, measured again and found the same. */
const STATUSES = ['drawn', 'told', 'measured', 'verified'] as const;
export type Status = (typeof STATUSES)[number];

/** How a dimension is known, when and by whom, as far as it is said. Of what has a day or was found on site `measured` stands, and is not `said`. */
export interface Recorded { readonly status?: Given<Status>; readonly on?: string; readonly by?: string }

/** Whether a dimension is known at least so well. */
export function isAsGood(status: Status | undefined, least: Status): boolean {
    return status !== undefined && STATUSES.indexOf(status) >= STATUSES.indexOf(least);
}
