import type { AstNode, LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import type { DocumentSymbol, SymbolKind } from 'vscode-languageserver-types';
import * as ast from '../generated/ast.ts';
import { sourceOf, sourceOfKeyword, sourceOfProperty } from '../types/place.ts';
import { oneLine } from './explain.ts';

/** The protocol's numbers for the little pictures that come nearest. */
const PICTURES = { file: 1, module: 2, class: 5, property: 7, constant: 14, object: 19, event: 24 } as const satisfies Record<string, SymbolKind>;

/** The outline of a file: jobs, stocks, profiles with their parts, rooms with their walls, blocks and fixtures. */
export class CofferOutlineProvider implements DocumentSymbolProvider {
    getSymbols(document: LangiumDocument): DocumentSymbol[] {
        const file = document.parseResult.value;
        return ast.isFile(file) ? file.items.flatMap(item => symbolOfItem(item)) : [];
    }
}

function symbolOfItem(item: ast.Item): DocumentSymbol[] {
    switch (item.$type) {
        case 'Stock': return symbol(item, item.name, oneOf(item, 'size', 'species') ?? 'stock', PICTURES.constant);
        case 'Profile': return symbol(item, item.name, 'profile', PICTURES.class);
        case 'Room': return symbol(item, item.name, item.title ?? 'room', PICTURES.module);
        case 'Job': return symbol(item, item.title || 'job', 'job', PICTURES.file, 'title');
        case 'Alternate': return symbol(item, item.name, item.title ?? 'alternate', PICTURES.event);
        case 'Let': return symbol(item, item.name, item.value ? oneLine(item.value) : 'let', PICTURES.constant);
        case 'Labor': case 'Bid': return symbol(item, item.$type.toLowerCase(), '', PICTURES.object);
        case 'Kind': case 'Words': case 'Quantity': case 'Unit': return symbol(item, item.name, item.$type.toLowerCase(), PICTURES.class);
        default: return [];
    }
}

/** Members that are worth a line in the outline: things with a name, and blocks. */
function symbolsOfBody(body: ast.Body | undefined): DocumentSymbol[] {
    return (body?.members ?? []).flatMap(member => {
        if (ast.isFixture(member)) return symbol(member, `${member.kind} ${member.name ?? ''}`, member.values.map(oneLine).join(', '), PICTURES.object);
        if (ast.isLine(member) && member.body) return symbol(member, member.path.map(word => word.$refText).join('.'), member.values.map(oneLine).join(', '), PICTURES.property, 'path');
        return [];
    });
}

function symbol(node: AstNode & { body?: ast.Body }, name: string | undefined, detail: string, kind: SymbolKind, nameIn = 'name'): DocumentSymbol[] {
    if (!name?.trim() || !node.$cstNode) return [];
    const named = sourceOfProperty(node, nameIn).range;
    const whole = sourceOf(node).range;
    const selectionRange = ast.isLabor(node) || ast.isBid(node) ? sourceOfKeyword(node, node.$type.toLowerCase()).range : named;
    return [{ name: name.trim(), detail, kind, range: whole, selectionRange, children: symbolsOfBody(node.body) }];
}

/** What the first of some properties says that is said at all. */
function oneOf(item: ast.Stock, ...properties: readonly string[]): string | undefined {
    for (const property of properties) {
        const line = item.body?.members.find(member => ast.isLine(member) && member.path[0]?.$refText === property);
        if (ast.isLine(line) && line.values[0]) return oneLine(line.values[0]);
    }
    return undefined;
}
