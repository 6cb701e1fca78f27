import type { LangiumDocument } from 'langium';
import { replacing, type Fix } from '../../findings/finding.ts';
import { kept } from '../../plain/kept.ts';
import type { Source } from '../../provenance/source.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { declaredType } from '../types/declared.ts';
import { LENGTH } from '../types/type.ts';
import { quoted } from '../types/words.ts';
import { servicesOf } from '../workspace/services-of.ts';

const FIGURES = /(?<![\w/.'"])(?<feet>\d+)(?<mark>"?)[ \t]+(?<inches>\d+(?:[ \t-]\d+\/\d+|\.\d+)?)"?(?![\w/.'"])/g;

/** Feet and inches where one length is wanted, and the feet have no mark or that of inches: `wall north 14 7 1/4"`. */
export function meantAsFeet(document: LangiumDocument, stopped: Source): { at: Source, message: string, fixes: readonly Fix[] } | undefined {
    const { line, character } = stopped.range.start;
    const text = document.textDocument.getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } }).replace(/\/\/.*/, '');
    for (const { 0: written, index, groups } of text.matchAll(FIGURES)) {
        const { feet, mark, inches } = groups as { feet: string, mark: string, inches: string };
        const end = index + written.length, isNear = character >= index && character <= end;
        if (!isNear || Number.parseFloat(inches) >= 12 || !wantsOneLength(text.slice(0, index), servicesOf(document).vocabulary)) continue;
        const meant = `${feet}' ${inches}"`, at = { uri: stopped.uri, range: { start: { line, character: index }, end: { line, character: end } } };
        const message = mark === '"'
            ? `Two figures in inches where one length is wanted. If ${feet} are feet, their mark is \`'\`: ${quoted(meant)}.`
            : `${feet} of what? If it is feet and inches, put the mark of feet after it: ${quoted(meant)}.`;
        return { at, message, fixes: [replacing(at, meant)] };
    }
    return undefined;
}

/** Whether one length stands right behind these words: behind a wall's name, or behind a property that takes one wherever there is one of its name. */
function wantsOneLength(before: string, vocabulary: Vocabulary): boolean {
    const [, above, word] = /(?:([a-z][\w-]*)[ \t]+)?([A-Za-z][\w-]*)[ \t]+$/.exec(before) ?? [];
    return word !== undefined && (above === 'wall' || lengthNames(vocabulary).has(word));
}

/** The properties, and what may stand behind a property's value, that take one length wherever they stand. */
const lengthNames = kept((vocabulary: Vocabulary): ReadonlySet<string> => {
    const named = [...vocabulary.kinds.values()].flatMap(kind => kind.props.flatMap(property => [property, ...property.mods]));
    const others = new Set(named.filter(({ type }) => declaredType(type) !== LENGTH).map(({ name }) => name));
    return new Set(named.map(({ name }) => name).filter(name => !others.has(name)));
});
