/**
 * What reading a text, its names and its imports can find, with a line on each. Types and values have theirs in
 * types/rules.ts; none of them are rules of the trade.
 */
export const READING_RULES = {
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
    'import-outside-workspace': 'A `from` line leads out of the repository, or of the open folder where there is none.',
    'misplaced-import': 'A `from` line stands below what it is for.',
    'misplaced-edition': 'The edition does not stand first.',
    'unknown-edition': 'An edition of the language that this program does not know.',
    'internal-error': 'A mistake in this program, not in your files.',
} as const satisfies Readonly<Record<string, string>>;

export type ReadingRule = keyof typeof READING_RULES;
