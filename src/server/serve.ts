import { DocumentState, type FileSystemProvider } from 'langium';
import { startLanguageServer } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { answerBuiltinDocuments } from './builtin-documents.ts';
import { dropClosedTexts } from './closed-texts.ts';
import { EditorFiles } from './editor-files.ts';
import type { CofferCodeLenses } from './features/code-lenses.ts';
import type { CofferInlayHints } from './features/inlay-hints.ts';
import { ServerFileSystem } from './file-system.ts';
import { answerFilesOfJob } from './files-of-job.ts';
import { FittingDiagnostics } from './fitting-diagnostics.ts';
import { Refresh } from './refresh.ts';
import { answerSelectionRanges } from './selection-ranges.ts';
import { createServerServices } from './services.ts';

/**
 * Serves `.coffer` files over a connection: the language, and the same inspection that the command line runs. `disk`: of
 * the machine that it runs on; without one the editor is asked for files.
 */
export function serve(wire: Connection, disk?: FileSystemProvider): void {
    const fitting = new FittingDiagnostics(wire), { connection } = fitting;
    const editorFiles = new EditorFiles(connection);
    const { shared, coffer, client, figures } = createServerServices({ connection, fileSystemProvider: () => new ServerFileSystem(disk, editorFiles) });
    editorFiles.listenTo(shared.lsp.LanguageServer);
    fitting.listenTo(shared.lsp.LanguageServer);
    answerBuiltinDocuments(connection);
    answerFilesOfJob(connection, shared);
    answerSelectionRanges(connection, shared);
    connection.onCodeLensResolve(lens => (coffer.lsp.CodeLensProvider as CofferCodeLenses).resolve(lens));
    dropClosedTexts(shared);
    new Refresh(connection, shared, { client, figures, hints: coffer.lsp.InlayHintProvider as CofferInlayHints });
    // the outline tells sizes, so it needs the names of other files; and the links are those of imports that have been read
    startLanguageServer(shared, { DocumentSymbolProvider: DocumentState.IndexedReferences, DocumentLinkProvider: DocumentState.Linked });
}
