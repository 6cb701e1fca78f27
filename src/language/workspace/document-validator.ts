import type { DocumentValidator, LangiumDocument } from 'langium';
import type { Diagnostic } from 'vscode-languageserver-types';
import { faultAt, topOf } from '../../findings/fault.ts';
import type { Finding } from '../../findings/finding.ts';
import { languageFindings } from '../findings/collect.ts';
import type { Checks, CofferServices } from '../coffer-services.ts';
import { diagnosticsOf } from './diagnostics.ts';

/** Asks one function for everything that is wrong with a document, so that editor and command line cannot disagree. */
export class CofferDocumentValidator implements DocumentValidator {
    private readonly checks: Checks;

    constructor(services: CofferServices) {
        this.checks = services.checks;
    }

    async validateDocument(document: LangiumDocument): Promise<Diagnostic[]> {
        return diagnosticsOf(document, this.findings(document));
    }

    /** A fault in a check must not take the other findings along, nor pass for a file without faults. */
    private findings(document: LangiumDocument): readonly Finding[] {
        try {
            return this.checks.findings(document);
        } catch (error) {
            return [faultAt(topOf(document.uri.toString()), error, 'checking this file'), ...languageFindings(document)];
        }
    }
}
