/** What the editor at the other end can show; an editor that says nothing of itself can show plain text only. */
export interface Editor {
    /** Places to fill in, in what is written by completion. */
    readonly snippets: boolean;
    readonly markdownInCompletion: boolean;
    /** Markdown, and with it pictures. */
    readonly markdownInHover: boolean;
    readonly markdownInSignature: boolean;
}

/** For whoever uses the language without an editor: everything. */
export const FULL_EDITOR: Editor = { snippets: true, markdownInCompletion: true, markdownInHover: true, markdownInSignature: true };

/** Markdown of our own making as plain text: without fences, backquotes and pictures. */
export function plainText(markdown: string): string {
    return markdown.replace(/^```.*\n?/gm, '').replace(/!\[([^\]]*)\]\([^)]*\)/g, '').replace(/[`*]/g, '').replace(/\n{3,}/g, '\n\n').trim();
}

/** `markdown` where the editor renders it. */
export function markup(value: string, markdown: boolean): { kind: 'markdown' | 'plaintext'; value: string } {
    return markdown ? { kind: 'markdown', value } : { kind: 'plaintext', value: plainText(value) };
}
