import { NAMED, OPERATORS, VALUES } from '../grammar-words.ts';
import { plainValue } from '../lexer/pasted.ts';
import { shown } from '../lexer/shown.ts';
import type { Token } from '../lexer/token.ts';

/** Where the parser stopped: the token it met, the one before, the rule it was in, and what alone it would have taken. */
interface Stop {
    readonly expected: string | undefined;
    readonly actual: Token;
    readonly previous: Token | undefined;
    readonly rule: string;
}

const NAMES = new Set(['Word', 'Key', 'Name', 'UsedName', 'WordDecl']);
/** What each of these wants behind it. */
const WANTS: Readonly<Record<string, string>> = {
    ',': 'A value is missing after the comma.',
    '(': 'A value is missing after the `(`.',
    '=': 'A value is missing after the `=`.',
    per: '`per` needs what it is counted by, as in `per ft` or `per h`.',
    use: '`use` needs the names to take from that file.',
    like: '`like` needs the profile that it is based on.',
    as: '`as` needs the new name.',
    require: '`require` needs what has to be true, as in `require groove <= 3/8"`.',
};
/** Units as they are spoken, and how they are written. */
const UNITS: Readonly<Record<string, string>> = {
    inch: '`5"` or `5 in`', inches: '`5"` or `5 in`', foot: "`8'` or `8 ft`", feet: "`8'` or `8 ft`", millimeter: '`140 mm`', millimeters: '`140 mm`',
    meter: '`1.25 m`', meters: '`1.25 m`', degree: '`30 deg`', degrees: '`30 deg`', dollar: '`5 USD`', dollars: '`5 USD`', percent: '`5%`', minute: '`5 min`',
};

/** One sentence or two: what is wrong, and what would be right. */
export function sayMistake(stop: Stop): string {
    return sayUnit(stop) ?? sayHeader(stop) ?? sayName(stop) ?? saySideBySide(stop) ?? sayUnfinished(stop) ?? sayOutOfPlace(stop);
}

/** `5 inches`: a word that was taken for a modifier without a value. */
function sayUnit({ actual, previous }: Stop): string | undefined {
    const word = [previous?.image ?? '', actual.image].find(image => Object.hasOwn(UNITS, image));
    return word && `${shown(word)} is not a unit here: write ${UNITS[word]}.`;
}

function sayHeader({ expected, actual, previous, rule }: Stop): string | undefined {
    switch (rule) {
        case 'Use': case 'UsedName':
            if (expected === 'STRING') return '`from` needs the path of a file in quotes: `from "./yard.coffer" use` and names.';
            return expected === 'use' ? 'The word `use` is missing: `from "./yard.coffer" use` and names.' : undefined;
        case 'Edition': return '`edition` needs its number: `edition 1`.';
        case 'JobHead': return expected === 'STRING' ? 'A job needs its name in quotes: `job "Number 7" {`.' : undefined;
        case 'Let': return expected === '=' ? '`let` needs `=` and a value: `let reveal = 3/16"`.' : undefined;
        case 'Param': return expected === ':' ? `A parameter needs its kind: ${shown(`${previous?.image ?? 'groove'}: Length`)}.` : undefined;
        case 'Body': return isEnd(actual) ? 'A `{` is missing: what belongs to this stands between `{` and `}`.' : undefined;
        default: return expected === ')' ? sayClosing(actual, previous) : undefined;
    }
}

function sayClosing(actual: Token, previous: Token | undefined): string | undefined {
    if (isEnd(actual) || kindOf(actual) === '{') return 'A `)` is missing.';
    if (kindOf(actual) === ':') return 'A value is missing after the colon.';
    if (isWord(previous) && VALUES.has(kindOf(actual))) return `A colon is missing after ${shown(previous!.image)}: ${shown(`${previous!.image}: ${actual.image}`)}.`;
    return sideBySide(previous, actual) ?? `A \`)\` or a comma is missing before ${named(actual)}.`;
}

function sayName({ actual, previous, rule, expected }: Stop): string | undefined {
    if (!NAMES.has(rule) && expected !== 'ID') return undefined;
    const before = previous?.image ?? '';
    if (['x', 'to', 'per'].includes(actual.image) && before !== '.') return `${shown(actual.image)} stands between two values and cannot be a name.`;
    if (before === '.') return 'The name after the point is missing. (A unit takes no point: `8 ft`.)';
    if (!NAMED.has(before)) return before === ',' ? 'A name is missing after the comma.' : undefined;
    const startsWithDigit = VALUES.has(kindOf(actual)) && kindOf(actual) !== 'LENGTH' && kindOf(actual) !== 'STRING';
    return startsWithDigit ? `A name begins with a letter: ${named(actual)} cannot name a ${before}.` : `The name after ${shown(before)} is missing.`;
}

/** Two values with nothing between them: mostly a mark or a comma was forgotten. */
function saySideBySide({ actual, previous }: Stop): string | undefined {
    return sideBySide(previous, actual);
}

function sideBySide(previous: Token | undefined, actual: Token): string | undefined {
    if (!previous || !VALUES.has(kindOf(previous)) && previous.image !== ')' || !VALUES.has(kindOf(actual))) return undefined;
    const before = kindOf(previous), after = kindOf(actual);
    const left = plainValue(previous.image), right = plainValue(actual.image);
    if (before === 'LENGTH' && left.endsWith("'") && (after === 'NUMBER' || after === 'UNMARKED')) return `The inch mark is missing: ${shown(`${left} ${right}"`)}.`;
    if (after === 'STRING' && (before === 'NUMBER' || before === 'UNMARKED')) return `${shown(left)} has no inch mark, or a comma is missing. A mark goes right after its number: ${shown(`${left}"`)}.`;
    if (before === 'NUMBER' && (after === 'LENGTH' || after === 'HASH' || after === 'NOMINAL')) return `Something is missing between ${shown(left)} and ${shown(right)}: ${shown(`${left} x ${right}`)} for that many of that size, or a comma.`;
    return `A comma is missing between ${shown(left)} and ${shown(right)}, or the word that says what ${shown(right)} is.`;
}

/** The line, the block or the parenthesis ends, or a comma follows, where something is still wanted. */
function sayUnfinished({ actual, previous, rule }: Stop): string | undefined {
    const kind = kindOf(actual);
    const before = previous?.image ?? '';
    if (!isEnd(actual) && ![')', ',', '{'].includes(kind) || !previous) return undefined;
    if (before === ',' && kind === ',') return 'A value is missing between the commas.';
    if (before === ':') return rule.startsWith('Type') || rule === 'Word' ? 'The kind of value is missing after the colon, as in `groove: Length`.' : 'A value is missing after the colon.';
    if (Object.hasOwn(WANTS, before)) return WANTS[before];
    if (isEnd(actual) || OPERATORS.has(before)) return `A value is missing after ${named(previous)}.`;
    return undefined;
}

function sayOutOfPlace({ actual, previous, rule }: Stop): string {
    const kind = kindOf(actual);
    if ((kind === '=' || kind === ':') && isWord(previous)) return `No ${shown(kind)} here: a property is followed directly by its value, as in ${shown("height 8'")}.`;
    if (kind === '{') return `A value is missing before the \`{\`.`;
    if (kind === '}') return 'This `}` closes nothing: there is no `{` for it.';
    if (kind === ')') return 'One `)` too many: there is no `(` for it.';
    if (kind === '?' && rule !== 'PropertyDecl') return 'A question mark has no meaning here.';
    if (VALUES.has(kind) && isWord(previous) && rule !== 'Body') return `A comma is missing between ${named(previous!)} and ${named(actual)}, or a value before ${named(previous!)}.`;
    if (kind === ',' && kindOf(previous ?? actual) === 'NUMBER' && previous!.endOffset === actual.startOffset - 1) return 'A decimal takes a point, not a comma: `6.40 m`.';
    const wantsTwo = kind === ',' || OPERATORS.has(kind) || kind === 'per' || kind === '.';
    if (wantsTwo) return previous ? `A value is missing between ${named(previous)} and ${named(actual)}.` : `A value is missing before ${named(actual)}.`;
    return previous && !isEnd(previous) ? `${named(actual)} cannot stand after ${named(previous)}.` : `${named(actual)} cannot stand here.`;
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

function named({ image }: Token): string {
    if (image === ',') return 'the comma';
    if (image === '.') return 'the point';
    return shown(image);
}
