import { atKey } from '../../plain/at-key.ts';
import type { Files } from '../../report/look.ts';

/** Files by their way from the folder of the room's own: a list that is handed on says nothing of the machine it was made on. */
export function filesBeside(uri: string): Files {
    const folder = uri.split('/').slice(0, -1), names = new Map<string, string>();
    const nameOf = (other: string): string => {
        const parts = other.split('/');
        let same = 0;
        while (same < folder.length && same < parts.length - 1 && folder[same] === parts[same]) same += 1;
        return [...folder.slice(same).map(() => '..'), ...parts.slice(same)].map(decodeURIComponent).join('/');
    };
    return {
        // every piece of a list asks for the same few
        nameOf: other => atKey(names, other, () => nameOf(other)),
        textOf: () => undefined,
    };
}
