import type { LanguageServer } from 'langium/lsp';
import type { Connection, Diagnostic, DiagnosticTag } from 'vscode-languageserver';
import { SHOW_RULE, type InitializationOptions } from './messages.ts';
import { publishing } from './publishing.ts';

/** The same connection, but what is published is only what the editor said it can show; a finding's code leads to its page where the editor opens it. */
export class FittingDiagnostics {
    readonly connection: Connection;
    private related = false;
    private pages = false;
    private tags: readonly DiagnosticTag[] = [];

    constructor(connection: Connection) {
        this.connection = publishing(connection, ({ diagnostics, ...rest }) =>
            connection.sendDiagnostics({ ...rest, diagnostics: diagnostics.map(diagnostic => this.fit(diagnostic)) }));
    }

    listenTo(server: LanguageServer): void {
        server.onInitialize(({ capabilities, initializationOptions }) => {
            const { relatedInformation, tagSupport, codeDescriptionSupport } = capabilities.textDocument?.publishDiagnostics ?? {};
            this.related = relatedInformation ?? false;
            this.tags = tagSupport?.valueSet ?? [];
            const { commands } = (initializationOptions ?? {}) as Partial<InitializationOptions>;
            this.pages = codeDescriptionSupport === true && Array.isArray(commands) && commands.includes(SHOW_RULE);
        });
    }

    private fit({ relatedInformation, tags, ...diagnostic }: Diagnostic): Diagnostic {
        const known = tags?.filter(tag => this.tags.includes(tag)) ?? [];
        const page = this.pages && typeof diagnostic.code === 'string' && { codeDescription: { href: pageOf(diagnostic.code) } };
        return { ...diagnostic, ...page, ...this.related && relatedInformation && { relatedInformation }, ...known.length > 0 && { tags: known } };
    }
}

/** A command in an address, with its arguments behind the question mark. */
function pageOf(rule: string): string {
    return `command:${SHOW_RULE}?${encodeURIComponent(JSON.stringify([rule]))}`;
}
