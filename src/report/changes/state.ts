import type { Changes } from '../../changes/model.ts';
import type { RoomPieces } from '../house.ts';

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
