import type { Rates } from '../../src/job/rates.ts';
import { Rational } from '../../src/quantity/rational.ts';

/** What a file without `labor` and `bid` in reach has: a day of eight hours and nothing else. */
export const NO_RATES: Rates = {
    labor: { day: { value: new Rational(480), at: { uri: 'builtin:///builtin.coffer', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } }, said: false }, byLength: {}, byCount: {} },
    bid: { allowances: [], supplies: {}, scope: [], exclusions: [], terms: [] },
};
