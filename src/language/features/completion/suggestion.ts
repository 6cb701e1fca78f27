import type { AstNode } from 'langium';
import type { CompletionItemKind } from 'vscode-languageserver-types';

/** Something to choose from. */
export interface Suggestion {
    readonly label: string;
    readonly kind: CompletionItemKind;
    /** A word or two beside it: its type, where it comes from. */
    readonly detail?: string;
    /** The declaration whose documentation is shown with it. */
    readonly about?: AstNode;
    /** What is written, with `$1` and so on where something is to be filled in; not given: the label. */
    readonly snippet?: string;
    /** What has to be said stands before what may be said. */
    readonly first?: boolean;
}

/** The protocol's numbers for the little pictures. */
export const PICTURE = {
    variable: 6, class: 7, module: 9, property: 10, unit: 11, keyword: 14, snippet: 15, file: 17, word: 20, constant: 21,
} as const satisfies Record<string, CompletionItemKind>;
