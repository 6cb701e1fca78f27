import type * as ast from '../generated/ast.ts';
import { factsOf } from './facts.ts';
import { quoted } from './words.ts';
import { listed } from '../../plain/words.ts';

/** What the built-in library says of the values of a property and of its modifiers, a sentence each, for the reference. */
export function factsInWords(property: ast.PropertyDecl): string[] {
    const ofModifiers = property.mods.flatMap(mod => sentences(mod).map(sentence => `${quoted(mod.name)}: ${sentence[0]!.toLowerCase()}${sentence.slice(1)}`));
    return [...sentences(property), ...ofModifiers];
}

function sentences(property: ast.PropertyDecl): string[] {
    const facts = factsOf(property);
    const said = (word: string): string[] => property.facts.filter(({ words }) => words[0] === word).map(({ $cstNode }) => $cstNode?.text ?? '');
    const [bounds, usual] = [[...said('more'), ...said('at')], said('usual').map(text => text.slice('usual '.length).replace(/ ".*/, ''))];
    const { severalLines, countsWith } = facts;
    return [
        ...bounds.length > 0 ? [`Has to be ${bounds.join(' and ')}.`] : [],
        ...usual.length > 0 ? [`Usually ${usual.join(' and ')}.`] : [],
        ...severalLines ? [`May stand on several lines${severalLines.by === undefined ? '' : `, each with another ${quoted(severalLines.by)}`}.`] : [],
        ...countsWith ? [`Only counts with ${listed(countsWith.words.map(word => quoted(`${countsWith.property} ${word}`)), 'or')}.`] : [],
        ...facts.insteadOf.length > 0 ? [`Instead of ${listed(facts.insteadOf.map(quoted), 'or')}.`] : [],
        ...facts.follows === undefined ? [] : [`Follows ${quoted(facts.follows)}, and may be said again after the next.`],
        ...facts.keepsTolerance ? ['May have a tolerance.'] : [],
        ...facts.reckonedBy.length > 0 ? [`Goes by ${listed(facts.reckonedBy.map(unit => quoted(`per ${unit}`)), 'or')}.`] : [],
        ...facts.notComputed.map(({ words, only }) => `Not computed yet: ${words}${only ? ` (${only.map(quoted).join(', ')})` : ''}.`),
    ];
}
