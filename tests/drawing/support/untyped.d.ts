// Test libraries that carry no types of their own: only what the drawing tests use of them.
declare module 'sax' {
    export interface Tag { readonly name: string; readonly attributes: Readonly<Record<string, string>> }
    export interface Parser {
        onopentag: (tag: Tag) => void;
        onclosetag: (name: string) => void;
        ontext: (text: string) => void;
        onerror: (error: Error) => void;
        write(text: string): Parser;
        close(): Parser;
    }
    export function parser(strict: boolean): Parser;
}
