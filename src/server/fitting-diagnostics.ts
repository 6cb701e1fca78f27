import type { LanguageServer } from 'langium/lsp';
import type { Connection, Diagnostic, DiagnosticTag } from 'vscode-languageserver';

/** The same connection, but what is published is only what the editor said it can show. */
export class FittingDiagnostics {
    readonly connection: Connection;
    private related = false;
    private tags: readonly DiagnosticTag[] = [];

    constructor(connection: Connection) {
        this.connection = Object.create(connection, {
            sendDiagnostics: { value: ({ diagnostics, ...rest }: Parameters<Connection['sendDiagnostics']>[0]) =>
                connection.sendDiagnostics({ ...rest, diagnostics: diagnostics.map(diagnostic => this.fit(diagnostic)) }) },
        }) as Connection;
    }

    listenTo(server: LanguageServer): void {
        server.onInitialize(({ capabilities }) => {
            const { relatedInformation, tagSupport } = capabilities.textDocument?.publishDiagnostics ?? {};
            this.related = relatedInformation ?? false;
            this.tags = tagSupport?.valueSet ?? [];
        });
    }

    private fit({ relatedInformation, tags, ...diagnostic }: Diagnostic): Diagnostic {
        const known = tags?.filter(tag => this.tags.includes(tag)) ?? [];
        return { ...diagnostic, ...this.related && relatedInformation && { relatedInformation }, ...known.length > 0 && { tags: known } };
    }
}
