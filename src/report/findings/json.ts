import type { Finding } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import type { Files } from '../look.ts';
import { rangeJson } from '../place-json.ts';
import { printJson } from '../../text/json.ts';
import { tally } from './human.ts';
import type { FindingsJson } from './shape.ts';
import type { JsonText } from '../../text/fit.ts';

/** Findings for programs. */
export function jsonFindings(findings: readonly Finding[], checked: readonly string[], files: Files): JsonText {
    const counts = tally(findings);
    return printJson<FindingsJson>({
        version: 1,
        kind: 'cofferwright.findings',
        files: checked.map(uri => files.nameOf(uri)),
        summary: { errors: counts.error, warnings: counts.warning, hints: counts.hint, allowed: counts.allowed },
        findings: findings.map(f => ({
            rule: f.rule,
            severity: f.severity,
            message: f.message,
            ...place(f.at, files),
            ...(f.room === undefined ? {} : { room: f.room }),
            related: f.related.map(r => ({ message: r.message, ...place(r.at, files) })),
            fixes: f.fixes.map(fix => ({
                title: fix.title,
                preferred: fix.preferred ?? false,
                edits: fix.edits.map(e => ({ file: files.nameOf(e.uri), range: rangeJson(e.range), text: e.text })),
            })),
            ...(f.allowed ? { allowed: { reason: f.allowed.reason, ...place(f.allowed.at, files) } } : {}),
        })),
    });
}

function place(at: Source, files: Files) {
    return { file: files.nameOf(at.uri), range: rangeJson(at.range) };
}
