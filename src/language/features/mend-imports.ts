import { URI, UriUtils, type LangiumDocuments } from 'langium';
import type { FileOperationHandler } from 'langium/lsp';
import type { FileOperationOptions, RenameFilesParams, WorkspaceEdit } from 'vscode-languageserver-protocol';
import type { TextEdit } from 'vscode-languageserver-types';
import type { CofferSharedServices } from '../coffer-services.ts';
import { sourceOfProperty } from '../types/place.ts';
import { importsOf } from '../workspace/imports.ts';
import { isBuiltin } from '../workspace/builtin.ts';

const SUFFIX = '.coffer';

/**
 * When files or folders are moved or renamed, the imports in them and those of them go on leading where they led. The edits
 * are made before the move, so they stand in the files as they are called until then.
 */
export class CofferImportMender implements FileOperationHandler {
    readonly fileOperationOptions: FileOperationOptions = {
        willRename: { filters: [{ pattern: { glob: `**/*${SUFFIX}`, matches: 'file' } }, { pattern: { glob: '**', matches: 'folder' } }] },
    };
    private readonly documents: LangiumDocuments;
    private readonly shared: CofferSharedServices;

    constructor(services: CofferSharedServices) {
        this.shared = services;
        this.documents = services.workspace.LangiumDocuments;
    }

    async willRenameFiles({ files }: RenameFilesParams): Promise<WorkspaceEdit | null> {
        await this.shared.workspace.WorkspaceManager.ready;
        const moves = files.map(({ oldUri, newUri }) => ({ from: URI.parse(oldUri), to: URI.parse(newUri) }));
        const placeOf = (uri: URI): URI => movedBy(moves, uri) ?? uri;
        const changes: Record<string, TextEdit[]> = {};
        for (const document of this.documents.all) {
            if (isBuiltin(document.uri)) continue;
            const home = placeOf(document.uri);
            for (const { use, uri } of importsOf(document)) {
                const target = placeOf(uri);
                if (home === document.uri && target === uri) continue;
                const path = pathTo(home, target, use.path.trim().endsWith(SUFFIX));
                if (path === undefined || path === pathTo(document.uri, uri, use.path.trim().endsWith(SUFFIX))) continue;
                (changes[document.textDocument.uri] ??= []).push({ range: sourceOfProperty(use, 'path').range, newText: `"${path}"` });
            }
        }
        return Object.keys(changes).length > 0 ? { changes } : null;
    }
}

interface Move { readonly from: URI; readonly to: URI }

/** Where a file is after the moves; undefined where it stays. A folder takes along all that is in it. */
function movedBy(moves: readonly Move[], uri: URI): URI | undefined {
    for (const { from, to } of moves) {
        if (from.scheme !== uri.scheme || from.authority !== uri.authority) continue;
        if (from.path === uri.path) return to;
        const folder = from.path.endsWith('/') ? from.path : `${from.path}/`;
        if (uri.path.startsWith(folder)) return to.with({ path: `${to.path.replace(/\/$/, '')}/${uri.path.slice(folder.length)}` });
    }
    return undefined;
}

/** The path of one file seen from another, as an import writes it. Undefined where there is none, or no file that can be imported. */
function pathTo(from: URI, to: URI, suffix: boolean): string | undefined {
    if (from.scheme !== to.scheme || from.authority !== to.authority || !to.path.endsWith(SUFFIX)) return undefined;
    const relative = UriUtils.relative(UriUtils.dirname(from), to);
    const path = relative.startsWith('.') ? relative : `./${relative}`;
    return suffix ? path : path.slice(0, -SUFFIX.length);
}
