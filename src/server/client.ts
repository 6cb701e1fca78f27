import type { LanguageServer } from 'langium/lsp';
import type { InitializeParams } from 'vscode-languageserver';
import type { InitializationOptions } from './messages.ts';

/** What the editor at the other end can do, as it said when it came. */
export class Client {
    refreshesInlayHints = false;
    refreshesCodeLenses = false;
    /** Commands of the editor's own that the server may offer. */
    commands: ReadonlySet<string> = new Set();

    listenTo(server: LanguageServer): void {
        server.onInitialize(params => this.learn(params));
    }

    private learn({ capabilities: { workspace }, initializationOptions }: InitializeParams): void {
        this.refreshesInlayHints = workspace?.inlayHint?.refreshSupport ?? false;
        this.refreshesCodeLenses = workspace?.codeLens?.refreshSupport ?? false;
        const { commands } = (initializationOptions ?? {}) as Partial<InitializationOptions>;
        this.commands = new Set(Array.isArray(commands) ? commands.filter(name => typeof name === 'string') : []);
    }
}
