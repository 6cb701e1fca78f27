import type { LangiumDocument } from 'langium';
import { replacing, type Fix } from '../../findings/finding.ts';
import type { Range, Source } from '../../provenance/source.ts';
import { kept } from '../../plain/kept.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { quoted } from '../types/words.ts';
import { servicesOf } from '../workspace/services-of.ts';
import { calledHere } from './other-words.ts';

/** What a line that cannot be read would be with one word of it written otherwise. */
interface Meant { readonly at: Source; readonly message: string; readonly fixes: readonly Fix[] }

const MOST_WORDS = 4;

/**
 * Words that cost a whole line because they are written a little otherwise: `held down` for `held-down`, `1X6` for `1x6`,
 * `per linear ft`. Looked for in the words next to where the parser stopped.
 */
export function meantOtherwise(document: LangiumDocument, stopped: Source): Meant | undefined {
    const { line } = stopped.range.start;
    const text = document.textDocument.getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } });
    const spelled = (from: number, length: number): Source => ({ uri: stopped.uri, range: rangeOn(line, from, from + length) });
    const isNear = (from: number, length: number): boolean =>
        from <= stopped.range.end.character && from + length + gapAfter(text, from + length) >= stopped.range.start.character;
    for (const { 0: written, index } of text.matchAll(/(?<![\w/.])\d+(?:\/\d+)?[X×]\d+(?!\w)/g)) {
        if (!isNear(index, written.length)) continue;
        const meant = written.replace(/[X×]/, 'x');
        return said(spelled(index, written.length), `A size takes a small x: ${quoted(meant)}.`, meant);
    }
    const words = [...text.replace(/\/\/.*/, '').matchAll(/[A-Za-z]\w*(?:-\w+)*/g)].map(({ 0: word, index }) => ({ word, index }));
    const known = hyphenated(servicesOf(document).vocabulary);
    for (let count = MOST_WORDS; count > 1; count--) {
        for (let i = 0; i + count <= words.length; i++) {
            const first = words[i]!, last = words[i + count - 1]!;
            const length = last.index + last.word.length - first.index;
            const written = text.slice(first.index, first.index + length);
            if (!/^[\w-]+(?:[ \t]+[\w-]+)+$/.test(written) || !isNear(first.index, length)) continue;
            const joined = written.replace(/[ \t]+/g, '-').toLowerCase();
            const isUnit = /\bper[ \t]+$/.test(text.slice(0, first.index));
            const meant = isUnit ? calledHere('Unit', joined) : known.has(joined) ? joined : undefined;
            if (meant === undefined) continue;
            const message = meant === joined ? `${quoted(meant)} is one word, with a hyphen.` : `This unit is written ${quoted(meant)}.`;
            return said(spelled(first.index, length), message, meant);
        }
    }
    return undefined;
}

function said(at: Source, message: string, meant: string): Meant {
    return { at, message, fixes: [replacing(at, meant)] };
}

/** The error may stand on the next word: `held down 1/4"` is stopped at its length. */
function gapAfter(text: string, from: number): number {
    return /^[ \t]*/.exec(text.slice(from))![0].length;
}

function rangeOn(line: number, from: number, to: number): Range {
    return { start: { line, character: from }, end: { line, character: to } };
}

/** All words of the language that have a dash in them. */
const hyphenated = kept((vocabulary: Vocabulary): ReadonlySet<string> => {
    const words = new Set<string>(vocabulary.units.keys());
    for (const list of vocabulary.words.values()) for (const { name } of list.words) words.add(name);
    for (const kind of vocabulary.kinds.values()) {
        for (const property of kind.props) for (const { name } of [property, ...property.mods]) words.add(name);
    }
    return new Set([...words].filter(word => word.includes('-')));
});
