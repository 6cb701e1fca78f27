import type { ArtifactLocation, Log, PhysicalLocation, Region, ReportingDescriptor, Result } from 'sarif';
import type { Finding, Severity } from '../../findings/finding.ts';
import type { Range, Source } from '../../provenance/source.ts';
import type { Files } from '../look.ts';
import { printJson } from '../../text/json.ts';
import type { JsonText } from '../../text/fit.ts';

/** What is known of a rule besides its name. */
interface RulePage { readonly name: string; readonly title: string; readonly severity?: Severity; readonly explanation?: string }

const LEVEL = { error: 'error', warning: 'warning', hint: 'note' } as const;
const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/**
 * SARIF 2.1.0 (OASIS): what code hosts and editors read. What the text allows is there, marked as suppressed with its reason.
 * @param isWhole false where a file that was asked for could not be read
 */
export function sarifFindings(
    findings: readonly Finding[], files: Files, program: { readonly version: string; readonly rules: readonly RulePage[] }, isWhole = true,
): JsonText {
    const rules = usedRules(findings, program.rules);
    const index = new Map(rules.map((rule, i) => [rule.id, i]));
    const log: Log = {
        $schema: SCHEMA,
        version: '2.1.0',
        runs: [{
            tool: { driver: { name: 'cofferwright', version: program.version, rules } },
            columnKind: 'utf16CodeUnits',
            invocations: [{ executionSuccessful: isWhole }],
            results: findings.map(f => result(f, index.get(f.rule)!, files)),
        }],
    };
    return printJson(log);
}

function usedRules(findings: readonly Finding[], pages: readonly RulePage[]): ReportingDescriptor[] {
    const used = new Map<string, Severity>();
    for (const f of findings) if (!used.has(f.rule)) used.set(f.rule, f.severity);
    return [...used.keys()].sort().map(name => {
        const page = pages.find(p => p.name === name);
        return {
            id: name,
            shortDescription: { text: page?.title ?? name },
            defaultConfiguration: { level: LEVEL[page?.severity ?? used.get(name)!] },
            ...(page?.explanation ? { help: { text: page.explanation, markdown: page.explanation } } : {}),
        };
    });
}

function result(finding: Finding, ruleIndex: number, files: Files): Result {
    return {
        ruleId: finding.rule,
        ruleIndex,
        level: LEVEL[finding.severity],
        message: { text: finding.message },
        locations: [{ physicalLocation: location(finding.at, files) }],
        ...(finding.related.length === 0 ? {} : {
            relatedLocations: finding.related.map((r, id) => ({ id, message: { text: r.message }, physicalLocation: location(r.at, files) })),
        }),
        ...(finding.fixes.length === 0 ? {} : {
            fixes: finding.fixes.map(fix => ({
                description: { text: fix.title },
                artifactChanges: [...new Set(fix.edits.map(e => e.uri))].map(uri => ({
                    artifactLocation: artifact(uri, files),
                    replacements: fix.edits.filter(e => e.uri === uri).map(e => ({ deletedRegion: region(e.range), insertedContent: { text: e.text } })),
                })),
            })).filter(fix => fix.artifactChanges.length > 0),
        }),
        ...(finding.allowed ? { suppressions: [{ kind: 'inSource', justification: finding.allowed.reason }] } : {}),
    };
}

function location(at: Source, files: Files): PhysicalLocation {
    return { artifactLocation: artifact(at.uri, files), region: region(at.range) };
}

/** Relative to the folder the program ran in, which the reader knows; a file outside of it by its full address. */
function artifact(uri: string, files: Files): ArtifactLocation {
    const name = files.nameOf(uri);
    if (name.startsWith('..') || name.startsWith('/') || /^[A-Za-z]:|^[a-z]+:\//.test(name)) return { uri };
    return { uri: name.split('/').map(encodeURIComponent).join('/'), uriBaseId: '%SRCROOT%' };
}

function region({ start, end }: Range): Region {
    return { startLine: start.line + 1, startColumn: start.character + 1, endLine: end.line + 1, endColumn: end.character + 1 };
}
