import { AstUtils } from 'langium';
import type { Finding } from '../../findings/finding.ts';
import * as ast from '../generated/ast.ts';
import { kindOfBody } from '../scope/kind-of.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { sourceOf, sourceOfKeyword, sourceOfProperty } from '../types/place.ts';
import { listed, quoted } from '../types/words.ts';
import { blockName } from './block-name.ts';
import { finding } from './make.ts';
import { didYouMean, meantFixes, near } from './near.ts';

/** What a line at the margin of a file can begin with. */
export const DECLARATIONS = ['stock', 'profile', 'room', 'job', 'labor', 'bid', 'alternate', 'let', 'from', 'edition'];
const VOCABULARY = 'Only the built-in library declares words of the language.';

/** Lines that begin with nothing, and things that are said in the wrong block. */
export function misplacedFindings(file: ast.File, vocabulary: Vocabulary): readonly Finding[] {
    const found: Finding[] = [];
    for (const item of file.items) {
        if (ast.isStray(item)) found.push(stray(item));
        if (ast.isLoose(item)) found.push(loose(item));
        if (ast.isKind(item) || ast.isWords(item) || ast.isQuantity(item) || ast.isUnit(item)) {
            found.push(finding('not-here', sourceOfKeyword(item, item.$type.toLowerCase()), `${VOCABULARY} Here one writes ${listed(DECLARATIONS)}.`));
        }
    }
    for (const node of AstUtils.streamAllContents(file)) {
        if (ast.isBody(node)) found.push(...inBody(node, vocabulary));
    }
    return found;
}

function stray(item: ast.Stray): Finding {
    const words = near(item.word ?? '', DECLARATIONS);
    const at = sourceOfProperty(item, 'word');
    const instead = words.length > 0 ? didYouMean(words) : `; here one writes ${listed(DECLARATIONS)}.`;
    return finding('nothing-starts-with', at, `Nothing starts with ${quoted(item.word)}${instead}`, { fixes: meantFixes(at, words) });
}

function loose(item: ast.Loose): Finding {
    const [first] = item.rest;
    if (first === undefined) return finding('nothing-starts-with', { ...sourceOf(item), range: firstCharacter(item) }, 'This block has no name. Write what it is in front of the {.');
    return finding('nothing-starts-with', sourceOfProperty(item, 'rest', 0), `A line begins with a word that says what it is about, not with ${quoted(first)}.`);
}

function firstCharacter(item: ast.Loose) {
    const { start } = sourceOf(item).range;
    return { start, end: { line: start.line, character: start.character + 1 } };
}

/** Where each of the words of a room may stand. */
const HOME: Readonly<Record<ast.Fixture['kind'], { readonly kind: string, readonly block: string }>> = {
    wall: { kind: 'Room', block: 'a room' }, fixture: { kind: 'Room', block: 'a room' }, line: { kind: 'Room', block: 'a room' },
    crossing: { kind: 'Room', block: 'a room' }, board: { kind: 'Measured', block: '`measured`' },
};

function inBody(body: ast.Body, vocabulary: Vocabulary): Finding[] {
    const kind = kindOfBody(body, vocabulary)?.name;
    const known = kind !== undefined || ast.isAlternate(body.$container);
    const found: Finding[] = [];
    for (const member of body.members) {
        if (ast.isLoose(member)) found.push(loose(member));
        if (!known) continue;
        if (ast.isFixture(member) && HOME[member.kind] && HOME[member.kind].kind !== kind) {
            const overruled = kind === 'Measured' && member.name ? ` To overrule it, write ${quoted(`${member.name} ...`)}.` : '';
            found.push(finding('not-here', sourceOfProperty(member, 'kind'), `A ${member.kind} is said in ${HOME[member.kind].block}, not in ${blockName(body)}.${overruled}`));
        }
        if (ast.isRequire(member) && kind !== 'Profile') found.push(finding('not-here', sourceOfKeyword(member, 'require'), `What a detail requires is said in a profile, not in ${blockName(body)}.`));
    }
    return found;
}
