import type { LangiumDocument } from 'langium';
import type { Alternate } from '../job/alternate.ts';
import { readAlternates } from './elaborate/alternates.ts';
import { House } from './elaborate/house.ts';
import * as ast from './generated/ast.ts';

/** Several alternates of one file together, in the order they are named: where two change the same, the later one holds. */
export function combinedAlternate(document: LangiumDocument, names: readonly string[]): Alternate | undefined {
    const file = document.parseResult.value;
    if (!ast.isFile(file)) return undefined;
    const declarations = names.flatMap(name => file.items.filter(ast.isAlternate).find(item => item.name === name) ?? []);
    return declarations.length === names.length ? readAlternates(declarations, new House(document)) : undefined;
}
