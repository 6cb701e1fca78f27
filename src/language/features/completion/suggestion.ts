import type { AstNode } from 'langium';
import type { CompletionItemKind, TextEdit } from 'vscode-languageserver-types';

/** Something to choose from. */
export interface Suggestion {
    readonly label: string;
    readonly kind: CompletionItemKind;
    /** A word or two beside it: its type, where it comes from. */
    readonly detail?: string;
    /** The declaration whose documentation is shown with it. */
    readonly about?: AstNode;
    /** What is written about something that no declaration stands for. */
    readonly written?: string;
    /** What is written, with `$1` and so on where something is to be filled in; not given: the label. */
    readonly snippet?: string;
    /** What has to be said stands before what may be said. */
    readonly first?: boolean;
    /** What only leads to something right, or has to be fetched from another file, stands behind. */
    readonly last?: boolean;
    /** At its first place there is something to choose from: the list opens again there. */
    readonly opens?: boolean;
    /** The path of the file it comes from, and what else has to be written to have it. */
    readonly importing?: { readonly path: string; readonly edit: TextEdit };
}

/** The protocol's numbers for the little pictures. */
export const PICTURE = {
    variable: 6, class: 7, module: 9, property: 10, unit: 11, keyword: 14, snippet: 15, file: 17, folder: 19, word: 20, constant: 21,
} as const satisfies Record<string, CompletionItemKind>;
