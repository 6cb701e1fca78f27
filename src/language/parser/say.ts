import { plainValue } from '../lexer/pasted.ts';
import type { Token } from '../lexer/token.ts';

/** Where the parser stopped: the token it met, the one before, the rule it was in, and what alone it would have taken. */
export interface Stop {
    readonly expected: string | undefined;
    readonly actual: Token;
    readonly previous: Token | undefined;
    readonly rule: string;
}

const VALUES = new Set(['LENGTH', 'MONEY', 'TIME', 'ANGLE', 'PERCENT', 'GAUGE', 'HASH', 'NOMINAL', 'DATE', 'NUMBER', 'UNMARKED', 'STRING']);
const OPERATORS = new Set(['*', '/', '+', '-', '±', '+/-', 'x', 'to', '<', '<=', '>', '>=']);
const NAMING = new Set(['Word', 'Key', 'Name', 'UsedName', 'WordDecl']);
const NAMED = new Set(['stock', 'profile', 'room', 'alternate', 'let', 'wall', 'fixture', 'board', 'line', 'crossing', 'kind', 'words', 'quantity', 'unit']);
const HEADERS: Readonly<Record<string, string>> =
    { Stock: 'stock', Profile: 'profile', Room: 'room', Alternate: 'alternate', Job: 'job', Labor: 'labor', Bid: 'bid', Kind: 'kind', Words: 'words' };
const UNITS: Readonly<Record<string, string>> = { inch: '"', inches: '"', foot: "'", feet: "'", millimeter: ' mm', millimeters: ' mm', degrees: ' deg', dollars: ' USD', percent: '%', hour: ' h' };

/** One sentence or two: what is wrong, and what would be right. */
export function sayMistake(stop: Stop): string {
    return sayUnit(stop) ?? sayName(stop) ?? sayHeader(stop) ?? saySideBySide(stop) ?? sayEnd(stop) ?? sayOutOfPlace(stop);
}

/** `5 inches`: a word that is a unit elsewhere. It was taken for a modifier that lacks its value. */
function sayUnit({ actual, previous }: Stop): string | undefined {
    const unit = UNITS[previous?.image ?? ''] ?? UNITS[actual.image];
    const word = UNITS[previous?.image ?? ''] ? previous!.image : actual.image;
    return unit && `${word} is no unit here: write the number and ${unit.trim()}, as in 5${unit}.`;
}

function sayName({ actual, previous, rule, expected }: Stop): string | undefined {
    if (!NAMING.has(rule) && expected !== 'ID' || rule === 'Words') return undefined;
    const before = previous?.image ?? '';
    if (['x', 'to', 'per'].includes(actual.image)) return `${actual.image} stands between two values and cannot be a name.`;
    if (before === '.') return 'The name after the point is missing.';
    if (before === 'per') return `per wants what it is counted by, as in per ft or per h.`;
    if (VALUES.has(kindOf(actual)) && /^\d/.test(actual.image) && NAMED.has(before)) return `A name begins with a letter: ${actual.image} cannot name a ${before}.`;
    if (NAMED.has(before)) return `The name after ${before} is missing.`;
    if (before === ',') return 'A name is missing after the comma.';
    if (before === 'use') return 'use wants the names that are taken from that file.';
    return undefined;
}

function sayHeader({ expected, actual, previous, rule }: Stop): string | undefined {
    if (rule === 'Use' || rule === 'UsedName') {
        if (expected === 'STRING') return 'from wants the path of a file in quotes: from "./yard.coffer" use its names.';
        if (expected === 'use') return 'The word use is missing: from "./yard.coffer" use its names.';
    }
    if (rule === 'Edition') return 'edition wants its number: edition 1.';
    if (rule === 'Job' && expected === 'STRING') return 'A job wants its name in quotes: job "Number 7" { ... }.';
    const header = HEADERS[rule];
    if (header && expected === '{' && isEnd(actual)) return `A { is missing: what belongs to a ${header} stands between { and }.`;
    if (rule === 'Let' && expected === '=') return 'let wants = and a value: let reveal = 3/16".';
    if (rule === 'Param' && expected === ':') return `A parameter wants its kind: ${previous?.image ?? 'groove'}: Length.`;
    if (expected === ')') return isEnd(actual) || kindOf(actual) === '{' ? 'A ) is missing.' : between(previous, actual) ?? `A ) or a comma is missing before ${shown(actual)}.`;
    return undefined;
}

/** Two values with nothing between them: mostly a mark or a comma was forgotten. */
function saySideBySide({ actual, previous }: Stop): string | undefined {
    return between(previous, actual);
}

function between(previous: Token | undefined, actual: Token): string | undefined {
    if (!previous) return undefined;
    const before = kindOf(previous), after = kindOf(actual);
    if (!VALUES.has(before) && previous.image !== ')' || !VALUES.has(after)) return undefined;
    const left = plainValue(previous.image), right = plainValue(actual.image);
    if (before === 'LENGTH' && left.endsWith("'") && (after === 'NUMBER' || after === 'UNMARKED')) return `The inch mark is missing: ${left} ${right}".`;
    if (after === 'STRING' && (before === 'NUMBER' || before === 'UNMARKED')) return `${left} lacks its inch mark, or a comma is missing. A mark belongs close to its number: ${left}".`;
    if (before === 'NUMBER' && (after === 'LENGTH' || after === 'HASH' || after === 'NOMINAL')) return `Between ${left} and ${right} something is missing: ${left} x ${right} for so many of that size, or a comma.`;
    return `A comma is missing between ${left} and ${right}.`;
}

/** The line, the block or the file ends where something is still wanted. */
function sayEnd({ actual, previous, rule }: Stop): string | undefined {
    if (!isEnd(actual)) return undefined;
    if (!previous) return 'Something is missing here.';
    const before = previous.image;
    if (before === ',') return 'A value is missing after the comma.';
    if (before === '(') return 'A value and a ) are missing after the (.';
    if (before === '=') return 'A value is missing after the =.';
    if (before === ':' && rule.startsWith('Type')) return 'The kind of value is missing after the colon, as in groove: Length.';
    if (before === ':') return 'A value is missing after the colon.';
    if (before === 'use') return 'use wants the names that are taken from that file.';
    if (before === 'require') return 'require wants what must hold, as in require groove <= 3/8".';
    return `A value is missing after ${shown(previous)}.`;
}

function sayOutOfPlace({ actual, previous, rule }: Stop): string {
    const kind = kindOf(actual), before = previous?.image ?? '';
    if (kind === '=' && isWord(previous)) return `No = here: a property is followed at once by its value, as in ${before} and then what it is.`;
    if (kind === ':' && isWord(previous)) return `No : here: a property is followed at once by its value, as in ${before} and then what it is.`;
    if (kind === '{') return `A value is missing before the {${isWord(previous) ? ` (after ${before})` : ''}.`;
    if (kind === '}') return 'This } closes nothing: there is no { for it.';
    if (kind === ')' && (before === ',' || OPERATORS.has(before))) return `A value is missing between ${shown(previous!)} and ).`;
    if (kind === ')') return 'One ) too many: there is no ( for it.';
    if (kind === '?' && rule !== 'PropertyDecl') return 'A question mark has no meaning here.';
    if (kind === ',' || OPERATORS.has(kind) || kind === 'per' || kind === '.') {
        return previous ? `A value is missing between ${shown(previous)} and ${shown(actual)}.` : `A value is missing before ${shown(actual)}.`;
    }
    return previous && !isEnd(previous) ? `${shown(actual)} cannot stand after ${shown(previous)}.` : `${shown(actual)} cannot stand here.`;
}

function isEnd(token: Token): boolean {
    return ['EOL', 'EOF', '}'].includes(kindOf(token));
}

function isWord(token: Token | undefined): boolean {
    return token !== undefined && /^[A-Za-z_]/.test(token.image);
}

function kindOf(token: Token): string {
    return token.tokenType.name;
}

function shown(token: Token): string {
    if (token.image === ',') return 'the comma';
    if (token.image === '.') return 'the point';
    return token.image.length > 40 ? `${token.image.slice(0, 40)}…` : token.image;
}
