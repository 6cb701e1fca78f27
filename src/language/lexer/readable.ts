/** A job file has some hundred lines; this is some thousands, and they are still read in about a second. */
const MOST_CHARACTERS = 300_000;
const MOST_WORDS = 60_000;
/** A screen shows some hundred. What looks for a word in a line, or tells a name with every piece, need not wonder how long these may be. */
const MOST_IN_LINE = 10_000;
/** A house has some ten. Each is laid out, and put together dry, which takes some milliseconds. */
const MOST_ROOMS = 200;
/** As many files are checked at once where a command names them; one that takes from more is not written by hand. */
const MOST_IMPORTS = 1000;
/** Of the characters of a text hardly any cannot be seen; of a picture or a drawing most. */
const MOST_UNSEEN = 1 / 50;
const FEW_UNSEEN = 10;
const LINE_END = /\r\n?|\n/g;
const UNSEEN = /[\u0000-\u0008\u000e-\u001f\u007f\ufffd]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Why a file is not read at all: in words, and where in its text that is. */
export interface NotRead { readonly message: string; readonly offset: number; readonly line: number }

/** Undefined where it can be read. */
export function unreadable(text: string): NotRead | undefined {
    if (text.length > MOST_CHARACTERS) {
        return whole(`This file is too long to be a job: ${grouped(text.length)} characters, and ${grouped(MOST_CHARACTERS)} is the limit. Nothing in it is read. Split it into files that use each other.`);
    }
    const unseen = text.match(UNSEEN)?.length ?? 0;
    if (unseen <= Math.max(FEW_UNSEEN, text.length * MOST_UNSEEN)) return longLine(text);
    return whole(/\0[^\0]\0[^\0]\0|[^\0]\0[^\0]\0/.test(text.slice(0, 200))
        ? 'This file is saved as UTF-16. Save it as UTF-8, then it can be read.'
        : 'This file is not a text file. Nothing in it is read.');
}

function longLine(text: string): NotRead | undefined {
    if (text.length <= MOST_IN_LINE) return undefined;
    let offset = 0, line = 1;
    for (const { 0: end, index } of text.matchAll(LINE_END)) {
        if (index - offset > MOST_IN_LINE) return tooLong(index);
        offset = index + end.length;
        line++;
    }
    return text.length - offset > MOST_IN_LINE ? tooLong(text.length) : undefined;

    function tooLong(end: number): NotRead {
        return { offset, line, message: `This line is too long to be of a job: ${grouped(end - offset)} characters, and ${grouped(MOST_IN_LINE)} is the limit. Nothing in this file is read.` };
    }
}

function whole(message: string): NotRead {
    return { message, offset: 0, line: 1 };
}

/** The same for a file that is not long, but of which there is much: each word and each sign is a piece of the tree. */
export function tooManyWords(count: number): NotRead | undefined {
    return count <= MOST_WORDS ? undefined
        : whole(`This file is too long to be a job: ${grouped(count)} words and signs, and ${grouped(MOST_WORDS)} is the limit. Nothing in it is read. Split it into files that use each other.`);
}

/** And for one that holds few words for much work. */
export function tooManyRooms(count: number): NotRead | undefined {
    return count <= MOST_ROOMS ? undefined
        : whole(`This file holds too many rooms to be a job: ${grouped(count)}, and ${MOST_ROOMS} is the limit. Nothing in it is read. Split it into files that use each other.`);
}

/** Each `from` line is a file to be looked for. */
export function tooManyImports(count: number): NotRead | undefined {
    return count <= MOST_IMPORTS ? undefined
        : whole(`This file takes from too many others to be a job: ${grouped(count)} times \`from\`, and ${grouped(MOST_IMPORTS)} is the limit. Nothing in it is read. Split it into files that use each other.`);
}

function grouped(count: number): string {
    return String(count).replace(/\B(?=(\d{3})+$)/g, ' ');
}
