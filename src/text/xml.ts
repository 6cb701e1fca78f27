import type { XmlText } from './fit.ts';

/** Text between tags. Names come from the job and may hold anything. */
export function escapeText(words: string): XmlText {
    return words.replace(/\r\n?/g, '\n').replace(UNFIT, '').replace(/[&<>]/g, c => ESCAPES[c]!) as XmlText;
}

/** Text inside double quotes. */
export function escapeAttribute(words: string): XmlText {
    return words.replace(/[\t\r\n]+/g, ' ').replace(UNFIT, '').replace(/[&<>"]/g, c => ESCAPES[c]!) as XmlText;
}

/** What no XML file may hold, however escaped (XML 1.0, 2.2), the rest of the control characters, and what turns the reading direction round. */
const UNFIT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029\u00ad\u200b\u061c\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e0fff}\p{Surrogate}\p{Noncharacter_Code_Point}]/gu;

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
