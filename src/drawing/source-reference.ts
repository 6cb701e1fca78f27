import type { Source } from '../provenance/source.ts';

/** How a drawing names a file. */
export type FileName = (uri: string) => string;

/** The file's own name without its folders: a drawing that leaves the house says nothing of the machine it was made on. */
export function lastPart(uri: string): string {
    const name = uri.split(/[?#]/u)[0]!.split('/').at(-1)!;
    try {
        return decodeURIComponent(name);
    } catch {
        return name;
    }
}

/** `library.coffer:12:3`, line and column counted from one as editors show them. */
export function sourceReference(source: Source, fileName: FileName): string {
    return `${fileName(source.uri)}:${source.range.start.line + 1}:${source.range.start.character + 1}`;
}
