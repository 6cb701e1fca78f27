import type { LangiumDocument } from 'langium';
import type { CompletionProvider } from 'langium/lsp';
import type { CompletionItem, CompletionList, CompletionParams, Range } from 'vscode-languageserver-protocol';
import * as ast from '../../generated/ast.ts';
import type { CofferServices } from '../../coffer-services.ts';
import { asCode, asWritten, inWords, together, type Shown } from '../../../text/markdown.ts';
import { markup } from '../editor.ts';
import { signature } from '../explain.ts';
import { importPaths } from './paths.ts';
import { placeOf } from './place.ts';
import { filledIn } from './plain-snippet.ts';
import type { NamesIn } from './plain-names.ts';
import { statementAt } from './statement.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';
import { Suggestions } from './suggest.ts';

/** A rule that a comment may allow. */
interface Allowable { readonly name: string; readonly title: string; readonly explanation: string }

/** What whoever knows about ceilings can add. */
interface Knowledge { readonly namesIn?: NamesIn; readonly rules?: readonly Allowable[] }

/** Offers what may stand at the cursor, with what is written about it. */
export class CofferCompletionProvider implements CompletionProvider {
    readonly completionOptions = { triggerCharacters: ['.', '"', '/'] };

    constructor(private readonly services: CofferServices, private readonly knowledge: Knowledge = {}) {}

    getCompletion(document: LangiumDocument, params: CompletionParams): CompletionList {
        return { isIncomplete: false, items: this.items(document, params) };
    }

    private items(document: LangiumDocument, { position }: CompletionParams): CompletionItem[] {
        const { textDocument } = document;
        const offset = textDocument.offsetAt(position);
        const file = document.parseResult.value;
        if (!ast.isFile(file)) return [];
        const line = textDocument.getText({ start: { line: position.line, character: 0 }, end: { line: position.line + 1, character: 0 } }).replace(/[\r\n]+$/, '');
        const before = line.slice(0, position.character);
        const rangeTo = (start: number, end = position.character): Range =>
            ({ start: { line: position.line, character: start }, end: { line: position.line, character: end } });
        const show = (found: readonly Suggestion[], range: Range): CompletionItem[] => found.map((each, i) => this.item(each, i, range, /^[ \t]*/.exec(line)![0]));

        const allowed = /\/\/[ \t]*allow[ \t]+([\w-]*)$/.exec(before)?.[1];
        if (allowed !== undefined) return show(this.allowances(), rangeTo(before.length - allowed.length));

        const path = /^\s*from\s+"([^"]*)$/.exec(before)?.[1];
        if (path !== undefined) {
            const rest = /^[^"]*(?=")/.exec(line.slice(position.character))?.[0] ?? '';
            return show(importPaths(document, this.services.shared), rangeTo(before.length - path.length, position.character + rest.length));
        }
        const quoted = /\s"([^"]*)$/.exec(before)?.[1];               // an inch mark stands behind a figure
        const statement = statementAt(
            document as LangiumDocument<ast.File>, quoted === undefined ? offset : offset - quoted.length - 1, this.services.parser.Lexer,
        );
        const place = statement && placeOf(statement, this.services.surroundings);
        if (!place) return [];
        const found = new Suggestions(this.services, document, statement.from, position.line, this.knowledge.namesIn ?? (() => undefined)).for(place);
        if (quoted === undefined) return show(found, { start: textDocument.positionAt(statement.start), end: position });
        const rest = /^[^"]*"/.exec(line.slice(position.character))?.[0] ?? '';
        return show(found.filter(({ label }) => label.startsWith('"')), rangeTo(before.length - quoted.length - 1, position.character + rest.length));
    }

    private allowances(): Suggestion[] {
        return (this.knowledge.rules ?? []).map(({ name, title, explanation }) => ({ label: name, kind: PICTURE.word, detail: title, written: explanation, snippet: `${name}: $1` }));
    }

    private item(suggestion: Suggestion, place: number, range: Range, indentation: string): CompletionItem {
        const { label, kind, detail, snippet, first, last, opens, importing } = suggestion;
        const { snippets, opensList, markdownInCompletion } = this.services.editor;
        const written = this.written(suggestion);
        const isSnippet = snippet !== undefined && snippet !== label && snippets;
        const newText = snippet === undefined ? label : isSnippet ? snippet : filledIn(snippet, indentation);
        return {
            label, kind,
            sortText: `${first ? 0 : last ? 2 : 1}${String(place).padStart(4, '0')}`,
            textEdit: { range, newText },
            ...isSnippet && { insertTextFormat: 2 as const },
            ...isSnippet && opens && opensList && { command: { title: '', command: opensList } },
            ...(importing ? { detail: `from "${importing.path}"`, additionalTextEdits: [importing.edit] } : detail && { detail }),
            ...written && { documentation: markup(written, markdownInCompletion) },
        };
    }

    /** How it is declared, with its type and its default, and what is written about it. */
    private written({ about, written, importing }: Suggestion): Shown | undefined {
        if (!about) return written === undefined ? undefined : asWritten(written);
        const documentation = this.services.documentation.DocumentationProvider.getDocumentation(about);
        return together([asCode(signature(about)), ...documentation ? [asWritten(documentation)] : [], ...importing ? [inWords(`Is taken from "${importing.path}".`)] : []]);
    }
}
