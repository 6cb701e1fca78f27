import { GrammarAST, GrammarUtils } from 'langium';
import { CofferGrammar } from '../language/generated/grammar.ts';
import { DECLARATIONS, HEADS, LIBRARY_WORDS, NAMED, OPERATORS, ROOM_WORDS } from '../language/grammar-words.ts';
import type { Vocabulary } from '../language/scope/vocabulary.ts';

/** A rule of the colors: what it matches, and what that and its groups are called. */
interface Colored {
    comment?: string; name?: string;
    match?: string; captures?: Names;
    begin?: string; beginCaptures?: Names; end?: string; endCaptures?: Names;
    patterns?: readonly Colored[]; include?: string;
}
type Names = Readonly<Record<string, { readonly name: string }>>;

/** `syntaxes/coffer.tmLanguage.json`: colors before anything is understood. Its words and values are those of the grammar and of the library. */
export function tmLanguage(vocabulary: Vocabulary): string {
    const modifiers = modifiersOf(vocabulary).join('|');
    const repository: Readonly<Record<string, Colored>> = {
        comment: { patterns: [
            { name: scope('comment.block.documentation'), begin: '/\\*\\*(?!/)', end: '\\*/', beginCaptures: names({ 0: 'punctuation.definition.comment.begin' }), endCaptures: names({ 0: 'punctuation.definition.comment.end' }) },
            { name: scope('comment.block'), begin: '/\\*', end: '\\*/', beginCaptures: names({ 0: 'punctuation.definition.comment.begin' }), endCaptures: names({ 0: 'punctuation.definition.comment.end' }) },
            {
                comment: 'a finding silenced, with its reason', name: scope('comment.line.double-slash'), match: '(//)\\s*(allow)\\s+([a-z][\\w-]*)(?=\\s*:).*$',
                captures: names({ 1: 'punctuation.definition.comment', 2: 'keyword.other.allow', 3: 'entity.name.tag.rule' }),
            },
            { name: scope('comment.line.double-slash'), match: '(//).*$', captures: names({ 1: 'punctuation.definition.comment' }) },
        ] },
        import: { patterns: [
            match(`^\\s*(edition)${ENDS}`, { 1: 'keyword.control.edition' }),
            {
                begin: '^\\s*(from)(?=\\s+[\\"“])', beginCaptures: names({ 1: 'keyword.control.import' }), end: '$',
                patterns: [
                    ...include('comment', 'string'), { name: scope('keyword.control.import'), match: `${BEGINS}(?:use|as)${ENDS}` },
                    { name: scope('entity.name.type'), match: NAME }, { name: scope('punctuation.separator'), match: ',' },
                ],
            },
        ] },
        declaration: { patterns: [
            {
                comment: 'the head of a profile, with its parameters', begin: `^(\\s*)(profile)\\s+(${NAME})`, beginCaptures: names({ 2: 'keyword.declaration', 3: 'entity.name.type' }),
                end: `(?=\\{)|(?=^\\s*\\})|(?=^(?:${DECLARATIONS.join('|')})${ENDS})`,
                patterns: [
                    ...include('comment'), match(`${BEGINS}(like)\\s+(${NAME})`, { 1: 'keyword.declaration', 2: 'entity.other.inherited-class' }), ...include('parameter', 'value'),
                ],
            },
            match(`^\\s*(let)\\s+(${NAME})(?:(\\s*:)\\s*((?:many\\s+)?[A-Z]\\w*))?`, { 1: 'keyword.declaration', 2: 'variable.other.constant', 3: 'punctuation.separator', 4: 'support.type' }),
            match(`^(${HEADS.filter(word => NAMED.has(word) && word !== 'profile').join('|')})\\s+(${NAME})`, { 1: 'keyword.declaration', 2: 'entity.name.type' }),
            match(`^(${HEADS.filter(word => !NAMED.has(word)).join('|')})(?=\\s*[\\"“{])`, { 1: 'keyword.declaration' }),
            match(`^\\s*(${LIBRARY_WORDS.join('|')})\\s+(${NAME})(?:\\s+(is|of)\\s+(${NAME}))?`, { 1: 'keyword.declaration', 2: 'entity.name.type', 3: 'keyword.declaration', 4: 'entity.other.inherited-class' }),
            match(`${STATEMENT}(let)\\s+(${NAME})`, { 1: 'keyword.declaration', 2: 'variable.other.constant' }),
            match(`${STATEMENT}(require)${ENDS}`, { 1: 'keyword.control.require' }),
            match(`${STATEMENT}(${[...ROOM_WORDS].join('|')})\\s+(${NAME}|\\d+)`, { 1: 'keyword.other', 2: 'entity.name.tag' }),
        ] },
        parameter: { patterns: [match(`(${NAME})\\s*(:)(?:\\s*((?:many\\s+)?[A-Z]\\w*))?`, { 1: 'variable.parameter', 2: 'punctuation.separator', 3: 'support.type' })] },
        property: {
            comment: 'the first word of a statement, with its path', match: `${STATEMENT}(?!(?:${LETTERED_OPERATORS})${ENDS})(${NAME})((?:\\.${NAME})*)(\\?)?`,
            captures: names({ 1: 'support.type.property-name', 2: 'support.type.property-name', 3: 'keyword.operator.optional' }),
        },
        value: { patterns: include('comment', 'number', 'string', 'operator', 'parameter', 'word', 'punctuation') },
        number: {
            comment: 'before strings: the inch mark is a double quote',
            patterns: [
                number('date', 'DATE'), number('length', 'LENGTH'), number('size', 'NOMINAL'), number('money', 'MONEY'), number('quantity', 'TIME', 'ANGLE', 'PERCENT', 'GAUGE'),
                { name: scope('constant.numeric.number-size'), match: token('HASH') }, number('unmarked', 'UNMARKED'),
                { name: scope('constant.numeric'), match: `(?<![A-Za-wyz_.])${token('NUMBER')}` },
            ],
        },
        string: { patterns: [
            {
                name: scope('string.quoted.double'), begin: '"', end: '"|$', beginCaptures: names({ 0: 'punctuation.definition.string.begin' }), endCaptures: names({ 0: 'punctuation.definition.string.end' }),
                patterns: [{ name: scope('constant.character.escape'), match: '\\\\.' }],
            },
            { name: scope('string.quoted.double'), begin: '“', end: '[”"]|$', beginCaptures: names({ 0: 'punctuation.definition.string.begin' }), endCaptures: names({ 0: 'punctuation.definition.string.end' }) },
        ] },
        operator: { patterns: [
            { name: scope('keyword.operator.word'), match: `${BEGINS}(?:${LETTERED_OPERATORS})${ENDS}|×|(?<=[\\d\\"'′″’”“)m])x(?=[\\d#.])` },
            { name: scope('keyword.operator'), match: `±|\\+/?${DASH}|<=|>=|[<>=*/+?]|${DASH}` },
        ] },
        word: { patterns: [
            {
                comment: 'a modifier: a word with a value right behind it, or one of the library with another word behind it', name: scope('keyword.other.modifier'),
                match: `${BEGINS}(?!(?:${LETTERED_OPERATORS})${ENDS})${NAME}(?=\\s+[\\d#$.(\\"“])|(?<=\\s)(?:${modifiers})(?=\\s+\\w)`,
            },
            { name: scope('support.type'), match: `${BEGINS}[A-Z]\\w*${ENDS}(?=\\s*(?:[={]|x\\s|to\\s|per\\s|$))` },
            { name: scope('entity.name.function'), match: `${NAME}(?=\\()` },
            { name: scope('variable.other'), match: NAME },
        ] },
        punctuation: { patterns: [
            { name: scope('punctuation.section.block'), match: '[{}]' }, { name: scope('punctuation.section.group'), match: '[()]' },
            { name: scope('punctuation.separator'), match: '[,;:]' }, { name: scope('punctuation.accessor'), match: '\\.' },
        ] },
    };
    const language = { name: 'Coffer', scopeName: 'source.coffer', fileTypes: ['coffer'], patterns: include('comment', 'import', 'declaration', 'property', 'value'), repository };
    return `${JSON.stringify(language, undefined, 2)}\n`;
}

const DASH = '[-\\u2010-\\u2013\\u2212]';
const NAME = token('ID');
/** A word ends here, and another begins. */
const ENDS = '(?![\\w-])', BEGINS = '(?<![\\w-])';
/** Where a statement begins: a line, or behind a brace or a semicolon. */
const STATEMENT = '(?:^|(?<=[{;]))\\s*';
const LETTERED_OPERATORS = [...[...OPERATORS].filter(word => /^[a-z]/.test(word)), 'per'].join('|');

/** The pattern of a token of the grammar, with no groups of its own. */
function token(name: string): string {
    const rule = CofferGrammar().rules.filter(GrammarAST.isTerminalRule).find(each => each.name === name)!;
    return GrammarUtils.terminalRegex(rule).source.replace(/\\.|\[(?:\\.|[^\]\\])*\]|\((?!\?)/g, part => (part === '(' ? '(?:' : part));
}

/** Tokens that begin with a digit: not in the middle of a name or of another number. An x may stand before them: `20mmx30mm`. */
function number(kind: string, ...tokens: readonly string[]): Colored {
    return { name: scope(`constant.numeric.${kind}`), match: `(?<![A-Za-wyz_\\d.])(?:${tokens.map(token).join('|')})` };
}

/** Modifiers that may have a word behind them and are told from the words of lists by their names alone. */
function modifiersOf(vocabulary: Vocabulary): string[] {
    const words = new Set([...vocabulary.words.values()].flatMap(list => list.words.map(({ name }) => name)));
    const modifiers = [...vocabulary.kinds.values()].flatMap(({ props }) => props.flatMap(({ mods }) => mods.map(({ name }) => name)));
    return [...new Set(modifiers)].filter(name => !words.has(name)).sort();
}

function scope(name: string): string {
    return `${name}.coffer`;
}

function names(groups: Readonly<Record<number, string>>): Names {
    return Object.fromEntries(Object.entries(groups).map(([group, name]) => [group, { name: scope(name) }]));
}

function match(pattern: string, groups: Readonly<Record<number, string>>): Colored {
    return { match: pattern, captures: names(groups) };
}

function include(...parts: readonly string[]): Colored[] {
    return parts.map(name => ({ include: `#${name}` }));
}
