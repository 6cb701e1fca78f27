import { AstUtils, type AstNode, type CstNode } from 'langium';
import { distance } from 'fastest-levenshtein';
import * as ast from '../generated/ast.ts';
import type { Token } from '../lexer/token.ts';
import type { SyntaxError } from './one-per-mistake.ts';

/** What a job file is made of. (The built-in library has four more words, which are no one else's.) */
const DECLARATIONS = ['stock', 'profile', 'job', 'room', 'labor', 'bid', 'alternate', 'let', 'from', 'edition'];

/**
 * What the grammar lets through so that nothing after it is lost, and that yet means nothing: a line that begins with a
 * value, a block without a name, a word at the left margin that declares nothing.
 */
export function leftovers(root: AstNode): SyntaxError[] {
    const found: SyntaxError[] = [];
    for (const node of AstUtils.streamAst(root)) {
        if (ast.isLoose(node)) found.push(errorAt(firstWord(node.$cstNode), sayLoose(node)));
        else if (ast.isStray(node)) found.push(errorAt(firstWord(node.$cstNode), sayStray(node)));
    }
    return found;
}

function sayLoose(node: ast.Loose): string {
    if (node.rest.length === 0) return 'This block belongs to nothing: put its name before the {.';
    return `A line begins with the name of what it tells, as in height 8' 10"; ${node.rest[0]} has no name before it.`;
}

function sayStray({ word, name }: ast.Stray): string {
    const meant = DECLARATIONS.map(known => ({ known, far: distance(word ?? '', known) })).sort((a, b) => a.far - b.far)[0]!;
    if (word && meant.far <= Math.max(1, word.length / 3)) return `${word} is nothing that a job file has; did you mean ${meant.known}?`;
    const example = name ? '' : ', and a property stands inside the block it belongs to';
    return `${word} is nothing that a job file has: it has ${DECLARATIONS.slice(0, 7).join(', ')} and let${example}.`;
}

function firstWord(node: CstNode | undefined): CstNode | undefined {
    let first = node;
    while (first && 'content' in first) {
        const content = (first.content as CstNode[]).filter(child => !child.hidden);
        if (content.length === 0) break;
        first = content[0];
    }
    return first ?? node;
}

function errorAt(at: CstNode | undefined, message: string): SyntaxError {
    const { start, end } = at?.range ?? { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const offset = at?.offset ?? 0;
    const token: Token = {
        image: at?.text ?? '', tokenType: { name: 'Leftover' }, tokenTypeIdx: -1,
        startOffset: offset, endOffset: offset + Math.max(1, at?.length ?? 1) - 1,
        startLine: start.line + 1, endLine: end.line + 1, startColumn: start.character + 1, endColumn: Math.max(end.character, start.character + 1),
    };
    return { name: 'NoViableAltException', message, token, resyncedTokens: [], context: { ruleStack: [], ruleOccurrenceStack: [] } };
}
