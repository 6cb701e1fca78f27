import type { Finding } from '../findings/finding.ts';
import type { Allowance, FileContent } from '../job/file.ts';
import { allowUnused } from './allow-unused.ts';
import { ruleNamed } from './index.ts';

/**
 * The findings with those marked that a comment in the file allows, and a hint for every comment that allows nothing.
 * They keep their severity; who shows them says that they are allowed, and why.
 */
export function withAllowances(findings: readonly Finding[], { allowances, findings: ofLanguage }: FileContent): Finding[] {
    const used = new Set<Allowance>();
    const marked = findings.map(finding => {
        const allowance = allowances.find(one => allows(one, finding));
        if (!allowance) return finding;
        used.add(allowance);
        return { ...finding, allowed: { reason: allowance.reason, at: allowance.at } };
    });
    const unused = allowances.filter(one => !used.has(one) && !ofLanguage.some(finding => allows(one, finding)));
    return [...marked, ...unused.map(hintOf)];
}

function allows({ rule, line }: Allowance, finding: Finding): boolean {
    return finding.rule === rule && finding.at.range.start.line === line;
}

function hintOf({ rule, at }: Allowance): Finding {
    const message = ruleNamed(rule)
        ? `Nothing of ${rule} is found here: take the comment away.`
        : `There is no rule ${rule}, so nothing is allowed here.`;
    const remove = { title: 'Take the comment away', edits: [{ uri: at.uri, range: at.range, text: '' }], preferred: true };
    return { rule: allowUnused.name, severity: allowUnused.severity, at, message, related: [], fixes: [remove] };
}
