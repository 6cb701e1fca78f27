import type { PaperName } from './paper.ts';
import type { FileName } from './source-reference.ts';

export interface SheetOptions {
    /** Ledger for feet and inches, A3 for millimeters, unless said. */
    readonly paper?: PaperName;
    /** Which sheet of how many: `C-1`, `of 3`. */
    readonly sheet?: string;
    readonly of?: string;
    /** For who has the ceiling built: nothing is said of the pieces it is built from. */
    readonly forClient?: boolean;
    /** Of a plan in a document without its sections: it points to no sheet of them. */
    readonly alone?: boolean;
    /** How `data-source` names a file; its last part, unless said. */
    readonly fileName?: FileName;
}
