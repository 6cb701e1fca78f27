import type { Finding } from '../findings/finding.ts';
import type { Allowance, FileContent } from '../job/file.ts';
import { allowUnused } from './allow-unused.ts';
import { ruleNamed } from './index.ts';

/** The findings with those marked that a comment allows. They keep their severity; who shows them says that they are allowed. */
export function marked(findings: readonly Finding[], allowances: readonly Allowance[]): Finding[] {
    if (allowances.length === 0) return [...findings];
    return findings.map(finding => {
        const allowance = allowances.find(one => allows(one, finding));
        return allowance ? { ...finding, allowed: { reason: allowance.reason, at: allowance.at } } : finding;
    });
}

/** A hint for every comment that allows nothing of what was found. What the dry fit finds is not known here, nor what it does not find. */
export function unused(findings: readonly Finding[], { allowances }: FileContent): Finding[] {
    return allowances.filter(({ rule }) => !ruleNamed(rule)?.check.fit).filter(allowance => !findings.some(finding => allows(allowance, finding))).map(hintOf);
}

/** What cannot be read or has no meaning cannot be built, whatever a comment says: errors of the language stay. */
function allows({ rule, line }: Allowance, finding: Finding): boolean {
    return finding.rule === rule && finding.at.range.start.line === line && (finding.severity !== 'error' || ruleNamed(rule) !== undefined);
}

function hintOf({ rule, at }: Allowance): Finding {
    const message = ruleNamed(rule) ? `Nothing of ${rule} is found here: take the comment away.` : `${rule} is no rule that finds anything here and may be allowed.`;
    const remove = { title: 'Take the comment away', edits: [{ uri: at.uri, range: at.range, text: '' }], preferred: true };
    return { rule: allowUnused.name, severity: allowUnused.severity, at, message, related: [], fixes: [remove] };
}
