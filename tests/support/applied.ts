import type { Fix } from '../../src/findings/finding.ts';
import type { Position } from '../../src/provenance/source.ts';
import { uriOf } from './workspace.ts';

/** The texts of a workspace with a fix made. */
export function applied(fix: Fix, texts: Readonly<Record<string, string>>): Record<string, string> {
    return Object.fromEntries(Object.entries(texts).map(([path, text]) => {
        const edits = fix.edits.filter(edit => edit.uri === uriOf(path).toString())
            .map(({ range, text: written }) => ({ from: offsetOf(text, range.start), to: offsetOf(text, range.end), written }))
            .sort((a, b) => b.from - a.from);
        return [path, edits.reduce((changed, { from, to, written }) => changed.slice(0, from) + written + changed.slice(to), text)];
    }));
}

function offsetOf(text: string, { line, character }: Position): number {
    return text.split('\n').slice(0, line).reduce((sum, one) => sum + one.length + 1, 0) + character;
}
