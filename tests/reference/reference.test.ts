import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { languageReference } from '../../src/language/reference.ts';
import { createCofferServices } from '../../src/language/services.ts';
import { RULES } from '../../src/rules/index.ts';
import { ruleReference } from '../../src/rules/reference.ts';

const STALE = 'stale: run `npm run reference`';

test('the language reference is what the built-in library says', () => {
    expect(readFileSync('src/language/REFERENCE.md', 'utf8'), STALE).toBe(languageReference(createCofferServices().coffer));
});

test('the rule reference is what the rules say', () => {
    expect(readFileSync('src/rules/REFERENCE.md', 'utf8'), STALE).toBe(ruleReference(RULES));
});
