/** A house that somebody, or a program that went wrong, wrote to make a program stop. */
export interface Hostile { readonly name: string; readonly files: Readonly<Record<string, string>> }

/**
 * Much of everything, as much as is read at all. Each is generated.
 * @param size how many characters a text has, about; `words` of them where it is made of words
 */
export function hostileHouses({ size, words }: { size: number; words: number }): readonly Hostile[] {
    const one = (name: string, text: string): Hostile => ({ name, files: { 'job.coffer': `edition 1\n${text}\n` } });
    /** As often as the characters or the words allow. */
    const much = (unit: string, wordsInUnit = 1): string => unit.repeat(Math.max(1, Math.min(Math.floor(size / unit.length), Math.floor(words / wordsInUnit))));
    const each = (count: number, of: (i: number) => string, between = '\n'): string => Array.from({ length: count }, (_, i) => of(i)).join(between);
    const room = (members: string): string => `room den {\n${members}\n}`;
    const value = (of: string): string => `let a = ${of}`;
    return [
        ...UNREAD.flatMap(([name, sign]) => [
            one(`${name}, in one word`, sign.repeat(size / sign.length)),
            one(`${name}, spaced`, much(`${sign} `)),
            one(`${name}, one to a line`, much(`${sign}\n`, 2)),
            one(`${name}, as values`, much(`let a = ${sign}\n`, 5)),
            one(`${name}, between words`, much(`a${sign}`, 2)),
        ]),
        ...WORDS.flatMap(word => [
            one(`the word ${word}, in one line`, much(`${word} `)),
            one(`the word ${word}, one to a line`, much(`${word}\n`, 2)),
            one(`the word ${word}, without end`, word.repeat(size / word.length)),
            { name: `the word ${word}, in a room`, files: { 'job.coffer': `edition 1\n${room(much(`${word}\n`, 2))}\n` } },
        ]),
        ...[...SIGNS, '({', '(\n', ')\n', '{}\n', '{ a\n', '}\n', 'a {\n', 'a(', '( {', '"\n', '/*', '//', '- ', 'a.', 'a-', '1 x ', '1, ', 'a: ', '= ', '\\', '\r', '\t\n', ' \n'].flatMap(sign => [
            one(`${JSON.stringify(sign)} over and over`, much(sign)),
            one(`${JSON.stringify(sign)} over and over, as a value`, value(much(sign))),
        ]),
        one('one number of very many digits', value(`${'7'.repeat(size)}"`)),
        one('one fraction of very many digits', value(`${'7'.repeat(size / 2)}/${'3'.repeat(size / 2)}"`)),
        one('numbers of a thousand digits', much(`let a${'0'.repeat(3)} = ${'7'.repeat(1000)}.${'7'.repeat(1000)}"\n`, 5)),
        one('digits and dots', much('1.')),
        one('digits and slashes', much('1/')),
        one('digits and spaces', value(much('1 '))),
        one('one text that is not closed', value(`"${'a '.repeat(size / 2)}`)),
        one('quotes in a text', value(`"${'\\"'.repeat(size / 2)}`)),
        one('a comment of stars', `/*${'*'.repeat(size)}`),
        one('comments of lines', much('// a\n', 2)),
        one('comments of blocks', much('/* a */', 1)),
        one('a comment behind each word', much('a // b\n', 3)),
        one('spaces without end', ' '.repeat(size)),
        one('lines without words', '\n'.repeat(Math.min(size, words))),
        one('returns and line ends', '\r\n'.repeat(Math.min(size / 2, words))),
        one('one name without end', `let ${'a'.repeat(size)} = 1"`),
        one('names of many parts', `let ${'a-'.repeat(size / 2)}b = 1"`),
        one('one chain of operators', value(much('1" + ', 2) + '1"')),
        one('signs before a value', value(`${'-'.repeat(words / 2)}1"`)),
        one('parentheses', value('('.repeat(words / 2 - 5) + '1"' + ')'.repeat(words / 2 - 5))),
        one('blocks', room('a {'.repeat(words / 3 - 9) + '}'.repeat(words / 3 - 9))),
        one('blocks in blocks, each a little deeper', each(Math.floor(Math.sqrt(size)), i => `${' '.repeat(i)}a {`)),
        one('blocks deeper and deeper, never closed, after a head', `room den {\n${each(Math.floor(Math.sqrt(size)), i => `${' '.repeat(i)}a`)}`),
        one('heads without blocks', much('room a\n', 3)),
        one('heads whose blocks are lost', much('room a\n  b\n', 5)),
        one('heads of many lines', `profile a(\n${much('  b: Length,\n', 5)}) {\n}`),
        one('heads of many lines, never closed', `profile a(\n${much('  b: Length,\n', 5)}`),
        one('names alone with deeper lines', much('a\n  b 1"\n', 5)),
        one('braces that close nothing, deeper and deeper', each(Math.floor(Math.sqrt(size)), i => `${' '.repeat(i)}}`)),
        one('lines deeper than a brace', `room den {\n  a\n${each(Math.floor(words / 4), () => '    b 1"')}\n  }\n}\n}`),
        one('rooms of one name', much('room den {\n}\n', 6)),
        one('rooms with a name each', each(Math.floor(words / 6), i => `room den-${i} {\n}`)),
        one('rooms with grids', each(Math.floor(words / 36), i => `room den-${i} {\n  wall north 12'\n  wall east 10'\n  grid {\n    coffers-north 3\n    coffers-east 3\n    beams a\n  }\n}`)),
        one('jobs', much('job "House" {\n}\n', 6)),
        one('stocks of one name', much('stock a {\n}\n', 6)),
        one('stocks with a name each', each(Math.floor(words / 6), i => `stock a${i} {\n}`)),
        one('profiles with a name each', each(Math.floor(words / 6), i => `profile a${i} {\n}`)),
        one('profiles like each other', `profile a0 {\n}\n${each(Math.floor(words / 8), i => `profile a${i + 1} like a${i} {\n}`)}`),
        one('profiles like each other, with parameters', `profile a0(g: Length = 1") {\n}\n${each(Math.floor(words / 20), i => `profile a${i + 1}(g: Length = 1") like a${i}(g: g) {\n}`)}`),
        one('profiles in a ring', each(Math.floor(words / 8), i => `profile a${i} like a${(i + 1) % Math.floor(words / 8)} {\n}`)),
        one('parameters', `profile a(${each(Math.floor(words / 7), i => `p${i}: Length = 1"`, ', ')}) {\n}`),
        one('parameters of one name', `profile a(${each(Math.floor(words / 7), () => 'p: Length = 1"', ', ')}) {\n}`),
        one('arguments', `profile a(p: Length = 1") {\n}\nprofile b like a(${each(Math.floor(words / 5), () => 'p: 1"', ', ')}) {\n}`),
        one('values of one name', much('let a = 1"\n', 5)),
        one('values with a name each', each(Math.floor(words / 5), i => `let a${i} = 1"`)),
        one('values of the value before', `let a0 = 1"\n${each(Math.floor(words / 7), i => `let a${i + 1} = a${i} + 1"`)}`),
        one('values of the value after', `${each(Math.floor(words / 5), i => `let a${i} = a${i + 1}`)}\nlet a${Math.floor(words / 5)} = 1"`),
        one('values in a ring', each(Math.floor(words / 5), i => `let a${i} = a${(i + 1) % Math.floor(words / 5)}`)),
        one('values twice the value before', `let a0 = 1"\n${each(Math.floor(words / 7), i => `let a${i + 1} = a${i} * 2`)}`),
        one('values of the square of the value before', `let a0 = 3\n${each(Math.floor(words / 7), i => `let a${i + 1} = a${i} * a${i}`)}`),
        one('unknown names', each(Math.floor(words / 5), i => `let a${i} = nothing-${i}`)),
        one('unknown properties', room(each(Math.floor(words / 3), i => `  nothing-${i} 1"`))),
        one('unknown blocks', room(each(Math.floor(words / 4), i => `  nothing-${i} {\n  }`))),
        one('a property over and over', room(much('  height 8\'\n', 3))),
        one('a block over and over', room(much('  ceiling {\n  }\n', 5))),
        one('walls', room(much('  wall north 12\'\n', 4))),
        one('fixtures of one name', room(much('  fixture a light at 3\', 4\'\n', 8))),
        one('fixtures with a name each', room(each(Math.floor(words / 8), i => `  fixture a${i} light at 3', 4'`))),
        one('values of one property', room(`  a ${much('1", ', 2)}1"`)),
        one('modifiers', room(`  a 1" ${much('of 1" ', 2)}`)),
        one('requires', `profile a {\n${much('  require 1" < 2"\n', 5)}}`),
        one('requires that fail', `profile a {\n${much('  require 2" < 1"\n', 5)}}`),
        one('paths of many names', room(`  ${'a.'.repeat(words / 2)}a 1"`)),
        one('alternates', each(Math.floor(words / 8), i => `alternate a${i} {\n  den.height 8'\n}`)),
        one('alternates of one name', much('alternate a {\n  den.height 8\'\n}\n', 9)),
        one('editions', much('edition 1\n', 3)),
        one('allowances', much('// allow depths-nearly-equal: seen\nlet a = 1"\n', 7)),
        one('allowances of nothing', much('// allow nothing-at-all: seen\n', 2)),
        one('imports of files that are not there', each(Math.floor(words / 5), i => `from "./nothing-${i}.coffer" use a`)),
        one('imports of one file that is not there', much('from "./nothing.coffer" use a\n', 5)),
        one('names of one import', `from "./nothing.coffer" use ${much('a, ', 2)}a`),
        { name: 'imports of one file that is there', files: { 'job.coffer': `edition 1\n${much('from "./yard.coffer" use a\n', 5)}`, 'yard.coffer': 'edition 1\nstock a {\n}\n' } },
        { name: 'names that a file has not', files: { 'job.coffer': `edition 1\nfrom "./yard.coffer" use ${each(Math.floor(words / 2), i => `b${i}`, ', ')}\n`, 'yard.coffer': `edition 1\n${each(Math.floor(words / 5), i => `let a${i} = 1"`)}\n` } },
    ];
}

/** Houses of very many files. */
export function hostileFolders(files: number): readonly Hostile[] {
    const folder = (name: string, of: (i: number) => string): Hostile => ({ name: `${name}, ${files} files`, files: Object.fromEntries(Array.from({ length: files }, (_, i) => [`f${i}.coffer`, `edition 1\n${of(i)}\n`])) });
    return [
        folder('a chain of imports', i => i === files - 1 ? 'stock a {\n}' : `from "./f${i + 1}.coffer" use a`),
        folder('a chain of imports and values', i => i === files - 1 ? 'let a = 1"' : `from "./f${i + 1}.coffer" use a as b\nlet a = b`),
        folder('a chain of imports and profiles', i => i === files - 1 ? 'profile a {\n}' : `from "./f${i + 1}.coffer" use a as b\nprofile a like b {\n}`),
        folder('a ring of imports', i => `from "./f${(i + 1) % files}.coffer" use a\nstock a {\n}`),
        folder('a ring of imports, with chords', i => `from "./f${(i + 1) % files}.coffer" use a\nfrom "./f${(i * 7 + 3) % files}.coffer" use a as b`),
        folder('rings of two files', i => `from "./f${i ^ 1}.coffer" use a\nstock a {\n}`),
        folder('every file imports the last', i => i === files - 1 ? 'stock a {\n}' : `from "./f${files - 1}.coffer" use a`),
        folder('the first file imports all', i => i > 0 ? 'stock a {\n}' : Array.from({ length: files - 1 }, (_, k) => `from "./f${k + 1}.coffer" use a as a${k + 1}`).join('\n')),
        folder('a job in every file', i => `job "House ${i}" {\n}\nroom den-${i} {\n}`),
        folder('rates in every file', () => 'labor {\n}\nbid {\n}'),
        folder('a room of one name in every file', () => 'room den {\n}'),
        folder('a stock of one name in every file', () => 'stock a {\n}'),
        folder('an unknown name in every file', i => `let b = a${i}`),
        folder('a missing import in every file', i => `from "./nothing-${i}.coffer" use a`),
        folder('a mistake in every file', () => 'let = ='),
    ];
}

const UNREAD: readonly (readonly [string, string])[] = [
    ['é', 'é'], ['€', '€'], ['#', '#'], ['@', '@'], ['a foot mark', "'"], ['a long foot mark', '′'], ['an inch mark', '″'], ['%', '%'], ['$', '$'], ['an emoji', '\u{1f600}'], ['a letter of another script', '漢'],
    ['an accent', '\u0301'], ['a sign that turns the line round', '\u202e'], ['a bracket', '['], ['a quote', '"'], ['a backslash', '\\'], ['a tilde', '~'], ['an ampersand', '&'], ['a fraction', '⅓'], ['a dash', '—'],
];
const WORDS = ['alternates', 'room', 'let', 'stock', 'profile', 'job', 'like', 'from', 'use', 'wall', 'require', 'x', 'to', 'per', 'edition', 'grid', 'inches'];
const SIGNS = [';', ',', '.', ':', '=', '(', ')', '{', '}', '+', '-', '*', '/', '<', '>', '?', '±', '!', '|', '^', '`', '0', '00', '.5', '1"', "1'", '1mm', '½', '#8', '$1'];
