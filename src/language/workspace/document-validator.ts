import type { DocumentValidator, LangiumDocument } from 'langium';
import type { Diagnostic } from 'vscode-languageserver-types';
import type { Checks, CofferServices } from '../services.ts';
import { diagnosticsOf } from './diagnostics.ts';

/** Asks one function for everything that is wrong with a document, so that editor and command line cannot disagree. */
export class CofferDocumentValidator implements DocumentValidator {
    private readonly checks: Checks;

    constructor(services: CofferServices) {
        this.checks = services.checks;
    }

    async validateDocument(document: LangiumDocument): Promise<Diagnostic[]> {
        return diagnosticsOf(document, this.checks.findings(document));
    }
}
