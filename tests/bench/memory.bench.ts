// What the language server holds: with nothing open, with a house of 20 rooms as an editor shows it, and after the hand has
// rested, when every room has been put together dry; and again after 200 keystrokes, which should leave nothing behind.
// Megabytes of heap after a collection.
import { URI } from 'langium';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { readFile } from '../../src/language/read-file.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import type { CofferCodeLenses } from '../../src/server/features/code-lenses.ts';
import { createServerServices } from '../../src/server/services.ts';
import { madeHouse } from './made-house.ts';

const ROOMS = 20, KEYSTROKES = 200;
const EVERYWHERE = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };

export default async function measure(): Promise<Record<string, number>> {
    const { shared, coffer } = createServerServices();
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const empty = await megabytes();

    const house = madeHouse(ROOMS);
    const documents = house.map(({ path, text }) => shared.workspace.LangiumDocumentFactory.fromString(text, URI.file(path)));
    for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build(documents, { validation: true });
    for (const { path } of house) await look(path);
    const shown = await megabytes();

    for (const { path } of house) inspectClosely(readFile(at(path)));
    const rested = await megabytes();

    const rooms = house.filter(({ path }) => path.includes('/rooms/room-'));
    for (let key = 1; key <= KEYSTROKES; key++) {
        const { path, text } = rooms[key % rooms.length]!;
        await type(path, key > KEYSTROKES - rooms.length ? text : text.replace('wall north  ', `wall north  1`), key);
    }
    const typed = await megabytes();
    return { 'nothing open': empty, [`${ROOMS} rooms, shown`]: shown, [`${ROOMS} rooms, looked at closely`]: rested, [`${ROOMS} rooms, after ${KEYSTROKES} keystrokes`]: typed };

    function at(path: string) {
        return shared.workspace.LangiumDocuments.getDocument(URI.file(path))!;
    }

    /** What an editor asks for when it shows a file. */
    async function look(path: string): Promise<void> {
        const document = at(path), textDocument = { uri: document.textDocument.uri };
        await coffer.lsp.InlayHintProvider!.getInlayHints(document, { textDocument, range: EVERYWHERE });
        await coffer.lsp.DocumentSymbolProvider!.getSymbols(document, { textDocument });
        await coffer.lsp.SemanticTokenProvider!.semanticHighlight(document, { textDocument });
        const lenses = coffer.lsp.CodeLensProvider as CofferCodeLenses;
        for (const lens of lenses.provideCodeLens(document)) lenses.resolve(lens);
    }

    async function type(path: string, text: string, version: number): Promise<void> {
        const uri = URI.file(path);
        shared.workspace.TextDocuments!.set(TextDocument.create(uri.toString(), 'coffer', version + 1, text));
        await shared.workspace.DocumentBuilder.update([uri], []);
        await look(path);
    }
}

async function megabytes(): Promise<number> {
    for (let time = 0; time < 3; time++) {
        globalThis.gc!();
        await new Promise(resolve => { setImmediate(resolve); });
    }
    return process.memoryUsage().heapUsed / 1e6;
}
