import { URI, type FileSystemNode, type FileSystemProvider } from 'langium';
import { BUILTIN_TEXT, BUILTIN_URI, isBuiltin } from '../language/workspace/builtin.ts';
import { NoFiles } from '../language/workspace/no-files.ts';

/**
 * The files the server sees: the disk where it runs on one, what the editor reads for it elsewhere, and the built-in
 * vocabulary as if it lay there: an editor that opens and closes it makes the server read it again. A text that was never
 * saved lies nowhere, and is not looked for under a path that only looks like its name.
 */
export class ServerFileSystem extends NoFiles {

    /** `disk`: of the machine that the server runs on; a browser has none. */
    constructor(private readonly disk: FileSystemProvider | undefined, private readonly editor: FileSystemProvider) {
        super();
    }

    override async stat(uri: URI): Promise<FileSystemNode> {
        if (isBuiltin(uri) && builtinText(uri.toString()) !== undefined) return { isFile: true, isDirectory: false, uri };
        return this.keeperOf(uri).stat(uri);
    }

    override async exists(uri: URI): Promise<boolean> {
        return builtinText(uri.toString()) !== undefined || (isSaved(uri) && await this.keeperOf(uri).exists(uri));
    }

    override async readFile(uri: URI): Promise<string> {
        return builtinText(uri.toString()) ?? this.keeperOf(uri).readFile(uri);
    }

    override async readDirectory(uri: URI): Promise<FileSystemNode[]> {
        return this.keeperOf(uri).readDirectory(uri);
    }

    private keeperOf(uri: URI): FileSystemProvider {
        if (!isSaved(uri)) throw new Error(`${uri.toString()} is not a file`);
        return this.disk && uri.scheme === 'file' ? this.disk : this.editor;
    }
}

/** The text of a document that exists only in the program; undefined where there is none of this name. */
export function builtinText(uri: string): string | undefined {
    return URI.parse(uri).toString() === BUILTIN_URI.toString() ? BUILTIN_TEXT : undefined;
}

function isSaved(uri: URI): boolean {
    return uri.scheme !== 'untitled' && !isBuiltin(uri);
}
