import { DefaultLexerErrorMessageProvider } from 'langium';
import { shown } from './shown.ts';

const SAYINGS: readonly (readonly [RegExp, (text: string) => string])[] = [
    [/^\p{C}/u, text => `There is an invisible character here (${codeOf(text)}): delete it.`],
    [/^[[\]]/, () => 'Square brackets have no meaning here: `{ }` hold a block, `( )` a part of a value.'],
    [/^['′’‘ʹ]/, () => 'A foot mark needs its number before it, as in `8\'`.'],
    [/^[″”]/, () => 'An inch mark needs its number before it, as in `8"`.'],
    [/^[—―]/, () => 'Write `-` for minus; a dash this long has no meaning here.'],
    [/^[$€£¥]/, text => `Write the amount and then the currency: \`5 ${CURRENCIES[text[0]!] ?? 'USD'}\`.`],
    [/^…/, () => 'Three dots have no meaning here: write out what they stand for.'],
    [/^[#]/, () => 'A `#` needs its number right after it, as in `#8`.'],
    [/^\p{L}/u, text => `Names are written with the letters a to z, digits and hyphens: ${shown(text)} cannot stand in one. A title in quotes can hold it.`],
];
const CURRENCIES: Readonly<Record<string, string>> = { $: 'USD', '€': 'EUR', '£': 'GBP' };

/** What the lexer cannot read, in the reader's words. */
export class CofferLexerMessages extends DefaultLexerErrorMessageProvider {
    override buildUnexpectedCharactersMessage(fullText: string, startOffset: number, length: number): string {
        const text = /^.[^\p{C}]{0,19}/su.exec(fullText.slice(startOffset, startOffset + length))![0];
        const saying = SAYINGS.find(([pattern]) => pattern.test(text));
        return saying ? saying[1](text) : `${shown(text)} has no meaning here.`;
    }
}

function codeOf(text: string): string {
    return `U+${text.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
}
