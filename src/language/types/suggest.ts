import * as ast from '../generated/ast.ts';
import type { Operand, Operation } from '../operators.ts';
import type { UsualUnit } from './infer.ts';
import { COUNT, GAUGE, LENGTH, NUMBER_SIZE, PERCENT, RATIO, TEXT, NAME, TIME, type Type } from './type.ts';

/**
 * What somebody who wrote a bare figure, or forgot half of a price, most likely meant: `24"` for 24, `18 ga` for 18.
 * Undefined where that would be a guess.
 */
export function suggestion(want: Type | undefined, got: Type | undefined, operand: Operand, unit: UsualUnit): string | undefined {
    if (!want) return undefined;
    if (operand.kind === 'operation') return want === LENGTH ? bareFraction(operand) : undefined;
    const { expr } = operand;
    if (ast.isNumberLit(expr)) return inUnit(want, expr.text, unit);
    if (ast.isUnmarkedLit(expr)) return inUnit(want, expr.text, '"');
    if (ast.isNumberSizeLit(expr) && want === GAUGE) return `${expr.text.slice(1)} ga`;
    if (ast.isGaugeLit(expr) && want === NUMBER_SIZE) return `#${Number.parseInt(expr.text, 10)}`;
    if (ast.isPercentLit(expr) && want === COUNT) return undefined;
    if (ast.isRef(expr) && !expr.call && (want === TEXT || want === NAME)) return `"${expr.target?.$refText ?? ''}"`;
    if (ast.isMoneyLit(expr) && want.is === 'quantity' && got?.is === 'quantity') {
        const { money, length, time } = want.dimensions;
        if (money === 1 && length === -1 && time === 0) return `${expr.text} per ft`;
        if (money === 1 && time === -1 && length === 0) return `${expr.text} per h`;
    }
    if (ast.isTimeLit(expr) && want.is === 'quantity' && want.dimensions.time === 1 && want.dimensions.length === -1) return `${expr.text} per ft`;
    return undefined;
}

/** `3/8` without its mark reads as three divided by eight. */
function bareFraction({ operator, left, right }: Operation): string | undefined {
    if (operator !== '/' || left?.kind !== 'leaf' || right?.kind !== 'leaf' || !ast.isNumberLit(left.expr) || !ast.isNumberLit(right.expr)) return undefined;
    return `${left.expr.text}/${right.expr.text}"`;
}

function inUnit(want: Type, text: string, unit: UsualUnit): string | undefined {
    if (want === LENGTH) return text + unit;
    if (want === PERCENT || want === RATIO) return `${text}%`;
    if (want === TIME) return `${text} min`;
    if (want === TEXT || want === NAME) return `"${text}"`;
    if (!/^\d+$/.test(text)) return undefined;
    if (want === GAUGE) return `${text} ga`;
    if (want === NUMBER_SIZE) return `#${text}`;
    return undefined;
}
