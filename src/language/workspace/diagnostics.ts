import type { LangiumDocument } from 'langium';
import type { Diagnostic, DiagnosticSeverity } from 'vscode-languageserver-types';
import { cleanText } from '../../text/clean-text.ts';
import type { Finding, Fix, Severity } from '../../findings/finding.ts';

/**
 * The protocol's numbers. Our hints are there to be read, so they are information to an editor: what it calls a hint it lists
 * nowhere, and VS Code shows no more of it than three dots.
 */
const SEVERITY: Readonly<Record<Severity, DiagnosticSeverity>> = { error: 1, warning: 2, hint: 3 };

/** The fixes of a finding travel with its diagnostic to the editor and back, so that nothing has to be found again. */
interface DiagnosticData { readonly fixes: readonly Fix[] }

/**
 * Findings as the editor is told them. A file publishes only what stands in it, and not what a comment in it allows.
 */
export function diagnosticsOf(document: LangiumDocument, findings: readonly Finding[]): Diagnostic[] {
    const uri = document.uri.toString();
    return findings.filter(each => each.at.uri === uri && !each.allowed).map(diagnosticOf);
}

function diagnosticOf({ rule, severity, at, message, related, fixes }: Finding): Diagnostic {
    return {
        source: 'cofferwright',
        code: rule,
        severity: SEVERITY[severity],
        range: at.range,
        message: cleanText(message),
        ...related.length > 0 && {
            relatedInformation: related.map(({ at: { uri, range }, message }) => ({ location: { uri, range }, message: cleanText(message) })),
        },
        ...fixes.length > 0 && { data: { fixes } satisfies DiagnosticData },
    };
}

/** What came back with a diagnostic; whatever else an editor sends along is no fix of ours. */
export function fixesOf(diagnostic: Diagnostic): readonly Fix[] {
    const data = diagnostic.data as Partial<DiagnosticData> | undefined;
    return Array.isArray(data?.fixes) ? data.fixes : [];
}
