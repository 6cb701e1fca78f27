import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { FILE_KIND, LIST_FOLDER, READ_FILE, type FileKindResult, type FileParams, type ListFolderResult, type ReadFileResult } from '../server/messages.ts';

/** Job files, and tables that these name. */
const READ = /\.(coffer|csv|tsv|txt)$/i;
/** Far more than any house; a larger file is something else. */
const MOST_BYTES = 8_000_000;

/** Reads job files and tables for a server that cannot: in a browser, and in folders that lie on no disk. Other files are refused. */
export function readForServer(client: BaseLanguageClient): vscode.Disposable {
    const { fs } = vscode.workspace;
    const decoder = new TextDecoder();
    return vscode.Disposable.from(
        client.onRequest(FILE_KIND, ({ uri }: FileParams): Promise<FileKindResult> => orNull(async () => kindOf((await fs.stat(vscode.Uri.parse(uri))).type))),
        client.onRequest(READ_FILE, ({ uri }: FileParams): Promise<ReadFileResult> => orNull(async () => {
            const file = vscode.Uri.parse(uri);
            return READ.test(file.path) && (await fs.stat(file)).size <= MOST_BYTES ? decoder.decode(await fs.readFile(file)) : null;
        })),
        client.onRequest(LIST_FOLDER, ({ uri }: FileParams): Promise<ListFolderResult> => orNull(async () => {
            const folder = vscode.Uri.parse(uri);
            return (await fs.readDirectory(folder)).flatMap(([name, type]) => {
                const kind = kindOf(type);
                return kind ? [{ uri: vscode.Uri.joinPath(folder, name).toString(), kind }] : [];
            });
        })),
    );
}

/** A link counts as what it leads to. */
function kindOf(type: vscode.FileType): FileKindResult {
    if (type & vscode.FileType.Directory) return 'folder';
    return type & vscode.FileType.File ? 'file' : null;
}

/** The editor fails where a file is not there, or its keeper is not: for the server both mean the same. */
async function orNull<Result>(get: () => Promise<Result | null>): Promise<Result | null> {
    try {
        return await get();
    } catch {
        return null;
    }
}
