import { BOARD_FOOT } from '../../data/board-measure.ts';
import { printMoney } from '../../quantity/money.ts';
import { printIn, shortest } from '../../quantity/print-length.ts';
import { toTicks, type Rational } from '../../quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../../quantity/ticks.ts';
import { isPlainNumber, LENGTH, PERCENT, type Quantity } from '../types/type.ts';
import { inWords } from '../types/words.ts';
import type { Value } from './value.ts';

/** A length in the unit it is whole in: inches where it is a multiple of 1/128", else millimeters. */
function printExact(ticks: Ticks): string {
    const inFeet = printIn(ticks, 'feet-inches'), metric = printIn(ticks, 'millimeters');
    return inFeet.startsWith('~') && !metric.startsWith('~') ? metric : inFeet;
}

/** A value as somebody would write it: `1/4"`, `3`, `7.25%`, `2.70 USD per ft`, `mitered`, `poplar-1x6`. */
export function printValue(value: Value | undefined): string {
    if (!value) return '?';
    switch (value.is) {
        case 'quantity': return printQuantity(value.exact, value.type);
        case 'word': return value.word;
        case 'text': return `"${value.text}"`;
        case 'number-size': case 'date': return value.text;
        case 'gauge': return `${value.gauge} ga`;
        case 'size': return value.size.text;
        case 'pair': case 'range': return `${printValue(value.first.value)} ${value.is === 'pair' ? 'x' : 'to'} ${printValue(value.second.value)}`;
        case 'comparison': return `${printValue(value.left)} ${value.operator} ${printValue(value.right)}`;
        case 'stock': return value.stock.name;
        case 'profile': return value.profile.label;
        case 'thing': return value.node.name ?? '?';
    }
}

function printQuantity(exact: Rational, type: Quantity): string {
    if (type === LENGTH) return printExact(toTicks(exact));
    if (type === PERCENT) return `${decimal(exact.mul(100))}%`;
    if (isPlainNumber(type)) return decimal(exact);
    const { length, time, angle, money, mass } = type.dimensions;
    const only = (some: Partial<Quantity['dimensions']>): boolean => (some.length ?? 0) === length && (some.time ?? 0) === time && (some.angle ?? 0) === angle && (some.money ?? 0) === money && mass === 0;
    const currency = type.currency;
    if (only({ money: 1 })) return printMoney(exact, currency);
    if (only({ money: 1, length: -1 })) return `${decimal(exact.mul(TICKS_PER_FOOT), 4)} ${currency} per ft`;
    if (only({ money: 1, length: -3 })) return `${decimal(exact.mul(BOARD_FOOT), 4)} ${currency} per board-ft`;
    if (only({ money: 1, time: -1 })) return `${decimal(exact.mul(60))} ${currency} per h`;
    if (only({ time: 1 })) return `${decimal(exact)} min`;
    if (only({ time: 1, length: -1 })) return `${decimal(exact.mul(TICKS_PER_FOOT))} min per ft`;
    if (only({ angle: 1 })) return `${decimal(exact)} deg`;
    if (only({ length: 2 })) return `${decimal(exact.div(TICKS_PER_FOOT ** 2))} sq-ft`;
    return inWords(type);
}

/**
 * In inches beside a figure in millimeters: what is on no tape is read off at the nearest 1/32", `~5 1/2"`, and below half an inch
 * written with decimals, `0.006"`.
 */
export function inInches(ticks: Ticks): string {
    const text = printIn(ticks, 'feet-inches');
    return text.startsWith('~') && Math.abs(ticks) < TICKS_PER_INCH / 2 ? `${shortest(ticks / TICKS_PER_INCH, 4)}"` : text;
}
/** In millimeters beside a figure in inches, where nobody measures by them: as exact as two decimals are. */
export function inMillimeters(ticks: Ticks): string {
    return `${shortest(ticks / TICKS_PER_MM, 2)} mm`;
}

function decimal(exact: Rational, places = 6): string {
    return shortest(exact.valueOf(), places);
}
