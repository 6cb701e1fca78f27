import { UriUtils, type LangiumDocument, type URI } from 'langium';
import * as ast from '../generated/ast.ts';
import { kept } from '../../plain/kept.ts';

/** Where a `from` line leads: to a file, or nowhere, and why. */
type ImportPath =
    | { readonly uri: URI }
    | { readonly problem: 'empty' | 'not-relative' | 'unwritable' };

const SUFFIX = '.coffer';
/** What no address of a file can hold: half of a character that takes two, and what cannot be seen. */
const UNWRITABLE = /\p{Cs}|\p{Cc}/u;

/**
 * The file that a path names, seen from another file. Paths are relative to the file they stand in and written with `/`;
 * the suffix may be left out. Only the text of the two counts: links in the file system are not followed.
 */
export function importPath(from: URI, path: string): ImportPath {
    return pathFrom(from, path, SUFFIX);
}

/** The same of any file. `suffix`: what may be left out. */
export function pathFrom(from: URI, path: string, suffix = ''): ImportPath {
    const text = path.trim();
    if (text === '') return { problem: 'empty' };
    if (UNWRITABLE.test(text)) return { problem: 'unwritable' };
    if (text.startsWith('/') || /^[A-Za-z][\w+.-]*:/.test(text) || text.startsWith('~')) return { problem: 'not-relative' };
    return { uri: UriUtils.resolvePath(UriUtils.dirname(from), text.endsWith(suffix) ? text : text + suffix) };
}

/** True where a file lies in one of the folders that are open. Where none is open, everything does. */
export function isInside(uri: URI, folders: readonly URI[]): boolean {
    return folders.length === 0 || folders.some(folder => {
        const path = folder.path.endsWith('/') ? folder.path : folder.path + '/';
        return folder.scheme === uri.scheme && folder.authority === uri.authority && uri.path.startsWith(path);
    });
}

/** The `from` lines of a file that lead to some file, whether it exists or not. */
export interface Import { readonly use: ast.Use; readonly uri: URI; readonly key: string }

const importsOfFile = kept((file: ast.File): ReadonlyMap<ast.Use, Import> => {
    const from = file.$document?.uri;
    return new Map(from ? file.uses.flatMap(use => {
        const path = importPath(from, use.path ?? '');
        return 'uri' in path ? [[use, { use, uri: path.uri, key: path.uri.toString() }]] : [];
    }) : []);
});

export function importsOf(document: LangiumDocument): readonly Import[] {
    const file = document.parseResult.value;
    return ast.isFile(file) ? [...importsOfFile(file).values()] : [];
}

/** Where one `from` line leads, where it leads to some file. */
export function importOf(use: ast.Use): Import | undefined {
    return use.$container && importsOfFile(use.$container).get(use);
}
