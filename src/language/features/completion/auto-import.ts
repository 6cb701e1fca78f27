import type { AstNode, LangiumDocument } from 'langium';
import type { TextEdit } from 'vscode-languageserver-types';
import * as ast from '../../generated/ast.ts';
import { namesOf } from '../../scope/names.ts';
import type { CofferSharedServices } from '../../coffer-services.ts';
import { isBroken } from '../../types/broken.ts';
import { isBuiltin } from '../../workspace/builtin.ts';
import { pathBetween } from '../../workspace/import-graph.ts';
import { isInside } from '../../workspace/imports.ts';

/** Something another file of the workspace offers, and what has to be written at the head of this one to have it. */
interface Importable { readonly name: string; readonly node: AstNode; readonly path: string; readonly edit: TextEdit }

/**
 * Things that other files offer of the kinds that are asked for, under names that are not taken here. Files that use this one are left out: to use
 * them in turn would close a ring.
 */
export function importables(
    document: LangiumDocument, taken: ReadonlyMap<string, ReadonlySet<string>>, { workspace }: CofferSharedServices,
): readonly Importable[] {
    const { LangiumDocuments, Imports } = workspace;
    const own = document.uri.toString();
    const found: Importable[] = [];
    for (const other of LangiumDocuments.all) {
        if (other === document || isBuiltin(other.uri) || !isInside(other.uri, Imports.folders)) continue;
        const fitting = [...namesOf(other)].filter(([name, node]) => taken.get(node.$type)?.has(name) === false);
        if (fitting.length === 0 || Imports.reached(other).has(own)) continue;
        const path = pathBetween(document.uri, other.uri);
        const use = (document.parseResult.value as ast.File).uses.find(each => canGrow(each) && Imports.importOf(each) === other);
        for (const [name, node] of fitting) found.push({ name, node, path, edit: use ? inLine(use, name, document) : asLine(path, name, document) });
    }
    return found.sort((a, b) => (a.path === b.path ? 0 : a.path < b.path ? -1 : 1));
}

function canGrow(use: ast.Use): boolean {
    return !isBroken(use) && use.names.length > 0 && use.names.every(({ target, $cstNode }) => target?.$refText && $cstNode);
}

function inLine(use: ast.Use, name: string, { textDocument }: LangiumDocument): TextEdit {
    return insert(textDocument.positionAt(use.names.at(-1)!.$cstNode!.end), `, ${name}`);
}

/** Below the other `from` lines, or below the edition, or at the top. */
function asLine(path: string, name: string, { parseResult, textDocument }: LangiumDocument): TextEdit {
    const { uses, editions } = parseResult.value as ast.File;
    const text = textDocument.getText();
    const newLine = text.includes('\r\n') ? '\r\n' : '\n';
    const line = `from "${path}" use ${name}`;
    const last = [...uses, ...editions].flatMap(({ $cstNode }) => $cstNode ?? [])
        .reduce((end, node) => Math.max(end, node.offset + node.text.trimEnd().length), -1);
    if (last < 0) return insert({ line: 0, character: 0 }, `${line}${newLine}`);
    const rest = /[^\r\n]*/.exec(text.slice(last))![0];      // a comment behind it stays where it is
    return insert(textDocument.positionAt(last + rest.length), `${newLine}${line}`);
}

function insert(position: TextEdit['range']['start'], newText: string): TextEdit {
    return { range: { start: position, end: position }, newText };
}
