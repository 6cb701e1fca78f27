import type { Finding, Severity } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import { wrap, type Files, type Paint } from '../look.ts';
import { cleanText } from '../../text/clean-text.ts';
import { codeFrame, linesOf } from './code-frame.ts';
import type { TerminalText } from '../../text/fit.ts';
import { terminalLines, terminalParagraphs } from '../../text/terminal.ts';
import { atKey } from '../../plain/at-key.ts';
import { counted } from '../../plain/words.ts';

const WIDTH = 100;
/** Nobody reads more than so many; whoever works through them with a program takes another format. */
export const MOST_READ = 1000;

/**
 * Findings to be read: the place, the words, the line with marks under what it is about, the other half of the
 * contradiction with its line, and what would mend it. Of very many the first, and how many more there are.
 */
export function humanFindings(findings: readonly Finding[], files: Files, paint: Paint): TerminalText {
    const lines = lineReader(files);
    const open = findings.filter(f => !f.allowed), more = open.length - MOST_READ;
    return terminalParagraphs([
        ...open.slice(0, MOST_READ).map(f => block(f, files, lines, paint)),
        ...more > 0 ? [[`And ${more} more: \`--format concise\` shows all of them.`]] : [],
    ]);
}

function block(finding: Finding, files: Files, lines: (uri: string) => readonly string[], paint: Paint): string[] {
    const color = paint[finding.severity];
    const frame = (at: Source, mark: string, tint: (text: string) => string): string[] =>
        codeFrame(lines(at.uri), at.range, mark).map((line, i) => paint.faint(line.slice(0, 8)) + (i === 0 ? line.slice(8) : tint(line.slice(8))));
    return [
        `${paint.strong(placeOf(finding.at, files))}  ${color(finding.severity)}  ${finding.rule}`
            + (finding.room ? paint.faint(`  room ${cleanText(finding.room)}`) : ''),
        ...wrap(finding.message, WIDTH).map(line => `  ${line}`),
        ...frame(finding.at, '^', color),
        ...finding.related.flatMap(r => [
            ...wrap(`see ${placeOf(r.at, files)}: ${r.message}`, WIDTH).map((line, i) => (i === 0 ? `  ${line}` : `    ${line}`)),
            ...frame(r.at, '-', paint.faint),
        ]),
        ...finding.fixes.map(fix => `  fix: ${cleanText(fix.title)}`),
    ];
}

/** `rooms/study.coffer:12:5`, counted from one. */
function placeOf(at: Source, files: Files): string {
    return `${cleanText(files.nameOf(at.uri))}:${at.range.start.line + 1}:${at.range.start.character + 1}`;
}

/** Splits each file once, however many findings it has. */
function lineReader(files: Files): (uri: string) => readonly string[] {
    const known = new Map<string, readonly string[]>();
    return uri => atKey(known, uri, () => linesOf(files.textOf(uri) ?? ''));
}

interface Tally { readonly error: number; readonly warning: number; readonly hint: number; readonly allowed: number }

export function tally(findings: readonly Finding[]): Tally {
    const counts: Record<Severity | 'allowed', number> = { error: 0, warning: 0, hint: 0, allowed: 0 };
    for (const finding of findings) counts[finding.allowed ? 'allowed' : finding.severity]++;
    return counts;
}

/** `2 errors, 1 warning in 3 files; 1 allowed in the text`. */
export function summary(findings: readonly Finding[], fileCount: number): string {
    const counts = tally(findings);
    const found = (['error', 'warning', 'hint'] as const).filter(s => counts[s] > 0).map(s => counted(counts[s], s)).join(', ');
    const allowed = counts.allowed > 0 ? `; ${counts.allowed} allowed in the text` : '';
    return `${found || 'Nothing found'} in ${counted(fileCount, 'file')}${allowed}`;
}

/** One line a finding: `path:line:column: severity: message [rule]`. */
export function conciseFindings(findings: readonly Finding[], files: Files): TerminalText {
    return terminalLines(findings.filter(f => !f.allowed).map(f => `${placeOf(f.at, files)}: ${f.severity}: ${cleanText(f.message)} [${f.rule}]`));
}
