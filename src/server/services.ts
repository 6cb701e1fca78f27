import type { DefaultSharedModuleContext } from 'langium/lsp';
import { CofferCompletionProvider } from '../language/features/completion/provider.ts';
import { CofferFolding } from '../language/features/folding.ts';
import { CofferImportMender } from '../language/features/mend-imports.ts';
import { CofferOutlineProvider } from '../language/features/outline.ts';
import { CofferWorkspaceSymbols } from '../language/features/workspace-symbols.ts';
import { readFile } from '../language/read-file.ts';
import type { CofferServices, CofferSharedServices } from '../language/coffer-services.ts';
import { createCofferServices } from '../language/services.ts';
import { inspect } from '../pipeline/inspect.ts';
import { RULES } from '../rules/index.ts';
import { Client } from './client.ts';
import { DetailHierarchy } from './features/call-hierarchy.ts';
import { ChangeLenses } from './features/change-lenses.ts';
import { CofferCodeActions } from './features/code-actions.ts';
import { CofferCodeLenses } from './features/code-lenses.ts';
import { FittingDefinitions } from './features/definition.ts';
import { Figures } from './features/figures.ts';
import { CofferCeilingHover } from './features/hover.ts';
import { ClosingFigures } from './features/closing-figures.ts';
import { GridActions } from './features/grid-actions.ts';
import { HouseUses } from './features/house-uses.ts';
import { CofferInlayHints } from './features/inlay-hints.ts';
import { PriceLenses } from './features/price-lenses.ts';
import { namesInRoom } from './features/names-in.ts';
import { computedFor } from './features/outline-figures.ts';
import { SayingRename } from './features/rename.ts';
import { isAllowable } from './features/silence.ts';
import { UseLenses } from './features/use-lenses.ts';
import { CofferFileChanges } from './file-changes.ts';
import { CofferLanguageServer } from './language-server.ts';
import { Rooms } from './panes/rooms.ts';
import { Settings } from './settings.ts';

interface ServerServices { readonly shared: CofferSharedServices; readonly coffer: CofferServices; readonly client: Client; readonly figures: Figures }

/** The language, the inspection that the command line runs too, and what the editor shows of both. `typing`: figures stand still while somebody does. */
export function createServerServices(context?: DefaultSharedModuleContext, typing: { readonly now: boolean } = { now: false }): ServerServices {
    const figures = new Figures(typing), client = new Client();
    let uses: HouseUses | undefined;
    const usesIn = (services: CofferSharedServices): HouseUses => uses ??= new HouseUses(services);
    const { shared, coffer } = createCofferServices(context, {
        shared: {
            workspace: { ConfigurationProvider: services => new Settings(services) },
            lsp: {
                LanguageServer: services => new CofferLanguageServer(services),
                DocumentUpdateHandler: services => new CofferFileChanges(services),
                FileOperationHandler: services => new CofferImportMender(services),
                WorkspaceSymbolProvider: services => new CofferWorkspaceSymbols(services),
            },
        },
        coffer: {
            checks: () => ({ findings: document => inspect(readFile(document)).findings }),
            editor: () => client,
            lsp: {
                CompletionProvider: services =>
                    new CofferCompletionProvider(services, { namesIn: room => namesInRoom(room, figures), rules: RULES.filter(isAllowable) }),
                HoverProvider: services => new CofferCeilingHover(services, figures, client),
                InlayHintProvider: services => new CofferInlayHints(figures, services.shared.workspace.ConfigurationProvider as Settings),
                CallHierarchyProvider: services => new DetailHierarchy(services, usesIn(services.shared)),
                CodeLensProvider: ({ shared }) => new CofferCodeLenses(
                    figures, client, shared.workspace.LangiumDocuments, new PriceLenses(client, new Rooms(shared)),
                    new UseLenses(client, shared.workspace.LangiumDocuments, usesIn(shared)), new ChangeLenses(client, new Rooms(shared)),
                ),
                DocumentSymbolProvider: () => new CofferOutlineProvider(document => computedFor(figures.of(document))),
                DefinitionProvider: services => new FittingDefinitions(services, client),
                FoldingRangeProvider: () => new CofferFolding(),
                CodeActionProvider: ({ shared }) => new CofferCodeActions(new GridActions(new Rooms(shared), client), new ClosingFigures(new Rooms(shared))),
                RenameProvider: services => new SayingRename(services),
            },
        },
    });
    client.listenTo(shared.lsp.LanguageServer);
    return { shared, coffer, client, figures };
}
