import type { Said } from '../types/report.ts';
import { findingOf, type Finding } from '../../findings/finding.ts';
import { compareSources, isWithin, placeKey, sameSource, type Source } from '../../provenance/source.ts';

/**
 * Something found while a value was worked out, with the arguments it came through. It may stand in a shared detail though
 * its cause is an argument in a room; whoever uses the detail then shows it at the argument.
 */
export interface Raised extends Said { readonly via?: readonly Source[] }
export type Raise = (raised: Raised) => void;

/**
 * What is raised by an instance of something shared and not by the shared thing itself, moved to where it is used.
 * `known` is what the shared thing shows at home. The outermost argument within `user` is the place, or else `user` itself.
 */
export function shownAtUser(raised: readonly Raised[], known: readonly Raised[], user: Source): Raised[] {
    return raised.filter(one => !known.some(other => sameRaised(one, other))).map(one => {
        if (isWithin(one.at, user)) return one;
        const argument = one.via?.findLast(place => isWithin(place, user));
        return { ...one, at: argument ?? user, related: [{ at: one.at, message: 'It is used here.' }, ...one.related ?? []], fixes: [], via: undefined };
    });
}

export function sameRaised(a: Raised, b: Raised): boolean {
    return a.rule === b.rule && sameSource(a.at, b.at) && a.message === b.message;
}

/** As findings, in the order of the text, each once. */
export function findingsOf(raised: readonly Raised[]): Finding[] {
    const findings: Finding[] = [];
    const seen = new Set<string>();
    for (const one of raised) {
        const key = `${one.rule} ${placeKey(one.at)} ${one.message}`;
        if (seen.has(key)) continue;
        seen.add(key);
        const { via: _, ...said } = one;
        findings.push(findingOf(said));
    }
    return findings.sort((a, b) => compareSources(a.at, b.at));
}
