import { counted } from '../../plain/words.ts';

/** Files that are read at once where a folder or a command names them: far more than any house, and as many are checked in about two seconds. */
export const MOST_FILES = 1000;
/** With those that are reached by imports, or opened one by one in an editor. */
export const MOST_READ = 2 * MOST_FILES;

/** Of an import that is not followed. */
export const NOT_READ = `This file is not read: ${MOST_READ} files is the limit. Work on fewer houses at a time.`;

/** Of a folder that holds more than is read. */
export function tooManyFiles(there: number): string {
    return `There are ${counted(there, '.coffer file')} in the open folder, and ${MOST_FILES} is the limit: open the folders of some houses instead. Files that you open are read all the same.`;
}
