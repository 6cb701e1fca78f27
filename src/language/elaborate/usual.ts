import { printLength } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT } from '../../quantity/ticks.ts';
import * as ast from '../generated/ast.ts';
import type { Facts, Usual } from '../types/facts.ts';
import { operandOf } from '../types/infer.ts';
import { sourceOf } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import type { Raise } from './raised.ts';
import type { Known } from './value.ts';

/** Where the value that is looked at is said. */
interface SaidAt { readonly name: string; readonly expr: ast.Expr; readonly via: Known['via']; readonly raise: Raise }

/** What is usual for a property; `aspect` tells a count or a gauge from the length beside it. */
export function usualOf({ usual }: Facts, aspect?: 'count' | 'gauge'): Usual | undefined {
    return usual.find(({ of }) => aspect ? of === aspect : of !== 'gauge' && (of !== 'count' || usual.length === 1));
}

/** Warns where a figure is read as it stands and hardly any job has it, and names what is most likely meant. */
export function warnUnusual(usual: Usual | undefined, value: number, { name, expr, via, raise }: SaidAt): void {
    if (!usual || isUsual(usual, value)) return;
    const inMillimeters = /m$/.test(literalText(expr) ?? '');
    const text = (figure: number): string => inWords(figure, usual, inMillimeters);
    const meant = likely(value, usual).map(text).find(words => !words.startsWith('~'));
    const range = usual.least <= 0 ? `at most ${text(usual.most)} is usual` : `${text(usual.least)} to ${text(usual.most)} is usual`;
    raise({
        rule: 'likely-slip', severity: 'warning', at: sourceOf(expr), via,
        message: `${quoted(name)} is ${text(value)}; ${range}${usual.slip === undefined ? '' : `: ${usual.slip}`}.${meant === undefined ? '' : ` Did you mean ${meant}?`}`,
    });
}

/** Where there is no least, nothing and less than nothing are for others to judge. */
export function isUsual({ least, most }: Usual, value: number): boolean {
    return value <= most && (least <= 0 || value >= least);
}

/** The slips that are made most: the other mark, a decimal place, a figure struck twice. */
function likely(value: number, { of, least, most }: Usual): number[] {
    const slips = of === 'length' ? (value > most ? [value / 10, value / 12, value / 1000] : [value * 12, value * 10, value * 1000]) : of === 'gauge' ? [value / 10, Math.floor(value / 10)] : of === 'share' ? [value / 10, value / 100] : [value / 10, value / 60, value / 100];
    return slips.filter(meant => meant >= least && meant <= most && meant > 0 && Number.isInteger(of === 'share' ? 1 : meant));
}

function inWords(value: number, { of }: Usual, inMillimeters: boolean): string {
    switch (of) {
        case 'length': return printLength(Math.round(value), inMillimeters ? 'millimeters' : 'feet-inches');
        case 'share': return `${Number((value * 100).toFixed(4))}%`;
        case 'minutes': return value >= 120 ? `${figure(value / 60)} h` : `${figure(value)} min`;
        case 'minutes a foot': return `${figure(value)} min per ft`;
        case 'gauge': case 'count': return figure(value);
    }
}

function figure(value: number): string {
    return String(Number(value.toFixed(2)));
}

/** The words of a figure that stands by itself. */
function literalText(expr: ast.Expr): string | undefined {
    const operand = operandOf(expr);
    return operand?.kind === 'leaf' ? (operand.expr as { text?: string }).text : undefined;
}

/** A rate of time as the table has it: minutes, or minutes a foot. */
export function minutesOf(exact: { valueOf(): number }, usual: Usual | undefined): number {
    return usual?.of === 'minutes a foot' ? exact.valueOf() * TICKS_PER_FOOT : exact.valueOf();
}
