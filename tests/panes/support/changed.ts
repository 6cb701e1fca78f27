import type { ChangesKnown } from '../../../src/pages/changes/known.ts';
import type { RoomOnPage } from '../../../src/pages/page.ts';
import { Comparisons } from '../../../src/server/changes/comparisons.ts';
import { Rooms } from '../../../src/server/panes/rooms.ts';
import { OldEditor } from '../../support/old-editor.ts';
import { serve } from './content.ts';

type Texts = Readonly<Record<string, string>>;

/** What the server knows of a room's house when it has been compared with a commit in which the files said `before`. */
export async function changesSince(before: Texts, now: Texts, room: RoomOnPage, against?: string): Promise<ChangesKnown> {
    const workspace = await serve(now), editor = new OldEditor(() => now);
    editor.commits.set(COMMIT, before);
    const hand = { now: false, onRest: () => undefined }, fail = (words: string): never => { throw new Error(words); };
    const comparisons = new Comparisons(editor.history, workspace.shared, new Rooms(workspace.shared), hand, fail);
    return new Promise(resolve => {
        comparisons.onFound(known => { if (!('working' in known) && !('isLooking' in known && known.isLooking)) resolve(known); });
        comparisons.of(room, against);
    });
}
export const COMMIT = '3f2a1c98d0b74e6a5c1fe2b7a90d8e4c6b3a2f10';

/** The example house as it was before its owners changed their minds: another grid in the dining room, a line less in the library, a band less wide. */
export function beforeTheyChangedTheirMinds(now: Texts): Texts {
    const replaced = (path: string, words: string, old: string): string => {
        const text = now[path]!;
        if (text.split(words).length !== 2) throw new Error(`${words} must stand once in ${path}`);
        return text.replace(words, old);
    };
    return {
        ...now,
        'quince-lane/dining-room.coffer': replaced('quince-lane/dining-room.coffer', 'coffers-north  4', 'coffers-north  3'),
        'quince-lane/library.coffer': replaced('quince-lane/library.coffer', `lines-north  4' 4 1/8", 8' 11", 13' 9 7/8"`, `lines-north  4' 4 1/8", 8' 9"`),
    };
}
