import type { Published } from './published.ts';

/** A currency that prices can be in. */
interface Currency extends Published { readonly name: string }

const currency = (name: string): Currency => ({ name, source: 'ISO 4217:2015, list one', mark: 'from memory' });

/** By their three letters; the lexer knows the same. */
export const CURRENCIES: Readonly<Record<string, Currency>> = {
    USD: currency('US Dollar'),
    CAD: currency('Canadian Dollar'),
    EUR: currency('Euro'),
    GBP: currency('Pound Sterling'),
    AUD: currency('Australian Dollar'),
    NZD: currency('New Zealand Dollar'),
    CHF: currency('Swiss Franc'),
    SEK: currency('Swedish Krona'),
    NOK: currency('Norwegian Krone'),
    DKK: currency('Danish Krone'),
};
