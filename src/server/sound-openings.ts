import type { Message } from 'vscode-languageserver';

/** A path has at most 4096 bytes on the systems that there are, so it leads through no more folders than this. */
const MOST_FOLDERS = 2048;

/**
 * Lets no text in that is none, nor one at an address that no file can have: the protocol's library would keep it, and every build after it would
 * fail on it, of all files, until the server is started again.
 */
export function isSoundOpening(message: Message): boolean {
    const { method, params } = (message ?? {}) as { method?: unknown; params?: unknown };
    if (method !== 'textDocument/didOpen') return true;
    const { textDocument } = (params ?? {}) as { textDocument?: { uri?: unknown; text?: unknown } | null };
    const { uri, text } = textDocument ?? {};
    return typeof uri === 'string' && typeof text === 'string' && /^[a-z][\w+.-]*:.*[^/]$/is.test(uri) && !uri.includes('%00') && uri.split('/').length <= MOST_FOLDERS;
}
