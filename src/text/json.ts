import type { JsonText } from './fit.ts';

/** What a terminal or an editor that shows the text would obey, hide or turn round. Strings alone can hold it. */
const BY_CODE = /[\u007f-\u009f\u00ad\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufdd0-\ufdef\ufff9-\uffff]|\udb40[\udc00-\udfff]/g;

/** The one way JSON is written here: two spaces, a line end at the end; what cannot be seen by its code. `Shape` is what its published schema is made from. */
export function printJson<Shape>(value: Shape): JsonText {
    const text = JSON.stringify(value, null, 2).replace(BY_CODE, signs => Array.from({ length: signs.length }, (_, i) => `\\u${signs.charCodeAt(i).toString(16).padStart(4, '0')}`).join(''));
    return `${text}\n` as JsonText;
}
