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

/**
 * Markdown in which nothing is a tag, outside of code, where signs are signs anyway: what somebody writes about a board, such as
 * `<see the yard>`, is words.
 */
function withoutTags(markdown: string): string {
    return markdown.replace(/```[\s\S]*?```|`[^`\n]*`|</g, found => (found === '<' ? '&lt;' : found));
}

/** `markdown` where the editor renders it. `ours`: what is added of our own making, tags and all. */
export function markup(value: string, markdown: boolean, ours: readonly string[] = []): { kind: 'markdown' | 'plaintext'; value: string } {
    return markdown ? { kind: 'markdown', value: [withoutTags(value), ...ours].filter(part => part !== '').join('\n\n') } : { kind: 'plaintext', value: plainText([value, ...ours].join('\n\n')) };
}
