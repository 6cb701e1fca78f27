import { URI, type FileSystemNode } from 'langium';
import type { LanguageServer } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { FILE_KIND, LIST_FOLDER, READ_FILE, type FileKindResult, type FileParams, type InitializationOptions, type ListFolderResult, type ReadFileResult } from './messages.ts';
import { NoFiles } from '../language/workspace/no-files.ts';

/**
 * Files that only the editor can reach: those of a folder in a browser, or on another machine. It reads them for us, if
 * it said so when it came; an editor that did not is not asked.
 */
export class EditorFiles extends NoFiles {
    private willing = false;

    constructor(private readonly connection: Connection) {
        super();
    }

    listenTo(server: LanguageServer): void {
        server.onInitialize(({ initializationOptions }) => {
            this.willing = (initializationOptions as Partial<InitializationOptions> | undefined)?.readsFiles === true;
        });
    }

    override async stat(uri: URI): Promise<FileSystemNode> {
        const kind = await this.ask<FileKindResult>(FILE_KIND, uri);
        if (!kind) throw new Error(`There is no ${uri.toString()}.`);
        return { uri, isFile: kind === 'file', isDirectory: kind === 'folder' };
    }

    override async exists(uri: URI): Promise<boolean> {
        return await this.ask<FileKindResult>(FILE_KIND, uri) !== null;
    }

    override async readFile(uri: URI): Promise<string> {
        const text = await this.ask<ReadFileResult>(READ_FILE, uri);
        if (typeof text !== 'string') throw new Error(`${uri.toString()} cannot be read.`);
        return text;
    }

    override async readDirectory(uri: URI): Promise<FileSystemNode[]> {
        const entries = await this.ask<ListFolderResult>(LIST_FOLDER, uri) ?? [];
        return entries.map(entry => ({ uri: URI.parse(entry.uri), isFile: entry.kind === 'file', isDirectory: entry.kind === 'folder' }));
    }

    private async ask<Result>(method: string, uri: URI): Promise<Result | null> {
        const params: FileParams = { uri: uri.toString() };
        return this.willing ? this.connection.sendRequest<Result | null>(method, params) : null;
    }
}
