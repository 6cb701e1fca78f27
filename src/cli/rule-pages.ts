import type { Severity } from '../findings/finding.ts';
import { LANGUAGE_RULES } from '../language/types/rules.ts';
import { RULES } from '../rules/index.ts';
import type { Rule } from '../rules/rule.ts';

/** A finding's page: a rule of the trade with its explanation and examples, or one of the language with a line. */
export interface RulePage { readonly name: string; readonly title: string; readonly severity: Severity; readonly explanation?: string; readonly rule?: Rule }

/** What reading a text, its names and its imports can find; types and values have theirs in the language. */
const READING: Readonly<Record<string, string>> = {
    'syntax': 'A line cannot be read as it is written.',
    'nothing-starts-with': 'A line begins with a word that begins nothing here.',
    'not-here': 'Something stands where it has no place.',
    'unknown-name': 'A word that nothing here is called by.',
    'unknown-property': 'A block has no property of that name.',
    'unknown-modifier': 'What follows a value is none of the words that may follow it.',
    'unknown-parameter': 'A profile has no parameter of that name.',
    'unknown-unit': 'A word after `per` that is no unit.',
    'unknown-type': 'A type that there is not.',
    'declared-twice': 'One name is given to two things.',
    'two-jobs': 'A folder has two jobs, and nobody could say which holds.',
    'missing-import': 'A `from` line names a file that is not there.',
    'name-not-exported': 'The file is there and declares nothing of that name.',
    'imported-twice': 'A name comes in twice.',
    'import-cycle': 'Files import each other in a ring.',
    'import-outside-workspace': 'A `from` line leads out of the folder that is open.',
    'misplaced-import': 'A `from` line stands below what it is for.',
    'misplaced-edition': 'The edition does not stand first.',
    'unknown-edition': 'An edition of the language that this program does not know.',
    'internal-error': 'A mistake in this program, not in your files.',
};
const HINTS: readonly string[] = ['not-computed-yet'];

/** Every page, by name. */
export const PAGES: readonly RulePage[] = [
    ...RULES.map((rule): RulePage => ({ name: rule.name, title: rule.title, severity: rule.severity, explanation: rule.explanation, rule })),
    ...Object.entries({ ...READING, ...LANGUAGE_RULES }).map(([name, title]): RulePage => ({ name, title, severity: HINTS.includes(name) ? 'hint' : 'error' })),
].sort((a, b) => (a.name < b.name ? -1 : 1));
