import { counted } from '../../plain/words.ts';

/** Files that are read at once where a folder or a command names them: far more than any house, and as many are checked in about two seconds. */
export const MOST_FILES = 1000;
/** With those that are reached by imports, or opened one by one in an editor. */
export const MOST_READ = 2 * MOST_FILES;

/** And of all of them together: each word is a piece of a tree that is kept, some 400 bytes with all that hangs on it. Five hundred rooms have the half. */
export const MOST_WORDS_OF_ALL = 1_200_000;

/** Of a file for which there is no room left. */
export const NO_ROOM_LEFT = 'This file is not read: the others hold 1 200 000 words and signs together, and that is the limit. Work on fewer houses at a time.';

/** Of an import that is not followed. */
export const NOT_READ = `This file is not read: ${MOST_READ} files is the limit. Work on fewer houses at a time.`;

/** Of a folder that holds more than is read. */
export function tooManyFiles(there: number): string {
    return `There are ${counted(there, '.coffer file')} in the open folder, and ${MOST_FILES} is the limit: open the folders of some houses instead. Files that you open are read all the same.`;
}
