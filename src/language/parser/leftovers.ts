import { CstUtils, GrammarUtils, type AstNode, type CstNode, type CstNodeBuilder, type LeafCstNode } from 'langium';
import { distance } from 'fastest-levenshtein';
import * as ast from '../generated/ast.ts';
import { DECLARATIONS, HEADS, ROOM_WORDS } from '../grammar-words.ts';
import { shown } from '../lexer/shown.ts';
import type { Token } from '../lexer/token.ts';
import type { SyntaxError } from './one-per-mistake.ts';
import { sayMistake } from './say.ts';

/**
 * What the grammar lets through so that nothing else is lost, and that yet means nothing: what a line holds too much, a
 * line that begins with a value, a block without a name, a word at the left margin that declares nothing.
 * It is noted as the tree grows: there is hardly ever any, and looking through the whole tree for it takes long.
 */
export function noteLeftovers(builder: CstNodeBuilder): Set<AstNode> {
    const noted = new Set<AstNode>(), construct = builder.construct;
    builder.construct = item => {
        construct.call(builder, item);
        if (item.$type === ast.Loose.$type || item.$type === ast.Stray.$type || hasExcess(item)) noted.add(item as unknown as AstNode);
    };
    return noted;
}

/** An empty list of what is too much stands in every line. */
function hasExcess(item: object): boolean {
    const { excess } = item as { readonly excess?: unknown };
    return Array.isArray(excess) && excess.length > 0;
}

/** What is said of them. */
export function sayLeftovers(noted: readonly AstNode[]): SyntaxError[] {
    const found: SyntaxError[] = [];
    for (const node of noted) {
        if (ast.isLoose(node)) found.push(errorAt(firstWord(node.$cstNode), sayLoose(node)));
        else if (ast.isStray(node)) found.push(errorAt(firstWord(node.$cstNode), sayStray(node)));
        else {
            const [first] = GrammarUtils.findNodesForProperty(node.$cstNode, 'excess');
            if (first) found.push(errorAt(first, sayExcess(node.$type, first)));
        }
    }
    return found;
}

function sayExcess(rule: string, first: CstNode): string {
    const before = CstUtils.getPreviousNode(first, false);
    return sayMistake({
        expected: undefined, actual: tokenAt(first), previous: before && tokenAt(CstUtils.flattenCst(before).toArray().findLast(leaf => !leaf.hidden)), rule,
    });
}

function sayLoose(node: ast.Loose): string {
    const first = node.rest[0];
    if (first === undefined) return 'This block belongs to nothing: put its name before the `{`.';
    if (first === ')') return 'One `)` too many: there is no `(` for it.';
    if (/^[\d$#."“.]/.test(first) && first !== '.') return `A line begins with the name of what it gives, as in \`height 8' 10"\`: ${shown(first)} has no name before it.`;
    return `A line cannot begin with ${shown(first)}. To continue the line above, indent it further than that line.`;
}

function sayStray({ word, name }: ast.Stray): string {
    const near = DECLARATIONS.map(known => ({ known, far: distance(word ?? '', known) })).sort((a, b) => a.far - b.far)[0]!;
    if (word === 'import' || word === 'include') return 'To use something from another file, write its path first: `from "./yard.coffer" use` and names.';
    const nothing = `A line outside of every block cannot begin with ${shown(word ?? '')}`;
    if (word && near.far <= Math.max(1, word.length / 3)) return `${nothing}; did you mean ${shown(near.known)}?`;
    if (word && ROOM_WORDS.has(word)) return `A ${shown(word)} goes inside a room, between its \`{\` and \`}\`.`;
    return name ? `${nothing}: it begins with ${HEADS.join(', ')} or let.` : `${nothing}. A property goes inside the block it belongs to, between its \`{\` and \`}\`.`;
}

function firstWord(node: CstNode | undefined): CstNode | undefined {
    return node && (CstUtils.flattenCst(node).find(leaf => !leaf.hidden && leaf.length > 0) ?? node);
}

function errorAt(at: CstNode | undefined, message: string): SyntaxError {
    return { name: 'NoViableAltException', message, token: tokenAt(at), resyncedTokens: [], context: { ruleStack: [], ruleOccurrenceStack: [] } };
}

/** A node of the tree as the token that it was. */
function tokenAt(node: CstNode | undefined): Token {
    const leaf = firstWord(node);
    const { start, end } = leaf?.range ?? { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const offset = leaf?.offset ?? 0;
    return {
        image: leaf?.text ?? '', tokenType: leaf && 'tokenType' in leaf ? (leaf as LeafCstNode).tokenType : { name: 'EOF' }, tokenTypeIdx: -1,
        startOffset: offset, endOffset: offset + Math.max(1, leaf?.length ?? 1) - 1,
        startLine: start.line + 1, endLine: end.line + 1, startColumn: start.character + 1, endColumn: Math.max(end.character, start.character + 1),
    };
}
