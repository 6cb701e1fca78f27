import { DocumentState, URI, type LangiumDocument } from 'langium';
import { CodeLensRefreshRequest, InlayHintRefreshRequest, type Connection } from 'vscode-languageserver';
import type { Ceiling } from '../ceiling/model.ts';
import type { CofferSharedServices } from '../language/coffer-services.ts';
import type { Typing } from './calm/typing.ts';
import type { Client } from './client.ts';
import { titleOf } from './features/code-lenses.ts';
import { hasPrices } from './features/price-lenses.ts';
import { hasUses } from './features/use-lenses.ts';
import type { Figures } from './features/figures.ts';
import type { CofferInlayHints } from './features/inlay-hints.ts';
import type { Settings } from './settings.ts';

/** Milliseconds without a change. */
const REST = 600;

/** What an open file showed when it was last looked at. */
interface Shown { readonly text: string; readonly hints: string; readonly ceilings: readonly (Ceiling | undefined)[] }

/**
 * An editor asks again for what stands beside a text when that text changes. It does not when a change in another file, or
 * in the settings, changes a figure: then it is told to, and only then, so that nothing flickers.
 */
export class Refresh {
    private readonly shown = new Map<string, Shown>();

    constructor(
        private readonly connection: Connection, private readonly services: CofferSharedServices,
        private readonly client: Client, private readonly figures: Figures, typing: Typing, private readonly hints: CofferInlayHints,
    ) {
        const { DocumentBuilder, TextDocuments, ConfigurationProvider } = services.workspace;
        DocumentBuilder.onBuildPhase(DocumentState.Validated, documents => this.look(documents));
        // what stood still while somebody typed
        typing.onRest(() => {
            const documents = TextDocuments?.all().flatMap(({ uri }) => services.workspace.LangiumDocuments.getDocument(URI.parse(uri)) ?? []) ?? [];
            void services.workspace.WorkspaceLock.read(() => this.look(documents.filter(({ state }) => state === DocumentState.Validated)));
        });
        TextDocuments?.onDidClose(({ document }) => this.shown.delete(URI.parse(document.uri).toString()));
        (ConfigurationProvider as Settings).onConfigurationSectionUpdate(() => this.refreshHints());
    }

    private async look(documents: readonly LangiumDocument[]): Promise<void> {
        let hints = false, lenses = false;
        for (const document of documents) {
            const key = document.uri.toString();
            if (!this.services.workspace.TextDocuments?.get(document.uri)) continue;
            const before = this.shown.get(key);
            const now = await this.shownIn(document);
            this.shown.set(key, now);
            if (before?.text !== now.text) continue;             // the editor asks by itself
            hints ||= before.hints !== now.hints;
            lenses ||= before.ceilings.length !== now.ceilings.length || before.ceilings.some((ceiling, i) => !countsAlike(ceiling, now.ceilings[i]));
        }
        if (hints) this.refreshHints();
        if (!lenses) this.houseLater();
        if (lenses && this.client.refreshesCodeLenses) this.ask(CodeLensRefreshRequest.method);
    }

    private async shownIn(document: LangiumDocument): Promise<Shown> {
        return {
            text: document.textDocument.getText(), hints: await this.hints.shown(document),
            ceilings: [...this.figures.of(document).rooms.values()].map(({ ceiling }) => ceiling),
        };
    }

    private waiting: ReturnType<typeof setTimeout> | undefined;
    /** Prices and who uses what depend on every file of the house; they are asked for again once the hand rests, where one is on the screen. */
    private houseLater(): void {
        clearTimeout(this.waiting);
        if (!this.client.refreshesCodeLenses || !this.services.workspace.TextDocuments?.all().some(({ uri }) => this.showsHouse(uri))) return;
        this.waiting = setTimeout(() => this.ask(CodeLensRefreshRequest.method), REST);
    }

    private showsHouse(uri: string): boolean {
        const document = this.services.workspace.LangiumDocuments.getDocument(URI.parse(uri));
        return document !== undefined && (hasPrices(document) || hasUses(document));
    }

    private refreshHints(): void {
        if (this.client.refreshesInlayHints) this.ask(InlayHintRefreshRequest.method);
    }

    /** An editor that will not, need not. */
    private ask(method: string): void {
        this.connection.sendRequest(method).catch(error => this.connection.console.log(`${method}: ${String(error)}`));
    }
}

/** A changed line in another file makes a new ceiling of each room that uses it; what stands above the room seldom changes. */
function countsAlike(a: Ceiling | undefined, b: Ceiling | undefined): boolean {
    return a === b || (a !== undefined && b !== undefined && titleOf(a) === titleOf(b));
}
