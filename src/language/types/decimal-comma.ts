import type { Source } from '../../provenance/source.ts';
import type * as ast from '../generated/ast.ts';
import { uriOf } from './place.ts';

/** Two values with a comma between them that were meant as one: `6,40 m`. */
interface DecimalComma { readonly before: ast.Expr; readonly after: ast.Expr; readonly at: Source; readonly meant: string }

/** A whole number, and what goes on right behind its comma: `6` and `40 m`, `1/4" x 3` and `2 mm`. */
const WHOLE = /(?:^|[\s(])\d+$/, REST = /^\d+(?![\d/\u2044'"′″-]|\s+\d)/;
const METRIC = /^\d+\s*(?:m|cm|mm)(?!\w)/;

/**
 * Where a line writes decimals with a comma. Where a property takes a list, `8,10,12'` may as well be three lengths with
 * no space between them; there only a metric length counts, and a figure on one side of it that is not another's end.
 */
export function decimalCommas(values: readonly ast.Expr[], inList: boolean): readonly DecimalComma[] {
    const found: DecimalComma[] = [];
    for (let i = 0; i + 1 < values.length; i++) {
        const before = values[i]!.$cstNode, after = values[i + 1]!.$cstNode;
        if (!before || !after || after.offset !== before.end + 1) continue;
        if (!WHOLE.test(before.text) || !REST.test(after.text) || inList && !METRIC.test(after.text)) continue;
        if (inList && values[i - 1]?.$cstNode?.end === before.offset - 1) continue;
        found.push({
            before: values[i]!, after: values[i + 1]!, meant: `${before.text}.${after.text}`,
            at: { uri: uriOf(values[i]!), range: { start: { ...before.range.start }, end: { ...after.range.end } } },
        });
        i++;
    }
    return found;
}
