import type { FileName } from '../text/file-name.ts';
import type { Content } from '../text/fit.ts';

export interface OutputOptions {
    /** The folder the files go to; it is made where it is not there. */
    readonly out: string;
    /** Replaces also what this program has not made. */
    readonly force?: boolean;
}
export interface OutputFile { readonly name: FileName; readonly content: Content }
/** Files to be written, and the address of the file that says which house they are of. */
export interface HeldFiles { readonly options: OutputOptions; readonly files: readonly OutputFile[]; readonly from: string }
