import { CstUtils, isLeafCstNode, type LangiumDocument, type LeafCstNode } from 'langium';
import type { Allowance } from '../../job/file.ts';
import type { Source } from '../../provenance/source.ts';
import type { Raise } from './raised.ts';

/**
 * `// allow RULE: reason`. A comment behind something covers its own line; one that stands alone covers the next line
 * that is not a comment. Whether there is such a rule, and whether it finds anything there, is for the rules to say.
 */
export function allowancesOf(document: LangiumDocument, raise: Raise): Allowance[] {
    const text = document.textDocument.getText();
    if (!text.includes('allow')) return [];
    const allowances: Allowance[] = [];
    const lines = text.split(/\r\n?|\n/), below = linesBelow(lines);
    for (const comment of commentsOf(document)) {
        const words = /^\/\/\s*allow\b\s*([\w-]*)\s*(:?)(.*)$/.exec(comment.text);
        if (!words) continue;
        const at: Source = { uri: document.uri.toString(), range: { start: { ...comment.range.start }, end: { ...comment.range.end } } };
        const rule = words[1]!, reason = words[3]!.trim();
        if (rule === '') continue;                   // a comment that happens to begin with the word
        if (words[2] !== ':' || reason === '') {
            raise({ rule: 'allow-without-reason', at, message: `Give a reason: // allow ${rule}: the reason. Reports show it with the finding.` });
        } else allowances.push({ rule, reason, at, line: coveredLine(comment, lines, below) });
    }
    return allowances;
}

function coveredLine(comment: LeafCstNode, lines: readonly string[], below: readonly number[]): number {
    const { line, character } = comment.range.start;
    return lines[line]!.slice(0, character).trim() !== '' ? line : below[line]!;
}

/** For each line the next below it that is not a comment, from the last up: so each is looked at once, however many comments follow each other. */
function linesBelow(lines: readonly string[]): number[] {
    const below: number[] = [];
    for (let line = lines.length - 1; line >= 0; line--) {
        const next = line + 1;
        below[line] = next < lines.length && /^\s*(\/\/.*)?$/.test(lines[next]!) ? below[next]! : next;
    }
    return below;
}

function* commentsOf(document: LangiumDocument): Iterable<LeafCstNode> {
    const root = document.parseResult.value.$cstNode;
    if (!root) return;
    for (const node of CstUtils.streamCst(root)) if (isLeafCstNode(node) && node.hidden && node.text.startsWith('//')) yield node;
}
