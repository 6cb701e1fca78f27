import { COUNT, DATE, GAUGE, LENGTH, NAME, NUMBER_SIZE, SIZE, TEXT, type Dimensions, type Quantity, type Type } from './type.ts';
import { listed } from '../../plain/words.ts';

/** What something is, in the trade's words: "a length", "a price per length", "a stock", "a gauge x a length". */
export function inWords(type: Type | undefined): string {
    if (!type) return 'something unknown';
    switch (type.is) {
        case 'many': return inWords(type.of);
        case 'pair': return `${inWords(type.first)} x ${inWords(type.second)}`;
        case 'range': return `${inWords(type.first)} to ${inWords(type.second)}`;
        case 'atom': return type.words ? wordOf(type.name) : ATOMS[type.name] ?? `a ${spaced(type.name)}`;
        case 'quantity': return quantityInWords(type);
    }
}

/** What is wanted, with an example where the name alone would not tell how it is written. */
export function wantedInWords(type: Type | undefined): string {
    if (!type) return 'something else';
    switch (type.is) {
        case 'many': return wantedInWords(type.of);
        case 'atom': {
            if (!type.words) return EXAMPLES.has(type) ? `${inWords(type)} such as ${EXAMPLES.get(type)}` : inWords(type);
            return type.words.length <= 6 ? listed(type.words, 'or') : `${wordOf(type.name)} such as ${type.words[0]}`;
        }
        case 'pair': case 'range': {
            if (type.is === 'range' && type.first === LENGTH && type.second === LENGTH) return `${inWords(type)}, such as 0" to 1/32"`;
            const example = [exampleOf(type.first), exampleOf(type.second)];
            const shown = example.every(one => one !== undefined) ? `, such as ${example.join(type.is === 'range' ? ' to ' : ' x ')}` : '';
            return `${inWords(type)}${shown}`;
        }
        case 'quantity': {
            const { length, time, money } = type.dimensions;
            if (type.flavor === 'lumber') return `${inWords(type)} such as 2.70 USD per ft, per board foot such as 6.40 USD per board-ft, or a board such as 27.60 USD per board`;
            if (money === 1 && length === -1 && time === 0) return `${inWords(type)} such as 2.70 USD per ft`;
            if (money === 1 && time === -1 && length === 0) return `${inWords(type)} such as 65 USD per h`;
            if (time === 1 && length === -1) return `${inWords(type)} such as 5 min per ft`;
            return inWords(type);
        }
    }
}

/** `shadow-box` and `on-hand` as they are written, between backquotes. */
export function quoted(name: string | undefined): string {
    return `\`${name ?? '?'}\``;
}

const EXAMPLES = new Map<Type, string>([
    [SIZE, '1x6'], [GAUGE, '18 ga'], [NUMBER_SIZE, '#8'], [DATE, '2026-03-02'], [TEXT, '"text"'], [NAME, '"fence A"'],
]);
function exampleOf(type: Type | undefined): string | undefined {
    if (!type) return undefined;
    if (EXAMPLES.has(type)) return EXAMPLES.get(type);
    if (type.is === 'atom') return type.words?.[0];
    if (type === COUNT) return '2';
    return type === LENGTH ? '1 1/4"' : undefined;
}

const ATOMS: Readonly<Record<string, string>> = {
    Text: 'a text in quotes', Name: 'a name', Size: 'a nominal size', Gauge: 'a gauge', NumberSize: 'a size number', Date: 'a date', Condition: 'a comparison',
    BeamLine: 'a line', Job: 'a job',
};
const WORD_LISTS: Readonly<Record<string, string>> = {
    Species: 'a species', Edge: 'an edge', Side: 'a side', Heading: 'a heading', LayingUpright: 'how lines lie', LayingLevel: 'how lines lie', Through: 'a direction', Corner: 'a corner of the room', Running: 'a direction', FixtureKind: 'a kind of fixture', CoveringKind: 'a covering',
};
function wordOf(name: string): string {
    return WORD_LISTS[name] ?? `a word for ${spaced(name)}`;
}
/** `TrimCorners` as "trim corners". */
function spaced(name: string): string {
    return name.replace(/(?<=[a-z])(?=[A-Z])/g, ' ').toLowerCase();
}

function quantityInWords(type: Quantity): string {
    const { length, money } = type.dimensions;
    const others = dimensionsInWords(type.dimensions);
    if (others === '') return FLAVORS[type.flavor];
    if (money === 1 && length === 0 && others === 'money') return type.currency ? `money (${type.currency})` : 'money';
    return others;
}
const FLAVORS: Readonly<Record<Quantity['flavor'], string>> = { plain: 'a number', lumber: 'a number', each: 'a number', count: 'a count', ratio: 'a percentage', percent: 'a percentage' };

const KNOWN: Readonly<Record<string, string>> = {
    'length': 'a length', 'length length': 'an area', 'length length length': 'a volume', 'mass': 'a weight', 'time': 'a time', 'angle': 'an angle',
    'money': 'money', 'money per length': 'a price per length', 'money per length length': 'a price per area', 'money per time': 'a price per time',
    'money per length length length': 'a price per volume',
};
function dimensionsInWords(dimensions: Dimensions): string {
    const names = ['money', 'length', 'mass', 'time', 'angle'] as const;
    const above = names.flatMap(name => Array<string>(Math.max(0, Math.min(4, dimensions[name]))).fill(name));
    const below = names.flatMap(name => Array<string>(Math.max(0, Math.min(4, -dimensions[name]))).fill(name));
    const key = [above.join(' '), below.length ? `per ${below.join(' ')}` : ''].filter(part => part !== '').join(' ');
    if (key === '') return '';
    const top = above.length ? KNOWN[above.join(' ')] ?? above.join(' times ') : 'a number';
    return KNOWN[key] ?? (below.length ? `${top} per ${below.join(' per ')}` : top);
}
