import type { Source } from '../provenance/source.ts';

/** One thing that a text says: a property with its values, the head of a block, a thing of a room. */
export interface Statement {
    /** The blocks that it stands in, from the outermost: `room dining`, `grid`. */
    readonly within: readonly string[];
    /** What it says something of: `coffers-north`, `wall north`; '' of the head of the innermost block itself. */
    readonly what: string;
    /** As it is written, with one space between words. */
    readonly value: string;
    /** The same for what means the same, however it is written: `5 1/2"` and `5-1/2"`. */
    readonly mark: string;
    readonly at: Source;
}
