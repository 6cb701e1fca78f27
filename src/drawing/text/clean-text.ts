/**
 * Text from a job as it may stand on a sheet, on one line. Line breaks and tabs become spaces; what cannot be written in XML
 * (control characters, half characters), what turns the reading direction round for the words after it, and what is
 * invisible goes; a pile of accents keeps its first three. Everything else stays as it was typed.
 */
export function cleanText(words: string): string {
    return words
        .replace(/[\s\u0085]+/gu, ' ')
        .replace(/[\p{Cc}\p{Surrogate}\p{Noncharacter_Code_Point}]/gu, '')
        .replace(/[\u00ad\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e0fff}]/gu, '')
        .replace(/(\p{Mark}{3})\p{Mark}+/gu, '$1');
}
