declare const asFileName: unique symbol;
/** Text that may be the name of a file on any system: no folder in it, no word that Windows keeps for itself, not too long. */
export type FileName = string & { readonly [asFileName]: true };

/** Names may have 255 bytes on most disks; what a program puts before and after, and the number of a second one, must fit too. */
const MOST_BYTES = 150;

/** A file's name out of words: letters and digits of any script, in small letters, a hyphen for all else. */
export function fileName(kind: string, words: string, ending: string): FileName {
    return named([kind, words].map(part => part.toLowerCase().normalize('NFC').replace(/[^\p{L}\p{M}\p{N}]+/gu, '-').replace(/^-|-$/g, '')), words, ending);
}

/** The same out of a name of the job's own, which keeps its capitals and underscores. */
export function fileNameOf(name: string, ending: string): FileName {
    return named([name.normalize('NFC').replace(/[^\p{L}\p{M}\p{N}_-]+/gu, '_')], name, ending);
}

/** Another one beside it, told apart by a number and by its ending. */
export function besideName(name: FileName, n: number, ending: string): FileName {
    return `${name.slice(0, name.lastIndexOf('.'))}-${n}.${ending}` as FileName;
}

function named(parts: readonly string[], words: string, ending: string): FileName {
    const stem = parts.filter(part => part !== '').join('-');
    const short = cut(stem);
    // what says nothing, or not all, is told apart by a number of its words, the same on every machine
    const whole = short !== stem || parts.at(-1) === '' ? [short, numberOf(words)].filter(part => part !== '').join('-') : short;
    return `${RESERVED.test(whole) ? `${whole}_` : whole}.${ending}` as FileName;
}

/** Devices, by whatever ending: learn.microsoft.com, "Naming Files, Paths, and Namespaces". */
const RESERVED = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])$/i;

/** The beginning, of whole letters. */
function cut(text: string): string {
    let bytes = 0, end = 0;
    for (const letter of text) {
        bytes += new TextEncoder().encode(letter).length;
        if (bytes > MOST_BYTES) return text.slice(0, end).replace(/-$/, '');
        end += letter.length;
    }
    return text;
}

/** FNV-1a over the code units: short, and good enough to tell a few names apart. */
function numberOf(words: string): string {
    let hash = 0x811c9dc5;
    for (let i = 0; i < words.length; i++) hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193) >>> 0;
    return hash.toString(36);
}
