import { EMPTY_STREAM, type AstNodeDescription, type AstNodeDescriptionProvider, type LangiumDocument, type LocalSymbols, type ScopeComputation } from 'langium';
import type { CofferServices } from '../coffer-services.ts';
import { namesOf } from './names.ts';

const NO_LOCAL_SYMBOLS: LocalSymbols = { has: () => false, getStream: () => EMPTY_STREAM };

/** What the workspace can be searched for. Nothing else is worked out beforehand: names are found by kind and by file, on demand. */
export class CofferScopeComputation implements ScopeComputation {
    private readonly descriptions: AstNodeDescriptionProvider;

    constructor(services: CofferServices) {
        this.descriptions = services.workspace.AstNodeDescriptionProvider;
    }

    async collectExportedSymbols(document: LangiumDocument): Promise<AstNodeDescription[]> {
        return [...namesOf(document)].map(([name, node]) => this.descriptions.createDescription(node, name, document));
    }

    async collectLocalSymbols(): Promise<LocalSymbols> {
        return NO_LOCAL_SYMBOLS;
    }
}
