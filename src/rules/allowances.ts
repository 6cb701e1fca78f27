import type { Layout } from '../ceiling/model.ts';
import { findingOf, type Finding } from '../findings/finding.ts';
import type { Allowance, FileContent } from '../job/file.ts';
import { allowUnused } from './allow-unused.ts';
import { ruleNamed } from './index.ts';

/** The findings with those marked that a comment allows. They keep their severity; who shows them says that they are allowed. */
export function marked(findings: readonly Finding[], allowances: readonly Allowance[]): Finding[] {
    const first = new Map<string, Allowance>();
    for (const allowance of allowances) if (!first.has(placeOf(allowance))) first.set(placeOf(allowance), allowance);
    return findings.map(finding => {
        const allowance = mayBeAllowed(finding) ? first.get(placeOf(finding)) : undefined;
        return allowance ? { ...finding, allowed: { reason: allowance.reason, at: allowance.at } } : finding;
    });
}

/**
 * A hint for every comment that allows nothing of what was found. What the dry fit finds is not known here, nor what git knows, nor what it does not
 * find; nor what a rule would find that was not asked, since something cannot be read or a room is not laid out. That there is no
 * such rule is known always.
 */
export function unused(findings: readonly Finding[], file: FileContent, layouts: readonly Layout[]): Finding[] {
    const { allowances } = file;
    const found = new Set(findings.filter(mayBeAllowed).map(placeOf)), whole = isCheckedWhole(file, layouts);
    const isKnown = ({ rule: name }: Allowance): boolean => {
        const rule = ruleNamed(name);
        return !rule || whole && !rule.check.fit && !rule.check.commits;
    };
    return allowances.filter(isKnown).filter(allowance => !found.has(placeOf(allowance))).map(hintOf);
}

/** Every rule was asked about everything that the file says. */
function isCheckedWhole({ findings }: FileContent, layouts: readonly Layout[]): boolean {
    return findings.every(({ severity }) => severity !== 'error') && layouts.every(({ room, ceiling }) => !room.broken && ceiling !== undefined);
}

/** What cannot be read or has no meaning cannot be built, whatever a comment says: errors of the language stay. */
function mayBeAllowed({ rule, severity }: Finding): boolean {
    return severity !== 'error' || ruleNamed(rule) !== undefined;
}

/** A comment allows what a rule finds on a line. */
function placeOf(one: Finding | Allowance): string {
    return `${'line' in one ? one.line : one.at.range.start.line} ${one.rule}`;
}

function hintOf({ rule, at }: Allowance): Finding {
    const message = ruleNamed(rule) ? `There is no ${rule} finding here: take the comment out.` : `${rule} is not a rule whose findings can be allowed here.`;
    const remove = { title: 'Take the comment out', edits: [{ uri: at.uri, range: at.range, text: '' }], preferred: true };
    return findingOf({ rule: allowUnused.name, severity: allowUnused.severity, at, message, fixes: [remove] });
}
