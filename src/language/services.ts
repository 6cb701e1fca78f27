import { createGrammarConfig, EmptyFileSystem, inject, type DeepPartial, type Module } from 'langium';
import { createDefaultModule, createDefaultSharedModule, type DefaultSharedModuleContext, type PartialLangiumServices, type PartialLangiumSharedServices } from 'langium/lsp';
import type { Additions, CofferServices, CofferSharedServices, SharedAdditions } from './coffer-services.ts';
import { CofferCompletionProvider } from './features/completion/provider.ts';
import { FULL_EDITOR } from './features/editor.ts';
import { CofferHoverProvider } from './features/hover.ts';
import { CofferImportLinks } from './features/import-links.ts';
import { CofferOutlineProvider } from './features/outline.ts';
import { CofferQuickFixes } from './features/quick-fixes.ts';
import { CofferRenameProvider } from './features/rename.ts';
import { CofferSemanticTokens } from './features/semantic-tokens.ts';
import { CofferSignatureHelp } from './features/signature-help.ts';
import { languageFindings } from './findings/collect.ts';
import { CofferFormatter } from './format/index.ts';
import { frontModule } from './front-module.ts';
import { CofferGeneratedModule, CofferGeneratedSharedModule } from './generated/module.ts';
import { CofferLinker } from './scope/linker.ts';
import { CofferScopeComputation } from './scope/scope-computation.ts';
import { CofferScopeProvider } from './scope/scope-provider.ts';
import { Vocabulary } from './scope/vocabulary.ts';
import { builtinDocument } from './workspace/builtin.ts';
import { CofferDocumentBuilder } from './workspace/document-builder.ts';
import { CofferDocumentFactory } from './workspace/document-factory.ts';
import { CofferDocuments } from './workspace/documents.ts';
import { CofferDocumentValidator } from './workspace/document-validator.ts';
import { ImportGraph } from './workspace/import-graph.ts';
import { CofferIndexManager } from './workspace/index-manager.ts';
import { Jobs } from './workspace/jobs.ts';
import { Rooms } from './workspace/rooms.ts';
import { CofferServiceRegistry } from './workspace/service-registry.ts';
import { Stamps } from './workspace/stamps.ts';
import { Tables } from './workspace/tables.ts';
import { CofferWorkspaceManager } from './workspace/workspace-manager.ts';

const sharedModule: Module<CofferSharedServices, PartialLangiumSharedServices & SharedAdditions> = {
    ServiceRegistry: services => new CofferServiceRegistry(services),
    workspace: {
        Imports: services => new ImportGraph(services),
        Jobs: () => new Jobs(),
        Rooms: services => new Rooms(services.workspace.Jobs),
        Stamps: () => new Stamps(),
        Tables: services => new Tables(services),
        LangiumDocuments: services => new CofferDocuments(services),
        LangiumDocumentFactory: services => new CofferDocumentFactory(services),
        IndexManager: services => new CofferIndexManager(services),
        DocumentBuilder: services => new CofferDocumentBuilder(services),
        WorkspaceManager: services => new CofferWorkspaceManager(services),
    },
};

const languageModule: Module<CofferServices, PartialLangiumServices & Additions> = {
    vocabulary: services => new Vocabulary(builtinDocument(services.shared).parseResult.value),
    surroundings: services => ({
        get vocabulary() { return services.vocabulary; },
        importOf: use => services.shared.workspace.Imports.importOf(use),
    }),
    checks: () => ({ findings: languageFindings }),
    editor: () => FULL_EDITOR,
    parser: {
        // Langium finds out by itself only for the simplest patterns which comments may hold documentation.
        GrammarConfig: services => ({ ...createGrammarConfig(services), multilineCommentRules: ['ML_COMMENT'] }),
    },
    references: {
        Linker: services => new CofferLinker(services),
        ScopeProvider: services => new CofferScopeProvider(services),
        ScopeComputation: services => new CofferScopeComputation(services),
    },
    lsp: {
        CompletionProvider: services => new CofferCompletionProvider(services),
        HoverProvider: services => new CofferHoverProvider(services),
        DocumentSymbolProvider: () => new CofferOutlineProvider(),
        DocumentLinkProvider: services => new CofferImportLinks(services),
        CodeActionProvider: () => new CofferQuickFixes(),
        RenameProvider: services => new CofferRenameProvider(services),
        SignatureHelp: services => new CofferSignatureHelp(services),
        SemanticTokenProvider: services => new CofferSemanticTokens(services),
        Formatter: services => new CofferFormatter(services),
    },
    validation: {
        DocumentValidator: services => new CofferDocumentValidator(services),
    },
};

/** What an adapter puts in on top: services that need to know about ceilings, or about the editor. */
interface MoreServices {
    readonly shared?: Module<CofferSharedServices, DeepPartial<CofferSharedServices>>;
    readonly coffer?: Module<CofferServices, DeepPartial<CofferServices>>;
}

/** All that understands `.coffer` files. Without a file system it works on texts that are handed to it. */
export function createCofferServices(
    context: DefaultSharedModuleContext = EmptyFileSystem, more: MoreServices = {},
): { shared: CofferSharedServices, coffer: CofferServices } {
    const shared = inject(createDefaultSharedModule(context), CofferGeneratedSharedModule, sharedModule, more.shared) as CofferSharedServices;
    const coffer = inject(createDefaultModule({ shared }), CofferGeneratedModule, frontModule, languageModule, more.coffer) as CofferServices;
    shared.ServiceRegistry.register(coffer);
    return { shared, coffer };
}
