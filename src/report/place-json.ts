import type { Range, Source } from '../provenance/source.ts';
import type { Files } from './look.ts';

/** Lines and columns count from one, columns in UTF-16 units, as editors show them; `end` is the first column after. */
export interface PlaceJson { readonly line: number; readonly column: number }
export interface RangeJson { readonly start: PlaceJson; readonly end: PlaceJson }
export interface SourceJson { readonly file: string; readonly line: number; readonly column: number }

export function rangeJson({ start, end }: Range): RangeJson {
    return { start: { line: start.line + 1, column: start.character + 1 }, end: { line: end.line + 1, column: end.character + 1 } };
}

export function sourceJson(source: Source, files: Files): SourceJson {
    const { line, character } = source.range.start;
    return { file: files.nameOf(source.uri), line: line + 1, column: character + 1 };
}

/** The one way JSON is written here: two spaces, a line end at the end. */
export function printJson(value: unknown): string {
    return `${JSON.stringify(value, null, 2)}\n`;
}
