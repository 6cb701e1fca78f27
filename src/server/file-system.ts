import { URI, type FileSystemNode } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { BUILTIN_TEXT, BUILTIN_URI, isBuiltin } from '../language/workspace/builtin.ts';

/**
 * The disk, and the built-in vocabulary as if it lay there: an editor that opens and closes it makes the server read it
 * again. Other schemes (a text that was never saved) are not on any disk and are refused instead of looked for under a
 * path that only looks like theirs.
 */
export class ServerFileSystem extends NodeFileSystemProvider {
    override async stat(uri: URI): Promise<FileSystemNode> {
        if (isBuiltin(uri) && builtinText(uri.toString()) !== undefined) return { isFile: true, isDirectory: false, uri };
        return super.stat(onDisk(uri));
    }

    override async exists(uri: URI): Promise<boolean> {
        return builtinText(uri.toString()) !== undefined || (uri.scheme === 'file' && await super.exists(uri));
    }

    override async readFile(uri: URI): Promise<string> {
        return builtinText(uri.toString()) ?? super.readFile(onDisk(uri));
    }
}

/** The text of a document that exists only in the program; undefined where there is none of this name. */
export function builtinText(uri: string): string | undefined {
    return URI.parse(uri).toString() === BUILTIN_URI.toString() ? BUILTIN_TEXT : undefined;
}

function onDisk(uri: URI): URI {
    if (uri.scheme !== 'file') throw new Error(`${uri.toString()} is not a file on disk`);
    return uri;
}
