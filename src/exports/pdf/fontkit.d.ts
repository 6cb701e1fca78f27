// The reader of fonts carries no types of its own: only what is used of it.
declare module 'fontkit' {
    export interface Font {
        readonly unitsPerEm: number;
        readonly characterSet: readonly number[];
        /** The file. */
        readonly stream: Bytes;
        hasGlyphForCodePoint(code: number): boolean;
        layout(text: string): { readonly advanceWidth: number; readonly glyphs: readonly { readonly name: string }[] };
        /** A table to be read from its beginning; one that is packed is inflated at each call. */
        _getTableStream(table: string): Bytes | null;
    }
    export interface Bytes { pos: number }
    export function create(file: Uint8Array): Font;
}
