import type { Changes } from '../../changes/model.ts';
import type { Finding } from '../../findings/finding.ts';
import { counted, listed } from '../../plain/words.ts';
import type { RoomPieces } from '../house.ts';
import { isAmongLines, standingOfRooms } from '../standing.ts';

/** Two states, and what changed between them, ready to be told. */
export interface Compared { readonly before: StateTold; readonly after: StateTold; readonly changes: Changes }

/** What a state is called, and how sound what is made from it is. */
export interface StateTold {
    /** `v1`, or `the files as they lie`. */
    readonly name: string;
    /** The commit it was read from; undefined of files as they lie. */
    readonly commit?: { readonly hash: string; readonly date: string; readonly subject: string };
    readonly rooms: readonly RoomPieces[];
}

/** `v1 (3f2a1c98, 2026-10-03: "Grid of four by three")`. */
export function stateText({ name, commit }: StateTold): string {
    return commit ? `${name} (${[commit.hash.slice(0, 8), commit.date].filter(word => word !== '').join(', ')}${commit.subject === '' ? '' : `: "${commit.subject}"`})` : name;
}

/** Findings that come or go, and how many of them stand at the head of the same output already, in words; those need not be read twice. */
export function byHead(findings: readonly Finding[], { rooms }: StateTold): { readonly atHead: string; readonly others: readonly Finding[] } {
    const standing = standingOfRooms(rooms), told = findings.filter(one => isAmongLines(standing, one)), isTold = new Set(told);
    const rules = [...new Set(told.map(({ rule }) => rule))];
    return { atHead: told.length === 0 ? '' : `${counted(told.length, 'error')} of those at the head: ${listed(rules)}`, others: findings.filter(one => !isTold.has(one)) };
}
