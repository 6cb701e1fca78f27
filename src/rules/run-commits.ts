import type { Commits } from '../job/commits.ts';
import type { FileContent } from '../job/file.ts';
import { compareFindings, findingOf, type Finding } from '../findings/finding.ts';
import { marked } from './allowances.ts';
import { RULES } from './index.ts';

/** What is wrong with the commits that the job of a file names, by what git knows of them; marked where a comment allows it. */
export function runCommitRules({ uri, job, allowances }: FileContent, commits: Commits): Finding[] {
    if (job.at?.uri !== uri || commits.size === 0) return [];
    const findings: Finding[] = [];
    for (const { name, severity, check } of RULES) check.commits?.({ job, commits }, found => findings.push(findingOf({ rule: name, severity, ...found })));
    return marked(findings, allowances).sort(compareFindings);
}
