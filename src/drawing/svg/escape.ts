const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text as it may stand between tags and inside quotes. Names come from the job and may hold anything. */
export function escapeXml(words: string): string {
    return words.replace(/[&<>"']/g, c => ESCAPES[c]!);
}
