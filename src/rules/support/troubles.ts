import type { Layout, Section, Trouble } from '../../ceiling/model.ts';
import { profileTroubles } from '../../ceiling/profile-troubles.ts';

type Kind = Trouble['kind'];
type Of<K extends Kind> = Extract<Trouble, { kind: K }>;

/** The troubles of one kind that the layout met. Each kind has one rule that says it. */
export function troublesOf<K extends Kind>({ troubles }: Layout, kind: K): Of<K>[] {
    return troubles.filter((trouble): trouble is Of<K> => trouble.kind === kind);
}

/** Those of a profile, which belong to it and not to every room that uses it. */
export function profileTroublesOf<K extends Kind>(section: Section, kind: K): Of<K>[] {
    return profileTroubles(section).filter((trouble): trouble is Of<K> => trouble.kind === kind);
}
