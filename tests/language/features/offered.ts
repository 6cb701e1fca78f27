import type { CompletionItem } from 'vscode-languageserver-types';
import { AstUtils } from 'langium';
import * as ast from '../../../src/language/generated/ast.ts';
import type { TestWorkspace } from '../../support/workspace.ts';

/** The line is written no further than the word; a hand has begun the word with two letters; the rest of the line is there already. */
export const WAYS = ['empty tail', 'two letters', 'middle of the line'] as const;
type Way = typeof WAYS[number];

/** A word of a file that means something there, and that an editor should have offered. */
interface Asked { readonly word: string; readonly offset: number; readonly line: number }
interface Missed extends Asked { readonly way: Way; readonly offered: readonly string[] }
export interface Tally { readonly places: number; readonly offered: number; readonly meanLength: number; readonly missed: readonly Missed[] }

/** Every word of a file but those that its writer invents: names that are declared there, and titles and other texts. */
export function askedIn(workspace: TestWorkspace, path: string): Asked[] {
    const document = workspace.document(path);
    const text = document.textDocument.getText();
    const invented = inventedIn(document.parseResult.value, text);
    return workspace.coffer.parser.Lexer.tokenize(text).tokens
        .filter(token => /^[A-Za-z_]/.test(token.image) && !OPERATORS.has(token.image) && !invented.has(token.startOffset))
        .map(token => ({ word: token.image, offset: token.startOffset, line: document.textDocument.positionAt(token.startOffset).line + 1 }));
}

/** Signs spelled with letters are no words to be chosen: `x` is as long as its name. */
const OPERATORS = new Set(['x']);

function inventedIn(file: ast.File, text: string): ReadonlySet<number> {
    const offsets = new Set<number>();
    for (const node of AstUtils.streamAst(file)) {
        const isInvented = ast.isStock(node) || ast.isProfile(node) || ast.isRoom(node) || ast.isAlternate(node) || ast.isParam(node) || ast.isLet(node)
            || ast.isUsedName(node) || ast.isFixture(node) && (node.kind === 'fixture' || node.kind === 'board');
        if (!isInvented || !node.name || !node.$cstNode) continue;
        const { offset } = node.$cstNode;
        // the name is the first word after the keyword, of a used name the one after `as`, and of a parameter the first
        const from = ast.isUsedName(node) ? text.indexOf(' as ', offset) + 4 : ast.isParam(node) ? offset : offset + /^\S+\s+/.exec(text.slice(offset))![0].length;
        offsets.add(text.indexOf(node.name, from));
    }
    return offsets;
}

/** Asks for completion at each word, or every n-th, as it would be written, and counts where the word is offered. */
export async function tally(workspace: TestWorkspace, path: string, way: Way, everyNth = 1): Promise<Tally> {
    const text = workspace.text(path);
    const asked = askedIn(workspace, path).filter((_, i) => i % everyNth === 0);
    const missed: Missed[] = [];
    let items = 0;
    for (const each of asked) {
        const typed = way === 'two letters' ? each.word.slice(0, 2) : '';
        await workspace.edit({ [path]: written(text, each, typed, way) });
        const found = await completionAt(workspace, path, each.offset + typed.length);
        items += found.length;
        if (!found.some(({ label }) => label === each.word)) missed.push({ ...each, way, offered: found.map(({ label }) => label) });
    }
    await workspace.edit({ [path]: text });
    return { places: asked.length, offered: asked.length - missed.length, meanLength: items / Math.max(1, asked.length), missed };
}

function written(text: string, { word, offset }: Asked, typed: string, way: Way): string {
    const before = text.slice(0, offset) + typed;
    if (way === 'middle of the line') return before + text.slice(offset + word.length);
    const lineEnd = text.indexOf('\n', offset) < 0 ? text.length : text.indexOf('\n', offset);
    return before + closing(text.slice(offset, lineEnd)) + text.slice(lineEnd);
}

/** The braces and parentheses that the rest of a line closes without having opened them: an editor has put them there already. */
function closing(rest: string): string {
    const open: string[] = [], closed: string[] = [];
    for (const sign of rest.replace(/\/\/.*$/, '').replace(/"[^"]*"/g, '')) {
        if (sign === '{' || sign === '(') open.push(sign);
        else if ((sign === '}' || sign === ')') && open.pop() === undefined) closed.push(sign);
    }
    // and what it opens for the lines below stays open
    return [...closed, ...open].map(sign => ` ${sign}`).join('');
}

export async function completionAt(workspace: TestWorkspace, path: string, offset: number): Promise<readonly CompletionItem[]> {
    const document = workspace.document(path);
    const list = await workspace.coffer.lsp.CompletionProvider!.getCompletion(
        document, { textDocument: { uri: document.textDocument.uri }, position: document.textDocument.positionAt(offset) },
    );
    return list?.items ?? [];
}

/** Words in backticks for reading in a terminal: what was missed, and what stood there instead. */
export function report(path: string, { missed }: Tally): string[] {
    return missed.map(({ line, word, way, offered }) => `${path}:${line} ${word}, ${way}: ${offered.slice(0, 8).join(' ')}${offered.length > 8 ? ` and ${offered.length - 8} more` : ''}`);
}
