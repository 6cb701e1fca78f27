import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { paneIconFiles } from '../../src/build/pane-icon-files.ts';
import { reportSchemas } from '../../src/build/report-schemas.ts';
import { tmLanguage } from '../../src/build/syntax.ts';
import { languageReference } from '../../src/language/reference.ts';
import { createCofferServices } from '../../src/language/services.ts';
import { RULES } from '../../src/rules/index.ts';
import { ruleReference } from '../../src/rules/reference.ts';

const STALE = 'stale: run `npm run reference`';

test('the language reference is what the built-in library says', () => {
    expect(readFileSync('src/language/REFERENCE.md', 'utf8'), STALE).toBe(languageReference(createCofferServices().coffer));
});

test('the colors know the words of the grammar and of the library', () => {
    expect(readFileSync('syntaxes/coffer.tmLanguage.json', 'utf8'), STALE).toBe(tmLanguage(createCofferServices().coffer.vocabulary));
});

test('the rule reference is what the rules say', () => {
    expect(readFileSync('src/rules/REFERENCE.md', 'utf8'), STALE).toBe(ruleReference(RULES));
});

test('the published JSON schemas are what the types of the reports say', () => {
    const published = readdirSync('src/report/schema').map(file => [file, readFileSync(`src/report/schema/${file}`, 'utf8')]);
    expect(Object.fromEntries(published), STALE).toEqual(Object.fromEntries(reportSchemas()));
});

test('the signs of the panes are those of their switch', () => {
    for (const [file, text] of paneIconFiles()) expect(readFileSync(`syntaxes/icons/${file}`, 'utf8'), STALE).toBe(text);
});
