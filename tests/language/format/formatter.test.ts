import { URI } from 'langium';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { describe, expect, test } from 'vitest';
import { CofferFormatter, formatText } from '../../../src/language/format/index.ts';
import { createCofferServices } from '../../../src/language/services.ts';

const { shared, coffer } = createCofferServices();
const formatter = new CofferFormatter(coffer);
const options = { tabSize: 8, insertSpaces: false };
const documentOf = (text: string) => shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse('file:///room.coffer'));
const MESSY = 'room r {\nheight   8\'\n      covering gypsum   // old\n\n\n  joists 2×6 every 16"\n}\n';

describe('in the editor', () => {
    test('it is the formatter of the language', () => expect(coffer.lsp.Formatter).toBeInstanceOf(CofferFormatter));
    test('the whole file, whatever the editor is set to', () => {
        const document = documentOf(MESSY);
        const edits = formatter.formatDocument(document, { textDocument: { uri: document.uri.toString() }, options });
        expect(TextDocument.applyEdits(document.textDocument, edits)).toBe(formatText(MESSY));
        expect(edits.every(({ range: { start, end }, newText }) => document.textDocument.getText({ start, end }) !== newText)).toBe(true);
    });
    test('a selection, as it is in the whole', () => {
        const document = documentOf(MESSY);
        const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 10 } };
        const edits = formatter.formatDocumentRange(document, { textDocument: { uri: document.uri.toString() }, range, options });
        expect(TextDocument.applyEdits(document.textDocument, edits)).toBe('room r {\nheight   8\'\n  covering  gypsum  // old\n\n  joists 2×6 every 16"\n}\n');
    });
    test('nothing where the file has a mistake', () => {
        const document = documentOf('room r {\nheight =  8\'\n}\n');
        expect(formatter.formatDocument(document, { textDocument: { uri: document.uri.toString() }, options })).toEqual([]);
    });
});
