/**
 * Names of what types, evaluation and reading find, with a line on each. They are no rules of the trade: they say that
 * something in the text cannot be understood as it is written.
 */
export const LANGUAGE_RULES = {
    'wrong-type': 'Something stands where another kind of thing is wanted: a count where a length is.',
    'decimal-comma': 'A decimal is written with a comma; it takes a point: 6.40 m.',
    'mark-missing': 'A figure such as 5 1/2 lacks its inch mark.',
    'cannot-add': 'Two unlike things are added, taken off or given as a tolerance: a length and a count.',
    'cannot-compare': 'Two unlike things are compared, or make up a range.',
    'cannot-multiply': 'Something that is no quantity is multiplied or divided.',
    'mixed-currency': 'Two currencies meet, and no rate of exchange is known.',
    'no-such-argument': 'An argument is given that is not asked for.',
    'argument-missing': 'A profile is used without an argument it has no default for.',
    'value-missing': 'A property is named without its value, or without enough of them.',
    'too-many-values': 'A property is given more values than it takes.',
    'not-said': 'A block lacks something that it cannot do without.',
    'said-twice': 'One thing is said twice in a block.',
    'no-block-here': 'A block stands behind something that takes none, or is missing where one is wanted.',
    'unknown-wall': 'Something is said to lie along a wall that the room has not.',
    'no-such-wall': 'A wall has nearly the name of a side of the room.',
    'divided-by-zero': 'Something is divided by zero.',
    'wrong-unit': 'A rate is per something that it is not reckoned by: a corner per coffer, screws per board.',
    'out-of-range': 'A size that no job has: negative or zero where there must be something, or too large.',
    'likely-slip': 'A figure that is read as it stands, and that hardly any job has: most likely the pen slipped.',
    'no-effect': 'Something is said that changes nothing beside what else is said: an overhang of a bottom that lies between the sides.',
    'not-whole': 'A count is not a whole number.',
    'range-upside-down': 'The least of a range is more than its most.',
    'goes-round-in-a-ring': 'A value, a stock or a profile depends on itself.',
    'no-dressed-size': 'No published table has a dressed size for a nominal size.',
    'no-nominal-size': 'A price per board foot, of a stock whose nominal size is not said.',
    'not-computed-yet': 'Understood, and not computed yet.',
    'allow-without-reason': 'A finding is allowed without saying why.',
} as const satisfies Readonly<Record<string, string>>;

export type LanguageRule = keyof typeof LANGUAGE_RULES;
