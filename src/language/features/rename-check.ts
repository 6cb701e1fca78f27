import { AstUtils, isReference, type AstNode, type LangiumDocument, type Reference, type ReferenceInfo } from 'langium';
import * as ast from '../generated/ast.ts';
import { LETTERED } from '../grammar-words.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { fixturesOf, letsOf, ownNames, parametersOf, usedNames } from '../scope/names.ts';
import type { CofferServices } from '../coffer-services.ts';
import { sourceOf } from '../types/place.ts';
import { quoted } from '../types/words.ts';

/** `allow` begins a comment that allows a finding. */
const KEYWORDS: ReadonlySet<string> = new Set([...LETTERED, 'allow']);

/** Why nothing may be called this, in the carpenter's words; undefined where it may. */
export function whyNoName(name: string, vocabulary: Vocabulary): string | undefined {
    if (!/^[A-Za-z_]\w*(-\w+)*$/.test(name)) return `${quoted(name)} cannot be a name: a name is letters, digits and hyphens, and begins with a letter.`;
    if (KEYWORDS.has(name)) return `${quoted(name)} is a word of the language and would not be read as a name.`;
    if (vocabulary.types.has(name)) return `${quoted(name)} is what the language calls a kind of thing; it cannot name one.`;
    return undefined;
}

/** What else would be called this, or would be taken for it, in the files that use `target` by its own name; undefined where nothing would. */
export function whyClash(
    target: AstNode, oldName: string, newName: string, documents: readonly LangiumDocument[], services: CofferServices,
): string | undefined {
    const beside = namesBeside(target).get(newName);
    if (beside && beside !== target) return already(newName, beside);
    for (const document of documents) {
        const uses = document.references.filter(isReference).filter(use => use.ref === target && use.$refText === oldName && use.$refNode);
        const file = document.parseResult.value;
        if (ast.isFile(file) && uses.some(use => ast.isUsedName(use.$refNode!.astNode) && use.$refNode!.astNode.name === undefined)) {
            const other = namesOfFile(file).get(newName);
            if (other && other !== target) return already(newName, other);
        }
        for (const use of uses) {
            const found = nodeCalled(newName, use, services);
            if (found && found !== target) return already(newName, found);
        }
        for (const other of document.references.filter(isReference)) {
            if (other.$refText === newName && other.ref && other.ref !== target
                && nodeCalled(oldName, other, services) === target) return already(newName, other.ref);
        }
    }
    return undefined;
}

/** The names among which a declaration has its own. */
function namesBeside(target: AstNode): ReadonlyMap<string, AstNode> {
    const owner = target.$container;
    if (ast.isParam(target) && ast.isProfile(owner)) return parametersOf(owner);
    if (ast.isUse(owner)) return namesOfFile(owner.$container);
    if (ast.isBody(owner)) return ast.isRoom(owner.$container) && ast.isFixture(target) ? fixturesOf(owner.$container) : letsOf(owner);
    return ast.isFile(owner) ? namesOfFile(owner) : new Map();
}

function namesOfFile(file: ast.File): ReadonlyMap<string, AstNode> {
    return new Map<string, AstNode>([...[...usedNames(file)].map(([name, [used]]) => [name, used!] as const), ...ownNames(file)]);
}

/** What a name would mean at the place of a cross-reference. */
function nodeCalled(name: string, { $refNode }: Reference, services: CofferServices): AstNode | undefined {
    const container = $refNode?.astNode;
    const info = container && AstUtils.streamReferences(container).find(one => one.reference.$refNode === $refNode);
    return info && services.references.ScopeProvider.getScope(info as ReferenceInfo).getElement(name)?.node;
}

function already(name: string, other: AstNode): string {
    const { uri, range } = sourceOf(other);
    return `${quoted(name)} is already a name here: ${uri.slice(uri.lastIndexOf('/') + 1)}, line ${range.start.line + 1}. Two things with the same name could not be told apart.`;
}
