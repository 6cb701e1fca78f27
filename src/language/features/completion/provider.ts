import type { AstNode, LangiumDocument } from 'langium';
import type { CompletionProvider } from 'langium/lsp';
import type { CompletionItem, CompletionList, CompletionParams, Range } from 'vscode-languageserver-protocol';
import * as ast from '../../generated/ast.ts';
import type { CofferServices } from '../../services.ts';
import { placeOf } from './place.ts';
import { statementAt } from './statement.ts';
import type { Suggestion } from './suggestion.ts';
import { Suggestions } from './suggest.ts';

/** Offers what may stand at the cursor, with what is written about it. */
export class CofferCompletionProvider implements CompletionProvider {
    readonly completionOptions = { triggerCharacters: ['.', '"', '/'] };
    private readonly services: CofferServices;

    constructor(services: CofferServices) {
        this.services = services;
    }

    getCompletion(document: LangiumDocument, params: CompletionParams): CompletionList {
        const { textDocument } = document;
        const offset = textDocument.offsetAt(params.position);
        const rangeFrom = (start: number): Range => ({ start: textDocument.positionAt(start), end: params.position });
        const file = document.parseResult.value;
        if (!ast.isFile(file)) return { isIncomplete: false, items: [] };
        const suggestions = (from: AstNode) => new Suggestions(this.services, document, from, params.position.line);

        const path = openPath(textDocument.getText().slice(0, offset));
        if (path !== undefined) {
            const range = rangeFrom(offset - path.length);
            return { isIncomplete: false, items: suggestions(file).paths().map(label => ({ label, kind: 17, textEdit: { range, newText: label } })) };
        }
        const statement = statementAt(document as LangiumDocument<ast.File>, offset, this.services.parser.Lexer);
        const place = statement && placeOf(statement, this.services.surroundings);
        if (!place) return { isIncomplete: false, items: [] };
        const range = rangeFrom(statement.start);
        const found = suggestions(statement.from).for(place);
        return { isIncomplete: false, items: found.map((each, i) => this.item(each, i, range)) };
    }

    private item(suggestion: Suggestion, place: number, range: Range): CompletionItem {
        const { label, kind, detail, about, snippet, first } = suggestion;
        const written = about && this.services.documentation.DocumentationProvider.getDocumentation(about);
        return {
            label, kind,
            sortText: `${first ? 0 : 1}${String(place).padStart(4, '0')}`,
            textEdit: { range, newText: snippet ?? label },
            ...snippet !== undefined && { insertTextFormat: 2 as const },
            ...detail && { detail },
            ...written && { documentation: { kind: 'markdown' as const, value: written } },
        };
    }
}

/** What is written of a path between the quotes of an import; undefined elsewhere. */
function openPath(before: string): string | undefined {
    const line = before.slice(before.lastIndexOf('\n') + 1);
    return /^\s*from\s+"([^"]*)$/.exec(line)?.[1];
}
