/** Text between tags. Names come from the job and may hold anything. */
export function escapeText(words: string): string {
    return words.replace(/[&<>]/g, c => ESCAPES[c]!);
}

/** Text inside double quotes. */
export function escapeAttribute(words: string): string {
    return words.replace(/[&<>"]/g, c => ESCAPES[c]!);
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
