import { startLanguageServer } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { createCofferServices } from '../language/services.ts';
import { readFile } from '../language/read-file.ts';
import { inspect } from '../pipeline/inspect.ts';
import { answerBuiltinDocuments } from './builtin-documents.ts';
import { dropClosedTexts } from './closed-texts.ts';
import { ServerFileSystem } from './file-system.ts';

/** Serves `.coffer` files over a connection: the language, and the same inspection that the command line runs. */
export function serve(connection: Connection): void {
    const { shared, coffer } = createCofferServices({ connection, fileSystemProvider: () => new ServerFileSystem() });
    coffer.checks.findings = document => inspect(readFile(document)).findings;
    answerBuiltinDocuments(connection);
    dropClosedTexts(shared);
    startLanguageServer(shared);
}
