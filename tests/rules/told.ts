import type { Finding } from '../../src/findings/finding.ts';
import type { Source } from '../../src/provenance/source.ts';

/** All that is told with a finding, line by line: its words, where it and the other half of the contradiction stand, and what its fixes write. */
export function toldOf({ severity, rule, at, message, related, fixes, allowed }: Finding): string[] {
    return [
        `${placeOf(at)} ${severity} ${rule}${allowed ? `, allowed (${allowed.reason})` : ''}: ${message}`, ...related.map(each => `    ${placeOf(each.at)} ${each.message}`),
        ...fixes.map(({ title, edits, preferred }) =>
            `    ${preferred ? 'fix' : 'or'}: ${title}: ${edits.map(({ uri, range, text }) => `${placeOf({ uri, range })} ${JSON.stringify(text)}`).join(', ')}`),
    ];
}

function placeOf({ uri, range: { start, end } }: Source): string {
    return `${uri.split('/').at(-1)}:${start.line + 1}:${start.character + 1}-${end.line === start.line ? '' : `${end.line + 1}:`}${end.character + 1}`;
}
