import * as ast from '../generated/ast.ts';
import type { Operand, Operation } from '../operators.ts';
import { ANGLE, COUNT, GAUGE, LENGTH, MONEY, NUMBER_SIZE, PERCENT, RATIO, SIZE, TEXT, NAME, TIME, type Type } from './type.ts';

/** What stands behind a length that somebody wrote without a unit, the likeliest first and the smallest last. */
export type UsualUnits = readonly ('"' | "'" | ' mm' | ' m')[];

/** What the job is written in: whether lengths are shown in millimeters, and the letters of its currency; undefined of one that there is not. */
export interface Wont { readonly isMetric: boolean; readonly currency: string | undefined }

/** Of a room or a board nobody says more than this in feet or in meters; a bare 120 is inches, a bare 5200 millimeters. */
const MOST_IN_LARGE_UNITS = 40;

/**
 * What somebody who wrote a bare figure, or forgot half of a price, most likely meant: `24"` for 24, `18 ga` for 18.
 * None where that would be a guess; several, the likeliest first, where a figure may be feet or inches.
 */
export function suggestions(
    want: Type | undefined, got: Type | undefined, operand: Operand, units: UsualUnits, currency: string | undefined,
): readonly string[] {
    if (want === LENGTH && operand.kind === 'leaf' && ast.isNumberLit(operand.expr)) {
        const { text } = operand.expr;
        const likely = Number(text) > MOST_IN_LARGE_UNITS ? units.slice(-1) : units;
        return likely.map(unit => text + unit);
    }
    if (want === MONEY && currency && operand.kind === 'leaf' && ast.isNumberLit(operand.expr)) return [`${operand.expr.text} ${currency}`];
    const only = suggestion(want, got, operand);
    return only === undefined ? [] : [only];
}

function suggestion(want: Type | undefined, got: Type | undefined, operand: Operand): string | undefined {
    if (!want) return undefined;
    if (operand.kind === 'operation') return want === LENGTH ? bareFraction(operand) : want === SIZE ? sizeOf(operand) : undefined;
    const { expr } = operand;
    if (ast.isNumberLit(expr)) return inUnit(want, expr.text);
    if (ast.isUnmarkedLit(expr)) return want === LENGTH ? `${expr.text}"` : inUnit(want, expr.text);
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

/** `1 x 6`, `5/4 x 6`: a nominal size is written in one. */
function sizeOf({ operator, left, right }: Operation): string | undefined {
    if (operator !== 'x' || !left || right?.kind !== 'leaf' || !ast.isNumberLit(right.expr)) return undefined;
    const thickness = left.kind === 'leaf' ? ast.isNumberLit(left.expr) ? left.expr.text : undefined : bareFraction(left)?.slice(0, -1);
    const size = `${thickness}x${right.expr.text}`;
    return thickness !== undefined && /^\d+(?:\/\d+)?x\d+$/.test(size) ? size : undefined;
}

function inUnit(want: Type, text: string): string | undefined {
    if (want === PERCENT || want === RATIO) return `${text}%`;
    if (want === TIME) return `${text} min`;
    if (want === ANGLE) return `${text}°`;
    if (want === TEXT || want === NAME) return `"${text}"`;
    if (!/^\d+$/.test(text)) return undefined;
    if (want === GAUGE) return `${text} ga`;
    if (want === NUMBER_SIZE) return `#${text}`;
    return undefined;
}
