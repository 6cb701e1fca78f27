import type * as ast from '../../../src/language/generated/ast.ts';
import { expect, test } from 'vitest';
import { declarations } from '../../../src/language/features/completion/declarations.ts';
import { DECLARATIONS, HEADS, LIBRARY_WORDS, NAMED, OPERATORS, ROOM_WORDS } from '../../../src/language/grammar-words.ts';
import { createCofferServices } from '../../../src/language/services.ts';

test('the words of the language are found in its grammar', () => {
    expect(HEADS).toEqual(['stock', 'profile', 'room', 'job', 'labor', 'bid', 'alternate']);
    expect(LIBRARY_WORDS).toEqual(['kind', 'words', 'quantity', 'unit']);
    expect(DECLARATIONS).toEqual([...HEADS, 'let', 'from', 'edition']);
    expect([...ROOM_WORDS]).toEqual(['wall', 'fixture', 'board', 'line', 'crossing']);
    expect([...NAMED].sort()).toEqual(['stock', 'profile', 'room', 'alternate', 'let', ...ROOM_WORDS, ...LIBRARY_WORDS].sort());
    expect([...OPERATORS].filter(word => /[a-z]/.test(word))).toEqual(['x', 'to']);
});

test('completion offers just the declarations that there are', () => {
    const { coffer } = createCofferServices(), file = coffer.parser.LangiumParser.parse('edition 1\n').value as ast.File;
    const around = { stocks: [], profiles: [], taken: new Set<string>() };
    expect(declarations(coffer.vocabulary, file, around).map(({ label }) => label)).toEqual(DECLARATIONS);
});
