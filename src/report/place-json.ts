import type { Range, Source } from '../provenance/source.ts';
import type { FromOne } from './amounts-json.ts';
import type { Files } from './look.ts';

/** Line and column from one, columns in UTF-16 units. */
export interface PlaceJson { readonly line: FromOne; readonly column: FromOne }

/** From the first column to the first one after. */
export interface RangeJson { readonly start: PlaceJson; readonly end: PlaceJson }

/** Where the text says it. */
export interface SourceJson {
    /** Path as the program was asked for it, with forward slashes. */
    readonly file: string;
    /** From one. */
    readonly line: FromOne;
    /** From one, in UTF-16 units. */
    readonly column: FromOne;
}

export function rangeJson({ start, end }: Range): RangeJson {
    return { start: { line: start.line + 1, column: start.character + 1 }, end: { line: end.line + 1, column: end.character + 1 } };
}

export function sourceJson(source: Source, files: Files): SourceJson {
    const { line, character } = source.range.start;
    return { file: files.nameOf(source.uri), line: line + 1, column: character + 1 };
}
