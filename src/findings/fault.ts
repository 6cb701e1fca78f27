import { findingOf, type Finding } from './finding.ts';
import type { Source } from '../provenance/source.ts';

/**
 * A mistake of the program, told as a finding in the file that brought it about: it must not take the findings of other files
 * along, nor pass for a file without faults. `doing`: what it was kept from.
 */
export function faultAt(at: Source, error: unknown, doing: string): Finding {
    const reason = error instanceof Error ? error.message : String(error);
    return findingOf({ rule: 'internal-error', at, message: `A fault in Cofferwright itself kept it from ${doing}: ${reason}.` });
}

/** The first place of a file. */
export function topOf(uri: string): Source {
    const start = { line: 0, character: 0 };
    return { uri, range: { start, end: start } };
}
