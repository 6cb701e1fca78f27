/**
 * Where in a text something was said. Lines and characters count from zero, characters in UTF-16 units,
 * as in the Language Server Protocol 3.17, so that no adapter has to convert.
 */
export interface Position { readonly line: number; readonly character: number }
export interface Range { readonly start: Position; readonly end: Position }
export interface Source { readonly uri: string; readonly range: Range }

/** A value together with the words that say it. */
export interface Given<T> {
    readonly value: T;
    /** The words that say it; for a default, its declaration in the built-in library. */
    readonly at: Source;
    /** False where nobody said it and the built-in default stands. */
    readonly said: boolean;
    /** The arguments the value came through (`groove` in `shadow-box(groove: 1/4")`), innermost first. */
    readonly via?: readonly Source[];
}

export function sameSource(a: Source, b: Source): boolean {
    return a.uri === b.uri && compareRanges(a.range, b.range) === 0;
}

/** Tells apart where words begin, as a key. */
export function placeKey({ uri, range: { start } }: Source): string {
    return `${uri}#${start.line}:${start.character}`;
}

/** Orders by file, then by place: the order in which findings are listed. */
export function compareSources(a: Source, b: Source): number {
    if (a.uri !== b.uri) return a.uri < b.uri ? -1 : 1;
    return compareRanges(a.range, b.range);
}

function compareRanges(a: Range, b: Range): number {
    return a.start.line - b.start.line || a.start.character - b.start.character
        || a.end.line - b.end.line || a.end.character - b.end.character;
}

/** Whether words stand within others of the same file. */
export function isWithin(inner: Source, outer: Source): boolean {
    return inner.uri === outer.uri && !isBefore(inner.range.start, outer.range.start) && !isBefore(outer.range.end, inner.range.end);
}
function isBefore(a: Position, b: Position): boolean {
    return a.line < b.line || a.line === b.line && a.character < b.character;
}
