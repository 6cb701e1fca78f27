import type { HouseChange, SaidChange } from '../../changes/model.ts';
import type { StateTold } from '../../report/changes/state.ts';

/**
 * Why there is no earlier state to compare with. `not-asked`: the editor reads no history; `no-git`: it has nothing that does; `switched-off`: that is
 * not used; `no-repository`: the file lies in none that is open; `no-commit`: nothing is committed yet; `unknown-commit`: there is none of this name;
 * `not-signed`: no contract says a commit;
 * `too-many`: there are more job files than are read at once.
 */
export type NoHistory = 'not-asked' | 'no-git' | 'switched-off' | 'not-saved' | 'no-repository' | 'no-commit' | 'unknown-commit' | 'not-signed' | 'too-many' | 'fault';

/** What is known of what changed in a house since a commit. The same object as long as nothing more is known. */
export type ChangesKnown = { readonly none: NoHistory } | { readonly working: true } | ChangesFound;

export interface ChangesFound {
    readonly before: StateTold;
    readonly after: StateTold;
    readonly said: readonly SaidChange[];
    readonly house: HouseChange;
    readonly against: Against;
    /** A room is half written: this is how it was before. */
    readonly isBehind: boolean;
    /** What the dry fit finds is still looked for. */
    readonly isLooking: boolean;
    /** Files of the earlier state that could not be read, with why. */
    readonly unread: readonly { readonly file: string; readonly why: NoText }[];
}
/** Why there is no text of a file that was there. */
export type NoText = 'link' | 'too-large' | 'not-text' | 'unreadable';

/** What a house is compared with: the last commit, the one that its contract names as signed, or one that somebody chose. */
export type Against = 'last' | 'signed' | 'chosen';
