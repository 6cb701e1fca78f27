import type { AstNode, LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import type { DocumentSymbol, SymbolKind } from 'vscode-languageserver-types';
import { cleanText } from '../../text/clean-text.ts';
import * as ast from '../generated/ast.ts';
import { sourceOf, sourceOfKeyword, sourceOfProperty } from '../types/place.ts';
import { oneLine } from './explain.ts';

/** The protocol's numbers for the little pictures that come nearest. */
const PICTURES = { file: 1, module: 2, class: 5, property: 7, constant: 14, object: 19, event: 24 } as const satisfies Record<string, SymbolKind>;

/** What is computed of a thing, in a few words, for whoever knows it: `12 coffers`. */
export type Computed = (node: AstNode) => string | undefined;
const NOTHING_COMPUTED: Computed = () => undefined;

/** The outline of a file: jobs, stocks, profiles with their parts, rooms with their walls, blocks and fixtures. */
export class CofferOutlineProvider implements DocumentSymbolProvider {
    constructor(private readonly computedIn: (document: LangiumDocument) => Computed = () => NOTHING_COMPUTED) {}

    getSymbols(document: LangiumDocument): DocumentSymbol[] {
        const file = document.parseResult.value;
        return ast.isFile(file) ? symbolsOfFile(file, this.computedIn(document)) : [];
    }
}

export function symbolsOfFile(file: ast.File, computed: Computed = NOTHING_COMPUTED): DocumentSymbol[] {
    return file.items.flatMap(item => symbolOfItem(item, computed));
}

/** A declaration as a line of the outline; none where it has no name. */
export function symbolOfItem(item: ast.Item, computed: Computed = NOTHING_COMPUTED): DocumentSymbol[] {
    const symbol = (node: AstNode & { body?: ast.Body }, name: string | undefined, detail: string, kind: SymbolKind, nameIn?: string) =>
        symbolOf(node, name, detail, kind, computed, nameIn);
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
function symbolsOfBody(body: ast.Body | undefined, computed: Computed): DocumentSymbol[] {
    return (body?.members ?? []).flatMap(member => {
        if (ast.isFixture(member)) return symbolOf(member, `${member.kind} ${member.name ?? ''}`, member.values.map(oneLine).join(', '), PICTURES.object, computed);
        if (ast.isLine(member) && member.body) return symbolOf(member, member.path.map(word => word.$refText).join('.'), member.values.map(oneLine).join(', '), PICTURES.property, computed, 'path');
        return [];
    });
}

function symbolOf(node: AstNode & { body?: ast.Body }, name: string | undefined, said: string, kind: SymbolKind, computed: Computed, nameIn = 'name'): DocumentSymbol[] {
    if (!name?.trim() || !node.$cstNode) return [];
    const named = sourceOfProperty(node, nameIn).range;
    const whole = sourceOf(node).range;
    const selectionRange = ast.isLabor(node) || ast.isBid(node) ? sourceOfKeyword(node, node.$type.toLowerCase()).range : named;
    const detail = cleanText([said, computed(node)].filter(part => part).join(', '));
    return [{ name: cleanText(name).trim(), detail, kind, range: whole, selectionRange, children: symbolsOfBody(node.body, computed) }];
}

/** What the first of some properties says that is said at all. */
function oneOf(item: ast.Stock, ...properties: readonly string[]): string | undefined {
    for (const property of properties) {
        const line = item.body?.members.find(member => ast.isLine(member) && member.path[0]?.$refText === property);
        if (ast.isLine(line) && line.values[0]) return oneLine(line.values[0]);
    }
    return undefined;
}
