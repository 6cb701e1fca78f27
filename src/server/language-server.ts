import { DefaultLanguageServer } from 'langium/lsp';
import type { InitializeParams, InitializeResult } from 'vscode-languageserver';
import { CODE_ACTION_KINDS } from './features/code-actions.ts';

/** Tells the editor what this server can do beside what Langium knows of. */
export class CofferLanguageServer extends DefaultLanguageServer {
    protected override buildInitializeResult(params: InitializeParams): InitializeResult {
        const { capabilities, ...rest } = super.buildInitializeResult(params);
        const literals = params.capabilities.textDocument?.codeAction?.codeActionLiteralSupport !== undefined;
        return {
            ...rest,
            capabilities: {
                ...capabilities,
                codeLensProvider: { resolveProvider: true },
                selectionRangeProvider: true,
                codeActionProvider: literals ? { codeActionKinds: CODE_ACTION_KINDS } : true,
            },
        };
    }
}
