import type { LangiumDocument } from 'langium';
import type { Formatter } from 'langium/lsp';
import type { DocumentFormattingParams, DocumentOnTypeFormattingParams, DocumentRangeFormattingParams, TextEdit } from 'vscode-languageserver-protocol';
import { formatEdits, type Front } from './format-text.ts';

/** Formatting in the editor. There is one form, so the editor's own settings are not asked. */
export class CofferFormatter implements Formatter {
    constructor(private readonly services: Front) {}

    formatDocument(document: LangiumDocument, _params: DocumentFormattingParams): TextEdit[] {
        const edits = formatEdits(document.textDocument.getText(), this.services, document.parseResult);
        return 'reason' in edits ? [] : edits.map(({ offset, length, text }) => ({
            range: { start: document.textDocument.positionAt(offset), end: document.textDocument.positionAt(offset + length) },
            newText: text,
        }));
    }

    /** The part of the whole that lies in the range: columns are those of the whole file. */
    formatDocumentRange(document: LangiumDocument, params: DocumentRangeFormattingParams): TextEdit[] {
        const { start, end } = params.range;
        return this.formatDocument(document, params).filter(({ range }) => range.end.line >= start.line && range.start.line <= end.line);
    }

    formatDocumentOnType(_document: LangiumDocument, _params: DocumentOnTypeFormattingParams): TextEdit[] {
        return [];
    }

    get formatOnTypeOptions(): undefined {
        return undefined;
    }
}
