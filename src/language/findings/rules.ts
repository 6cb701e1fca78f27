/**
 * What reading a text, its names and its imports can find, with a line on each. Types and values have theirs in
 * types/rules.ts; none of them are rules of the trade.
 */
export const READING_RULES = {
    'syntax': 'A line cannot be read as it is written.',
    'nothing-starts-with': 'A line begins with a word that cannot begin a line here.',
    'not-here': 'Something is in a place where it does not belong.',
    'unknown-name': 'A name that nothing here has.',
    'unknown-property': 'A block has no property of that name.',
    'unknown-modifier': 'A word after a value that cannot follow it.',
    'unknown-parameter': 'A profile has no parameter of that name.',
    'unknown-unit': 'A word after `per` that is not a unit.',
    'unknown-type': 'A type that does not exist.',
    'declared-twice': 'One name is given to two things.',
    'two-jobs': 'A folder has two jobs, and there is no telling which one counts.',
    'missing-import': 'A `from` line names a file that does not exist.',
    'name-not-exported': 'The file is there, but has nothing of that name.',
    'imported-twice': 'A name is imported twice.',
    'import-cycle': 'Files import each other in a circle.',
    'import-outside-workspace': 'A `from` line leads out of the repository, or of the open folder where there is none.',
    'misplaced-import': 'A `from` line comes below other lines instead of at the top.',
    'misplaced-edition': 'The edition does not come first.',
    'unknown-edition': 'An edition of the language that this program does not know.',
    'internal-error': 'A mistake in this program, not in your files.',
} as const satisfies Readonly<Record<string, string>>;

export type ReadingRule = keyof typeof READING_RULES;
