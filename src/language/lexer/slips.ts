import { plainValue } from './pasted.ts';
import { isClosedText } from './quoted.ts';
import { shown } from './shown.ts';
import type { Token } from './token.ts';

/** Something that is read as it is meant, and yet has to be put right. */
interface Slip {
    readonly token: string;
    readonly wrong: RegExp | ((image: string) => boolean);
    readonly says: (image: string) => string;
    /** True where the rest of the line cannot suffer from it. */
    readonly harmless: boolean;
}

const SLIPS: readonly Slip[] = [
    { token: 'LENGTH', wrong: /[⅐-⅚↉]/, harmless: true, says: image => `No tape has a mark for ${glyphOf(image)}. Write ${shown(plainValue(image))} if that is what you mean.` },
    { token: 'UNMARKED', wrong: /[⅐-⅚↉]/, harmless: true, says: image => `No tape has a mark for ${glyphOf(image)}. Write ${shown(`${plainValue(image)}"`)} if that is what you mean.` },
    { token: 'LENGTH', wrong: /["″”“]["″”“'′’]|['′’]{3}/, harmless: true, says: image => `One mark too many: write ${shown(plainValue(image))}.` },
    { token: 'LENGTH', wrong: /[ \t\u00a0\u2000-\u200a\u202f]["″”“'′’ʹ]/, harmless: true, says: image => `Put the mark right after its number: write ${shown(plainValue(image))}.` },
    { token: 'LENGTH', wrong: /(?:[\/\u2044]\d+|[¼-¾⅐-⅞])[ \t\u00a0]*(?:['′’ʹ](?!['′’])|ft)/, harmless: true, says: image => `Feet take no fraction: write ${shown(plainValue(image))} as feet and inches, such as \`6' 6"\` for six and a half feet.` },
    { token: 'STRING', wrong: image => !isClosedText(image), harmless: false, says: () => 'This text is not closed: put a `"` at its end. (A quote inside a text is written `\\"`.)' },
    { token: 'ML_COMMENT', wrong: image => image.length < 4 || !image.endsWith('*/'), harmless: true, says: () => 'This comment is not closed: put `*/` at its end. Until then it ends with its line.' },
];

const BY_TOKEN = new Map<string, readonly Slip[]>();
for (const slip of SLIPS) BY_TOKEN.set(slip.token, [...BY_TOKEN.get(slip.token) ?? [], slip]);

/** What is wrong with a token, if anything. */
export function slipOf(token: Token): { says: string, harmless: boolean } | undefined {
    const slip = BY_TOKEN.get(token.tokenType.name)?.find(({ wrong }) => typeof wrong === 'function' ? wrong(token.image) : wrong.test(token.image));
    return slip && { says: slip.says(token.image), harmless: slip.harmless };
}

export const GLUED = 'A text ends at its second quote. A quote inside a text is written `\\"`.';

/** `"the "big" owners"`: a text with a word right before or behind it was meant to be one text. */
export function isGluedText(token: Token, before: Token | undefined, behind: Token | undefined): boolean {
    if (token.tokenType.name !== 'STRING') return false;
    return before?.endOffset === token.startOffset - 1 && /[\w"”]$/.test(before.image) || behind?.startOffset === token.endOffset! + 1 && /^[\w"“]/.test(behind.image);
}

function glyphOf(image: string): string {
    return /[⅐-⅚↉]/.exec(image)?.[0] ?? image;
}
