import type { Shown } from '../../text/markdown.ts';

/** What the editor at the other end can show; an editor that says nothing of itself can show plain text only. */
export interface Editor {
    /** Places to fill in, in what is written by completion. */
    readonly snippets: boolean;
    /** A command that opens the list of what may stand at the cursor. */
    readonly opensList?: string;
    readonly markdownInCompletion: boolean;
    /** Markdown, and with it pictures. */
    readonly markdownInHover: boolean;
    readonly markdownInSignature: boolean;
}

/** For whoever uses the language without an editor: everything. */
export const FULL_EDITOR: Editor = { snippets: true, opensList: 'editor.action.triggerSuggest', markdownInCompletion: true, markdownInHover: true, markdownInSignature: true };

/** What is shown, as the editor shows it. */
export function markup({ markdown, plain }: Shown, isMarkdown: boolean): { kind: 'markdown' | 'plaintext'; value: string } {
    return isMarkdown ? { kind: 'markdown', value: markdown } : { kind: 'plaintext', value: plain.replace(/\n{3,}/g, '\n\n').trim() };
}
