/** Control characters, half characters, and what is no character at all: no place shows them, and a terminal obeys some. */
const NO_LETTER = /[\p{Cc}\p{Surrogate}\p{Noncharacter_Code_Point}]/gu;
/** What nobody sees; some of it turns the reading direction round for the words after it. */
const UNSEEN = /[\u00ad\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e0fff}]/gu;

/**
 * Somebody's text as it may stand anywhere, on one line. Line breaks and tabs become spaces; what is no letter and what is
 * invisible goes; a pile of accents keeps its first three. Everything else stays as it was typed.
 */
export function cleanText(words: string): string {
    return withoutUnseen(words.replace(/[\s\u0085]+/gu, ' ')).replace(/(\p{Mark}{3})\p{Mark}+/gu, '$1');
}

/** The same of a line that has been laid out already: its spaces stay. */
export function cleanLine(line: string): string {
    return withoutUnseen(line.replace(/[\t-\r\u0085\u2028\u2029]+/g, ' '));
}

function withoutUnseen(words: string): string {
    return words.replace(NO_LETTER, '').replace(UNSEEN, '');
}
