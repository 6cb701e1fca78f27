import type { AstNode, LangiumDocument, URI } from 'langium';
import type { Statement } from '../job/statement.ts';
import { kept } from '../plain/kept.ts';
import { statementsOf } from './statements.ts';
import type { Tables } from './workspace/tables.ts';

/** What files say, and the tables that these name, each by the name it is told by. Of a file it is worked out once for as long as its text stays. */
export function statedFiles(
    documents: readonly LangiumDocument[], tables: Tables, nameOf: (uri: string) => string,
): { readonly name: string; readonly statements: readonly Statement[]; readonly isTable?: true }[] {
    const named = new Map(documents.flatMap(document => tables.namedIn(document)).map(uri => [uri.toString(), uri]));
    return [
        ...documents.map(document => ({ name: nameOf(document.uri.toString()), statements: statementsKept(document.parseResult.value, document) })),
        ...[...named.values()].flatMap(uri => {
            const table = tables.at(uri);
            return table && 'text' in table ? [{ name: nameOf(uri.toString()), statements: rowsOf(table.text, uri), isTable: true as const }] : [];
        }),
    ];
}

const statementsKept = kept((_tree: AstNode, document: LangiumDocument) => statementsOf(document));

/** Every row that is not empty; those that say the same are known by that, wherever they stand. */
function rowsOf(text: string, uri: URI): Statement[] {
    return text.split(/\r\n|[\n\r]/).flatMap((row, line): Statement[] => {
        const value = row.trim(), range = { start: { line, character: 0 }, end: { line, character: row.length } };
        return value === '' ? [] : [{ within: ['row'], what: '', value, mark: value.replace(/\s*([,;\t])\s*/g, '$1'), at: { uri: uri.toString(), range } }];
    });
}
