import { isDate } from '../../quantity/calendar.ts';
import { Rational } from '../../quantity/rational.ts';
import { readLength } from '../../quantity/read-length.ts';
import type * as ast from '../generated/ast.ts';
import { currencyOf } from '../types/infer.ts';
import { ANGLE, COUNT, LENGTH, NUMBER, PERCENT, quantity, TIME } from '../types/type.ts';
import { known, number, type Known } from './value.ts';

/** A literal that has a meaning; why it has none; undefined where the expression is no literal. */
type Read = Known | InDays | 'over-zero' | 'too-many-digits' | 'no-such-date' | undefined;
/** A time in days, which are as long as the crew works. */
interface InDays { readonly days: Rational }

/** No figure on a job is longer; exact arithmetic on a pasted page of digits would stop the editor. */
const MOST_DIGITS = 30;

export function readLiteral(expr: ast.Expr): Read {
    const text = (expr as { text?: string }).text;
    return text === undefined ? undefined : remembered(expr.$type, text);
}

/**
 * What the same words always mean. A house says the same few hundred figures over and over, and reading one costs more
 * than looking it up; beyond a few thousand the rest is forgotten.
 */
const memory = new Map<string, Map<string, Read>>();
const MOST_REMEMBERED = 2000;
function remembered(kind: string, text: string): Read {
    if (text.length > 80) return kind === 'TextLit' ? known({ is: 'text', text }) : 'too-many-digits';
    let ofKind = memory.get(kind);
    if (!ofKind) memory.set(kind, ofKind = new Map());
    let read = ofKind.get(text);
    if (read === undefined && !ofKind.has(text)) {
        if (ofKind.size >= MOST_REMEMBERED) ofKind.clear();
        ofKind.set(text, read = readText(kind, text));
    }
    return read;
}

function readText(kind: string, text: string): Read {
    if (kind === 'TextLit') return known({ is: 'text', text });
    if (kind === 'DateLit') return dateOf(text);
    if (kind === 'NumberSizeLit') return known({ is: 'number-size', text });
    if ((text.match(/\d/g)?.length ?? 0) > MOST_DIGITS) return 'too-many-digits';
    if (/\/0+(?!\d)/.test(text)) return 'over-zero';
    const figure = /^\$?(\d+(?:\.\d+)?)/.exec(text)?.[1];
    switch (kind) {
        case 'LengthLit': {
            const exact = readLength(text);
            return exact && known(number(exact, LENGTH));
        }
        case 'UnmarkedLit': return undefined;           // nobody knows of what
        case 'SizeLit': return sizeOf(text);
        case 'GaugeLit': return known({ is: 'gauge', gauge: Number.parseInt(text, 10) });
    }
    if (figure === undefined) return undefined;
    const exact = new Rational(figure);
    switch (kind) {
        case 'NumberLit': return known(number(exact, figure.includes('.') ? NUMBER : COUNT));
        case 'PercentLit': return known(number(exact.div(100), PERCENT));
        case 'AngleLit': return known(number(exact, ANGLE));
        case 'TimeLit': return /day/.test(text) ? { days: exact } : known(number(/min/.test(text) ? exact : exact.mul(60), TIME));
        case 'MoneyLit': return known(number(exact, quantity({ money: 1 }, currencyOf(text))));
        default: return undefined;
    }
}

/** `5/4x6`: nominal thickness and width in inches. */
function sizeOf(text: string): Read {
    const found = /^(\d+)(?:\/(\d+))?x(\d+)$/.exec(text);
    if (!found) return undefined;
    const thickness = new Rational(BigInt(found[1]!), BigInt(found[2] ?? 1));
    return known({ is: 'size', size: { text, thickness, width: new Rational(found[3]!) } });
}

/** However its dashes were typed: `2026-03-04`. */
function dateOf(words: string): Read {
    const text = words.replaceAll(/\D/g, '-');
    return isDate(text) ? known({ is: 'date', text }) : 'no-such-date';
}
