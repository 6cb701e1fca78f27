/** Text between tags. Names come from the job and may hold anything. */
export function escapeText(words: string): string {
    return words.replace(NOT_IN_XML, '').replace(/[&<>]/g, c => ESCAPES[c]!);
}

/** Text inside double quotes. */
export function escapeAttribute(words: string): string {
    return words.replace(NOT_IN_XML, '').replace(/[&<>"]/g, c => ESCAPES[c]!);
}

/** What no XML file may hold, however escaped (XML 1.0, 2.2). */
const NOT_IN_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff\p{Surrogate}]/gu;

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
