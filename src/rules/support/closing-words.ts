import type { Fix, TextChange } from '../../findings/finding.ts';
import type { Direction, Room } from '../../job/model.ts';
import { grouped } from '../../plain/groups.ts';
import { counted, listed } from '../../plain/words.ts';
import type { Turned } from '../../putup/closing/best-through.ts';
import type { Piece } from '../../takeoff/model.ts';

/** Bottoms by their lines: `line A, bays 2 and 3`, `line 2`, `the half beam along the north wall`. */
export function bottomsNamed(pieces: readonly Piece[]): string {
    return listed([...grouped(pieces, ({ line, on }) => line ?? on).values()].map(own => {
        const { line, on } = own[0]!, bays = own.flatMap(({ bay }) => bay ?? []);
        if (line === null) return `the half beam along the ${on} wall`;
        return bays.length === 0 ? `line ${line}` : `line ${line}, ${bays.length === 1 ? 'bay' : 'bays'} ${listed(bays.map(bay => `${bay}`))}`;
    }));
}

/** `line A through at A2 and A3, line 1 at B1`. */
export function turnedWords(turned: readonly Turned[]): string {
    return listed([...grouped(turned, ({ through }) => through)].map(([line, own], i) => `line ${line}${i === 0 ? ' through' : ''} at ${listed(own.map(({ crossing }) => crossing))}`));
}

/**
 * What the text says then: crossings that are said otherwise, and a line more for each of the rest, at the end of the room. Undefined where
 * that cannot be written.
 */
export function turning(turned: readonly Turned[], { at, body }: Room): TextChange[] | undefined {
    const said = turned.filter(({ spec }) => spec), added = turned.filter(({ spec }) => !spec);
    const replaced = said.map(({ spec, through }): TextChange | undefined => spec!.through?.said && !spec!.through.via?.length
        ? { uri: spec!.through.at.uri, range: spec!.through.at.range, text: through } : undefined);
    if (replaced.includes(undefined) || added.length > 0 && (!body || body.uri !== at.uri)) return undefined;
    if (added.length === 0) return replaced as TextChange[];
    const { uri, range: { end } } = body!, alone = end.character === 1 && body!.range.start.line < end.line;
    const lines = added.map(({ crossing, through }) => `  crossing ${crossing} { through ${through} }\n`).join('');
    const brace = { line: end.line, character: end.character - 1 };
    return [...replaced as TextChange[], { uri, range: { start: brace, end: brace }, text: alone ? lines : `\n${lines}` }];
}

/** What the title of a fix begins with that turns crossings, and of one that turns the room. */
export const titleOfTurn = (turned: readonly Turned[]): string => `Run ${turnedWords(turned)}`;
export const titleOfOtherWay = (through: Direction): string => `Run bottoms through ${through}`;

/** How many remain, in a title. */
export function remaining(count: number): string {
    return count === 0 ? 'no closing piece' : counted(count, 'closing piece');
}

export function fixOf(title: string, edits: readonly (readonly TextChange[] | undefined)[], preferred: boolean): Fix[] {
    const all = edits.flatMap(each => each ?? []);
    return edits.includes(undefined) ? [] : [{ title, edits: all, ...preferred && { preferred } }];
}
