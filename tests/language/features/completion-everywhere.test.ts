import type { AstNode } from 'langium';
import type { CompletionItem, CompletionList } from 'vscode-languageserver-types';
import { expect, test } from 'vitest';
import * as ast from '../../../src/language/generated/ast.ts';
import { isPlainName } from '../../../src/language/scope/expected.ts';
import { some } from '../../support/full.ts';
import { EXAMPLE_PATHS, EXAMPLES } from '../../support/examples.ts';
import { TestWorkspace } from '../../support/workspace.ts';


/** Every word that means something declared elsewhere: where it stands, and what it is. */
function wordsOf(workspace: TestWorkspace, path: string): { offset: number, end: number, word: string }[] {
    return workspace.document(path).references.flatMap(reference => {
        const container = reference.$refNode?.astNode;
        if (!reference.$refNode || ast.isRef(container) && isPlainName(container, workspace.coffer.vocabulary)) return [];
        return [{ offset: reference.$refNode.offset, end: statementOf(container!).$cstNode!.end, word: reference.$refText }];
    });
}

function statementOf(node: AstNode): AstNode {
    return ast.isMember(node) || ast.isItem(node) || ast.isUse(node) ? node : statementOf(node.$container!);
}

/** Whoever writes the examples again, word by word, is offered each word where it belongs: with the rest of the statement not yet written. */
test.each(EXAMPLE_PATHS)('every word of %s is offered where it stands', async path => {
    const workspace = await TestWorkspace.open(EXAMPLES);
    const text = EXAMPLES[path]!;
    const words = wordsOf(workspace, path);
    expect(words.length).toBeGreaterThan(2);
    const notOffered: string[] = [];
    let longest = 0;
    for (const { offset, end, word } of some(words, 8)) {
        for (const typed of ['', word.slice(0, 2)]) {
            await workspace.edit({ [path]: text.slice(0, offset) + typed + text.slice(end) });
            const document = workspace.document(path);
            const position = document.textDocument.positionAt(offset + typed.length);
            const { items } = await workspace.coffer.lsp.CompletionProvider!.getCompletion(
                document, { textDocument: { uri: document.textDocument.uri }, position },
            ) as CompletionList;
            const item = items.find(each => each.label === word);
            if (!item) notOffered.push(`${position.line + 1}:${position.character + 1} ${word}, having typed "${typed}"`);
            else expect(startOf(item)).toBe(position.character - typed.length);
            longest = Math.max(longest, items.length);
        }
    }
    expect(notOffered).toEqual([]);
    // of a parameter every type of the library may be said, some fifty; anywhere else far fewer
    expect(longest).toBeLessThan(60);
});

function startOf(item: CompletionItem): number {
    return item.textEdit && 'range' in item.textEdit ? item.textEdit.range.start.character : -1;
}
