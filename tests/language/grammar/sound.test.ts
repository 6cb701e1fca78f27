import { EmptyFileSystem } from 'langium';
import { expect, test } from 'vitest';
import { CofferLanguageMetaData } from '../../../src/language/generated/module.ts';
import { createCofferServices } from '../../../src/language/services.ts';

/** What is shipped trusts its grammar and starts the sooner. Here the parser looks for rules that are ambiguous, empty or go round in circles. */
test('the parser finds nothing wrong with its grammar', () => {
    expect(CofferLanguageMetaData.mode).toBe('production');
    const { coffer } = createCofferServices(EmptyFileSystem, { coffer: { LanguageMetaData: () => ({ ...CofferLanguageMetaData, mode: 'development' }) } });
    const { parserErrors, lexerErrors } = coffer.parser.LangiumParser.parse('edition 1\nstock pine { size 1x6 }\n');
    expect([...parserErrors, ...lexerErrors]).toEqual([]);
});
