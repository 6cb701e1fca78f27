import type { LanguageServer } from 'langium/lsp';
import type { Connection, Diagnostic } from 'vscode-languageserver';

/** The same connection, but what is published is only what the editor said it can show. */
export class FittingDiagnostics {
    readonly connection: Connection;
    private related = false;

    constructor(connection: Connection) {
        this.connection = Object.create(connection, {
            sendDiagnostics: { value: ({ diagnostics, ...rest }: Parameters<Connection['sendDiagnostics']>[0]) =>
                connection.sendDiagnostics({ ...rest, diagnostics: diagnostics.map(diagnostic => this.fit(diagnostic)) }) },
        }) as Connection;
    }

    listenTo(server: LanguageServer): void {
        server.onInitialize(({ capabilities }) => { this.related = capabilities.textDocument?.publishDiagnostics?.relatedInformation ?? false; });
    }

    private fit({ relatedInformation, ...diagnostic }: Diagnostic): Diagnostic {
        return this.related && relatedInformation ? { ...diagnostic, relatedInformation } : diagnostic;
    }
}
