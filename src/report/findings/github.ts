import type { Finding, Severity } from '../../findings/finding.ts';
import { type Files } from '../look.ts';
import { cleanText } from '../../text/clean-text.ts';
import type { LogText } from '../../text/fit.ts';

const COMMAND: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', hint: 'notice' };

/** Workflow commands: GitHub shows them beside the lines of a pull request. */
export function githubFindings(findings: readonly Finding[], files: Files): LogText {
    return findings.filter(f => !f.allowed).map(f => {
        const { start, end } = f.at.range;
        const columns = start.line === end.line ? `,col=${start.character + 1},endColumn=${end.character + 1}` : '';
        const text = [...f.message.split('\n'), ...f.fixes.map(fix => `Fix: ${fix.title}`)].map(cleanText).join('\n');
        return `::${COMMAND[f.severity]} file=${property(files.nameOf(f.at.uri))},line=${start.line + 1},endLine=${end.line + 1}${columns},title=${property(f.rule)}::${data(text)}\n`;
    }).join('') as LogText;
}

function data(text: string): string {
    return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}
function property(text: string): string {
    return data(cleanText(text)).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
