import * as ast from '../generated/ast.ts';
import type { Operand, Operation } from '../operators.ts';
import { sourceOf, sourceOfRange } from './place.ts';
import type { Report } from './report.ts';
import { replacing } from '../../findings/finding.ts';

/** `12' 18"`: the inches behind feet are fewer than twelve. */
export function checkInches(expr: ast.LengthLit, report: Report): void {
    const found = /^(\d+)\s*(?:['′’]|ft)[\s-]*(\d+)(.*)$/.exec(expr.text ?? '');
    if (!found || Number(found[2]) < 12 || /^[./⁄]/.test(found[3]!)) return;
    const feet = Number(found[1]), inches = Number(found[2]), rest = found[3]!;
    const sum = `${feet + Math.floor(inches / 12)}' ${inches % 12}${rest}`;
    report({
        rule: 'likely-slip', severity: 'warning', at: sourceOf(expr), message: `${expr.text} has twelve inches or more behind its feet; it is read as ${sum}. Is one of the figures a slip?`,
        fixes: [{ ...replacing(sourceOf(expr), sum), preferred: false }],
    });
}

/** `12' -6"`: a dash between feet and inches that is read as less. With a space on both sides of it, or on none, it is what it looks like. */
export function checkDash({ operator, operatorRange, left, right }: Operation, report: Report): void {
    if (operator !== '-' || !isLength(left, /['′’]$/) || !isLength(right, /["″”]$/)) return;
    const from = sourceOf(left.expr), to = sourceOf(right.expr), { start, end } = operatorRange;
    const isApart = start.character > from.range.end.character && start.line === from.range.end.line;
    const isTouching = to.range.start.line === end.line && to.range.start.character === end.character;
    if (isApart !== isTouching || !isApart) return;
    const feet = left.expr.text!, inches = right.expr.text!;
    const at = { ...from, range: { start: from.range.start, end: to.range.end } };
    report({
        rule: 'likely-slip', severity: 'warning', at: sourceOfRange(left.expr, at.range), message: `This is ${feet} less ${inches}. If ${feet} ${inches} is meant, write it without the dash; if not, write ${feet} - ${inches}.`,
        fixes: [replacing(at, `${feet} ${inches}`), { ...replacing(at, `${feet} - ${inches}`), preferred: false }],
    });
}

function isLength(operand: Operand | undefined, mark: RegExp): operand is Extract<Operand, { kind: 'leaf' }> & { expr: ast.LengthLit } {
    return operand?.kind === 'leaf' && operand.expr.$type === 'LengthLit' && mark.test((operand.expr as ast.LengthLit).text ?? '');
}
