import { DocumentState, URI, type FileSystemProvider } from 'langium';
import { startLanguageServer } from 'langium/lsp';
import { MessageType, ShowMessageNotification, type Connection } from 'vscode-languageserver';
import type { CofferDocumentBuilder } from '../language/workspace/document-builder.ts';
import { tooManyFiles } from '../language/workspace/most-files.ts';
import type { CofferWorkspaceManager } from '../language/workspace/workspace-manager.ts';
import { madeFrom } from '../language/workspace/made-from.ts';
import { inspectClosely } from '../pipeline/inspect-closely.ts';
import { CalmFindings } from './calm/calm-findings.ts';
import { tellHolding } from './calm/holding.ts';
import { Typing } from './calm/typing.ts';
import { answerBuiltinDocuments } from './builtin-documents.ts';
import { dropClosedTexts } from './closed-texts.ts';
import { Comparisons } from './changes/comparisons.ts';
import { commitFindings, filesWithContract } from './changes/contract-commits.ts';
import { History } from './changes/history.ts';
import { Edits } from './edits/edits.ts';
import { EditorFiles } from './editor-files.ts';
import type { CofferCodeLenses } from './features/code-lenses.ts';
import type { CofferInlayHints } from './features/inlay-hints.ts';
import { ServerFileSystem } from './file-system.ts';
import { answerFilesOfJob } from './files-of-job.ts';
import { fieldsOf } from './fields.ts';
import { FittingDiagnostics } from './fitting-diagnostics.ts';
import { COLORS, HOLDING, LOOKING, type ColorsParams, type HoldingParams, type LookingParams } from './messages.ts';
import type { BoardProver } from '../cutting/board-prover.ts';
import { Panes } from './panes/panes.ts';
import { Rooms } from './panes/rooms.ts';
import { Refresh } from './refresh.ts';
import { CloseLook, type LookClosely } from './late/close-look.ts';
import { LateFindings } from './late/late-findings.ts';
import { answerSelectionRanges } from './selection-ranges.ts';
import { createServerServices } from './services.ts';
import { answerTrials } from './trials.ts';

/**
 * Serves `.coffer` files over a connection: the language, and the same inspection that the command line runs. `disk`: of
 * the machine that it runs on; without one the editor is asked for files. `look`: what is found while the hand rests. `prover`: looks for
 * cheaper boards, in a thread of its own.
 */
export function serve(
    wire: Connection, disk?: FileSystemProvider, look: LookClosely = inspectClosely, prover?: (say: (words: string) => void) => BoardProver,
): void {
    const fitting = new FittingDiagnostics(wire);
    const openText = (uri: string): string | undefined => shared.workspace.TextDocuments?.get(URI.parse(uri))?.getText();
    const typing = new Typing();
    const edits = new Edits(fitting.connection, openText);
    const calm = new CalmFindings(edits.connection, typing, edits, openText);
    const late = new LateFindings(calm.connection, {
        built: uri => shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.textDocument.getText(),
        open: openText,
        madeFrom: uri => [uri, ...madeFrom([uri], shared)].flatMap(each => [each, shared.workspace.LangiumDocuments.getDocument(URI.parse(each))?.textDocument.getText() ?? '']),
    }, edits);
    const { connection } = late;
    const editorFiles = new EditorFiles(connection);
    const { shared, coffer, client, figures } = createServerServices(
        { connection, fileSystemProvider: () => new ServerFileSystem(disk, editorFiles) }, typing,
    );
    shared.workspace.TextDocuments?.onDidSave(() => typing.rest());
    shared.workspace.TextDocuments?.onDidClose(() => typing.rest());
    editorFiles.listenTo(shared.lsp.LanguageServer);
    fitting.listenTo(shared.lsp.LanguageServer);
    answerBuiltinDocuments(connection);
    answerFilesOfJob(connection, shared);
    const history = new History(connection);
    history.listenTo(shared.lsp.LanguageServer);
    const comparisons = new Comparisons(history, shared, new Rooms(shared), typing, words => connection.console.log(words));
    (coffer.lsp.CodeLensProvider as CofferCodeLenses).changes.compareBy(comparisons, connection);
    const panes = new Panes(connection, shared, typing, comparisons, prover?.(words => connection.console.log(words)));
    late.onLook(() => panes.soon());
    answerSelectionRanges(connection, shared);
    answerTrials(connection, shared);
    connection.onNotification(COLORS, (params: unknown) => client.take(fieldsOf<ColorsParams>(params).colors));
    connection.onCodeLensResolve(lens => (coffer.lsp.CodeLensProvider as CofferCodeLenses).resolve(lens));
    (shared.workspace.DocumentBuilder as CofferDocumentBuilder).onFault = error => logFault(connection, error);
    (shared.workspace.WorkspaceManager as CofferWorkspaceManager).onTooMany = there => {
        // the library's own way is a request, which an editor may not know
        void connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Warning, message: tooManyFiles(there) });
    };
    dropClosedTexts(shared);
    tellHolding(typing, still => tell(connection, HOLDING, { still } satisfies HoldingParams));
    let busy = false;
    const closeLook = new CloseLook(shared, late, edits, look, now => {
        if (busy === now) return;
        busy = now;
        tell(connection, LOOKING, { busy } satisfies LookingParams);
    }, file => commitFindings(file, history, comparisons));
    const lookAtContracts = (): void => closeLook.again(filesWithContract(shared));
    history.onChange(lookAtContracts);
    history.onNamed(lookAtContracts);
    comparisons.onFound(known => { if ('against' in known && known.against === 'signed') lookAtContracts(); });
    new Refresh(connection, shared, client, figures, typing, coffer.lsp.InlayHintProvider as CofferInlayHints);
    // the outline tells sizes, so it needs the names of other files; and the links are those of imports that have been read
    startLanguageServer(shared, { DocumentSymbolProvider: DocumentState.IndexedReferences, DocumentLinkProvider: DocumentState.Linked });
}

function tell(connection: Connection, method: string, params: object): void {
    try {
        connection.sendNotification(method, params).catch(() => undefined);
    } catch {
        // the connection is gone, with a look or a hand still under way
    }
}

function logFault(connection: Connection, error: unknown): void {
    try {
        connection.console.error(error instanceof Error ? error.stack ?? error.message : String(error));
    } catch {
        // the connection itself is gone: nobody is left to tell
    }
}
