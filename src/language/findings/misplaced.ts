import type { Finding } from '../../findings/finding.ts';
import * as ast from '../generated/ast.ts';
import { DECLARATIONS } from '../grammar-words.ts';
import { kindOfBody } from '../scope/kind-of.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { sourceOfKeyword, sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import { blockName } from './block-name.ts';
import { finding } from './make.ts';
import { listed } from '../../plain/words.ts';

const VOCABULARY = 'Only the built-in library can add words to the language.';

/** Things that are said in the wrong block. */
export function misplacedFindings(file: ast.File, vocabulary: Vocabulary): readonly Finding[] {
    const found: Finding[] = [];
    for (const item of file.items) {
        if (ast.isLibrary(item)) {
            found.push(finding('not-here', sourceOfKeyword(item, item.$type.toLowerCase()), `${VOCABULARY} Here you can write ${listed(DECLARATIONS, 'or')}.`));
        }
    }
    for (const item of file.items) for (const body of bodiesIn(item)) found.push(...inBody(body, vocabulary));
    return found;
}

/** The block of a statement, and the blocks in it. */
function* bodiesIn(statement: ast.Item | ast.Member): Iterable<ast.Body> {
    const body = 'body' in statement ? statement.body : undefined;
    if (!body) return;
    yield body;
    for (const member of body.members) yield* bodiesIn(member);
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
    for (const member of known ? body.members : []) {
        if (ast.isFixture(member) && HOME[member.kind] && HOME[member.kind].kind !== kind) {
            const overruled = kind === 'Measured' && member.name ? ` To overrule it, write ${quoted(`${member.name} ...`)}.` : '';
            found.push(finding('not-here', sourceOfProperty(member, 'kind'), `A ${member.kind} belongs in ${HOME[member.kind].block}, not in ${blockName(body)}.${overruled}`));
        }
        if (ast.isRequire(member) && kind !== 'Profile') found.push(finding('not-here', sourceOfKeyword(member, 'require'), `What a detail requires belongs in a profile, not in ${blockName(body)}.`));
    }
    return found;
}
