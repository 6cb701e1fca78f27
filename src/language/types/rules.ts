/**
 * Names of what types, evaluation and reading find, with a line on each. They are no rules of the trade: they say that
 * something in the text cannot be understood as it is written.
 */
export const LANGUAGE_RULES = {
    'wrong-type': 'The wrong kind of value: a count in the place of a length.',
    'decimal-comma': 'A decimal is written with a comma; it takes a point: 6.40 m.',
    'mark-missing': 'A figure such as 5 1/2 has no inch mark.',
    'cannot-add': 'Two unlike things are added, subtracted or given as a tolerance: a length and a count.',
    'cannot-compare': 'Two unlike things are compared, or make up a range.',
    'cannot-multiply': 'Something that is not a quantity is multiplied or divided.',
    'mixed-currency': 'Two currencies meet, and no exchange rate is known.',
    'no-such-argument': 'An argument is given that is not asked for.',
    'argument-missing': 'A profile is used without an argument it has no default for.',
    'value-missing': 'A property is named without its value, or without enough of them.',
    'too-many-values': 'A property is given more values than it takes.',
    'not-said': 'A block is missing something that it needs.',
    'said-twice': 'One thing is given twice in a block.',
    'no-block-here': 'A block after something that takes none, or none where one is needed.',
    'unknown-wall': 'Something is placed along a wall that the room does not have.',
    'no-such-wall': 'A wall has nearly the name of a side of the room.',
    'divided-by-zero': 'Something is divided by zero.',
    'wrong-unit': 'A rate is per the wrong thing: a corner per coffer, screws per board.',
    'out-of-range': 'A size that no job has: negative or zero where there must be something, or too large.',
    'likely-slip': 'A figure that hardly any job has, most likely a slip. It is used as written.',
    'no-effect': 'Something that changes nothing beside what else is written: an overhang on a bottom that goes between the sides.',
    'no-such-date': 'A date that is on no calendar.',
    'not-whole': 'A count is not a whole number.',
    'range-upside-down': 'The least of a range is more than its most.',
    'goes-round-in-a-ring': 'A value, a stock or a profile depends on itself.',
    'readings-unread': 'A survey names a file of readings that is not there, or rows or columns of it that cannot be read.',
    'no-dressed-size': 'No published table has a dressed size for a nominal size.',
    'no-nominal-size': 'A price per board foot, for a stock without a nominal size.',
    'not-computed-yet': 'Understood, and not computed yet.',
    'allow-without-reason': 'A finding is allowed without a reason.',
} as const satisfies Readonly<Record<string, string>>;

export type LanguageRule = keyof typeof LANGUAGE_RULES;
