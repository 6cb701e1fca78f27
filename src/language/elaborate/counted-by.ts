import * as ast from '../generated/ast.ts';
import { operandOf } from '../types/infer.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import type { Raise } from './raised.ts';
import type { Known } from './value.ts';
import { listed } from '../../plain/words.ts';

/** Whether a value of that property is for each of what the property is reckoned by; where it is not, that is raised at the unit. */
export function isCountedBy(units: readonly string[], name: string, expr: ast.Expr, { value, via }: Known, raise: Raise): boolean {
    if (value.is !== 'quantity' || value.per === undefined) return true;
    if (units.includes(value.per)) return true;
    const operand = operandOf(expr);
    const at = operand?.kind === 'leaf' && operand.expr.$type === 'Rate' ? sourceOfProperty(operand.expr as ast.Rate, 'unit') : sourceOf(expr);
    const wanted = units.length > 0 ? `goes by the ${units[0]}: write ${listed(units.map(unit => quoted(`per ${unit}`)), 'or')}, not` : 'does not go by anything that is counted: leave out';
    raise({ rule: 'wrong-unit', at, via, message: `${quoted(name)} ${wanted} ${quoted(`per ${value.per}`)}.` });
    return false;
}
