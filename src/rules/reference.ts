import type { Severity } from '../findings/finding.ts';
import type { Rule } from './rule.ts';

/** The rule reference: one page of Markdown, made from the rules themselves. */
export function ruleReference(rules: readonly Rule[]): string {
    const table = rules.map(rule => `| [\`${rule.name}\`](#${rule.name}) | ${rule.severity} | ${rule.title} |`);
    return [
        '# Rules', '',
        ...(['error', 'warning', 'hint'] as const).map(severity => `- **${severity}**: ${MEANING[severity]}`), '',
        'A rule is silenced on one line, or on the line below a comment that stands alone, with a reason that shows in reports:', '',
        '    held-down  1/2"   // allow side-misses-blocking: the blocking is furred down here', '',
        '| rule | severity | what goes wrong |', '|---|---|---|', ...table, '',
        ...rules.map(rulePage),
    ].join('\n');
}

/** One rule's page for the terminal, ending in a line end: the same words, without the marks of a page in a browser. */
export function explainRule(rule: Rule): string {
    return [
        `${rule.name} (${rule.severity})`, rule.title, '',
        rule.explanation.trim().replaceAll('**', '').replaceAll('`', ''), '',
        'Wrong:', '', indented(rule.wrong), '',
        'Fixed:', '', indented(mendedLines(rule)), '',
        `Where the figures come from: ${rule.basis}`, '',
    ].join('\n');
}

const MEANING: Readonly<Record<Severity, string>> = {
    error: 'it cannot be built as written.',
    warning: 'it can be built, but a careful carpenter would not.',
    hint: 'it may be better otherwise.',
};

/** One rule's page as Markdown. */
export function rulePage(rule: Rule): string {
    return [
        `## ${rule.name}`, '', `*${rule.severity}* · ${rule.title}`, '', rule.explanation.trim(), '',
        'Wrong:', '', '```coffer', rule.wrong.trim(), '```', '',
        'Fixed:', '', '```coffer', mendedLines(rule), '```', '',
        `Where the figures come from: ${rule.basis}`, '',
    ].join('\n');
}

/** The lines in which the mended file differs, or the line where something was taken away. */
function mendedLines({ wrong, right }: Rule): string {
    const [before, after] = [wrong.trimEnd().split('\n'), right.trimEnd().split('\n')];
    let top = 0;
    while (top < after.length && after[top] === before[top]) top++;
    let foot = 0;
    while (foot < after.length - top && foot < before.length - top && after.at(-1 - foot) === before.at(-1 - foot)) foot++;
    const lines = after.slice(top, after.length - foot);
    return lines.length > 0 ? lines.join('\n') : '  // nothing there';
}

function indented(text: string): string {
    return text.trimEnd().split('\n').map(line => line && `    ${line}`).join('\n');
}
