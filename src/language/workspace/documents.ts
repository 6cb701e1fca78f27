import { DefaultLangiumDocuments, type LangiumDocument, type URI } from 'langium';
import type { LineReport } from '../lexer/coffer-lexer.ts';

/** Finds a document by its address as it stands; Langium takes the address apart each time, which is most of the cost of following imports. */
export class CofferDocuments extends DefaultLangiumDocuments {
    private readonly byAddress = new Map<string, LangiumDocument>();
    private readonly words = new Map<string, number>();
    private allWords = 0;

    /** Words and signs of all documents but one. */
    wordsBeside(uri: URI): number {
        return this.allWords - (this.words.get(uri.toString()) ?? 0);
    }

    /** To be called whenever one that is here has been parsed anew. */
    recount({ uri, parseResult }: LangiumDocument): void {
        if (this.byAddress.has(uri.toString())) this.count(uri, (parseResult.lexerReport as LineReport | undefined)?.words ?? 0);
    }

    private count(uri: URI, words: number): void {
        this.allWords = this.wordsBeside(uri) + words;
        this.words.set(uri.toString(), words);
    }

    override addDocument(document: LangiumDocument): void {
        super.addDocument(document);
        this.byAddress.set(document.uri.toString(), document);
        this.recount(document);
    }

    override getDocument(uri: URI): LangiumDocument | undefined {
        return this.byAddress.get(uri.toString()) ?? super.getDocument(uri);
    }

    override hasDocument(uri: URI): boolean {
        return this.byAddress.has(uri.toString()) || super.hasDocument(uri);
    }

    override deleteDocument(uri: URI): LangiumDocument | undefined {
        const gone = super.deleteDocument(uri);
        if (gone) this.forget(gone.uri);
        return gone;
    }

    override deleteDocuments(folder: URI): LangiumDocument[] {
        const gone = super.deleteDocuments(folder);
        for (const { uri } of gone) this.forget(uri);
        return gone;
    }

    private forget(uri: URI): void {
        this.count(uri, 0);
        this.words.delete(uri.toString());
        this.byAddress.delete(uri.toString());
    }
}
