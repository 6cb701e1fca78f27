const FRACTIONS: Readonly<Record<string, string>> = {
    '¼': '1/4', '½': '1/2', '¾': '3/4', '⅐': '1/7', '⅑': '1/9', '⅒': '1/10', '⅓': '1/3', '⅔': '2/3', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5',
    '⅘': '4/5', '⅙': '1/6', '⅚': '5/6', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '↉': '0/3',
};

/** Dashes of every width stand for the hyphen and for minus. */
export function plainDashes(text: string): string {
    return text.replace(/[\u2010-\u2013\u2212]/g, '-');
}

/** A number or a length as it is typed on a keyboard, which most values are. */
const TYPED = /^\d+(?:[./]\d+)?(?:[ -]\d+\/\d+)?["']?(?:[ -]\d+(?:[./]\d+)?(?:[ -]\d+\/\d+)?")?$/;

/**
 * A value as it is typed on a keyboard: `5 ½”` is `5 1/2"`, `10’–5”` is `10'-5"`, `5''` is `5"`, `1×6` is `1x6`.
 * Works for every literal of the grammar; what is plain already stays as it is.
 */
export function plainValue(image: string): string {
    return TYPED.test(image) ? image : plainDashes(image)
        .replace(/[ \t\u00a0\u2000-\u200a\u202f]+/g, ' ')
        .replace(/\u2044/g, '/')
        .replace(/×/g, 'x')
        .replace(/[º˚]/g, '°')
        .replace(/(\d?) ?([¼-¾⅐-⅞↉])/g, (_, whole: string, glyph: string) => `${whole}${whole && ' '}${FRACTIONS[glyph] ?? glyph}`)
        .replace(/ ?(?:["″”“]["″”“'′’]*|['′’]{2,}["″”“'′’]*)/g, '"')
        .replace(/ ?['′’ʹ]/g, "'")
        .replace(/(?<!\d)\.(?=\d)/g, '0.');
}
