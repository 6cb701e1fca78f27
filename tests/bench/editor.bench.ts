// A room file of about 120 lines in a house of 20 rooms: how long the editor waits for completion at every word of it, as a
// hand comes to it, and for hover on every word; and for what is asked for with every keystroke. Milliseconds.
import { URI } from 'langium';
import type { CompletionList } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { createServerServices } from '../../src/server/services.ts';
import { median, p95 } from './spread.ts';
import { madeHouse } from './made-house.ts';

const ROUNDS = 3;

export default async function measure(): Promise<Record<string, number>> {
    const { shared, coffer, client } = createServerServices();
    client.snippets = client.markdownInCompletion = client.markdownInHover = client.markdownInSignature = true;
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const documents = madeHouse(20).map(({ path, text }) => shared.workspace.LangiumDocumentFactory.fromString(text, URI.file(path)));
    for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build(documents, { validation: true });

    const wordsOf = (text: string) => coffer.parser.Lexer.tokenize(text).tokens.filter(({ image }) => /^[A-Za-z_]/.test(image));
    const completion: number[] = [], items: number[] = [], hover: number[] = [], pictures: number[] = [], tokens: number[] = [];
    for (let round = 0; round <= ROUNDS; round++) {
        const warm = round > 0;                             // the first is for the engine to get going
        for (const path of ['/house/rooms/room-1.coffer', '/house/details/deep-box.coffer']) {
            const document = shared.workspace.LangiumDocuments.getDocument(URI.file(path))!;
            const textDocument = { uri: document.textDocument.uri };
            const text = document.textDocument.getText();
            for (const { startOffset: index } of wordsOf(text)) {
                const position = document.textDocument.positionAt(index);
                let began = performance.now();
                const list = await coffer.lsp.CompletionProvider!.getCompletion(document, { textDocument, position }) as CompletionList;
                if (warm) completion.push(performance.now() - began);
                if (warm && list.items.length > 0) items.push(list.items.length);
                began = performance.now();
                const shown = await coffer.lsp.HoverProvider!.getHoverContent(document, { textDocument, position });
                const took = performance.now() - began;
                if (warm) (JSON.stringify(shown ?? '').includes('image/svg') ? pictures : hover).push(took);
            }
            const began = performance.now();
            await coffer.lsp.SemanticTokenProvider!.semanticHighlight(document, { textDocument });
            if (warm) tokens.push(performance.now() - began);
        }
    }
    const typed = await keystrokes();
    const room = shared.workspace.LangiumDocuments.getDocument(URI.file('/house/rooms/room-1.coffer'))!;
    return {
        'lines of the room file': room.textDocument.lineCount,
        'places': completion.length / ROUNDS,
        'completion, median': median(completion), 'completion, p95': p95(completion),
        'from a letter typed to the list, median': median(typed), 'from a letter typed to the list, p95': p95(typed),
        'items offered, mean': items.reduce((sum, each) => sum + each, 0) / items.length,
        'hover, median': median(hover), 'hover, p95': p95(hover),
        'hover with a drawn section, median': median(pictures), 'hover with a drawn section, p95': p95(pictures),
        'semantic tokens of a file, median': median(tokens), 'semantic tokens of a file, p95': p95(tokens),
    };

    /** Each word of the room with only its first letter typed: the text is read and linked again, then completion is asked for. */
    async function keystrokes(): Promise<number[]> {
        const uri = URI.file('/house/rooms/room-1.coffer');
        const text = shared.workspace.LangiumDocuments.getDocument(uri)!.textDocument.getText();
        shared.workspace.DocumentBuilder.updateBuildOptions = { validation: false };
        const times: number[] = [];
        let version = 1;
        const type = async (now: string): Promise<void> => {
            shared.workspace.TextDocuments!.set(TextDocument.create(uri.toString(), 'coffer', ++version, now));
            await shared.workspace.DocumentBuilder.update([uri], []);
        };
        for (const { startOffset, image } of wordsOf(text)) {
            const began = performance.now();
            await type(text.slice(0, startOffset + 1) + text.slice(startOffset + image.length));
            const document = shared.workspace.LangiumDocuments.getDocument(uri)!;
            const position = document.textDocument.positionAt(startOffset + 1);
            await coffer.lsp.CompletionProvider!.getCompletion(document, { textDocument: { uri: uri.toString() }, position });
            times.push(performance.now() - began);
        }
        await type(text);
        return times;
    }
}
