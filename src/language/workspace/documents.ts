import { DefaultLangiumDocuments, type LangiumDocument, type URI } from 'langium';

/** Finds a document by its address as it stands; Langium takes the address apart each time, which is most of the cost of following imports. */
export class CofferDocuments extends DefaultLangiumDocuments {
    private readonly byAddress = new Map<string, LangiumDocument>();

    override addDocument(document: LangiumDocument): void {
        super.addDocument(document);
        this.byAddress.set(document.uri.toString(), document);
    }

    override getDocument(uri: URI): LangiumDocument | undefined {
        return this.byAddress.get(uri.toString()) ?? super.getDocument(uri);
    }

    override hasDocument(uri: URI): boolean {
        return this.byAddress.has(uri.toString()) || super.hasDocument(uri);
    }

    override deleteDocument(uri: URI): LangiumDocument | undefined {
        const gone = super.deleteDocument(uri);
        if (gone) this.byAddress.delete(gone.uri.toString());
        return gone;
    }

    override deleteDocuments(folder: URI): LangiumDocument[] {
        const gone = super.deleteDocuments(folder);
        for (const { uri } of gone) this.byAddress.delete(uri.toString());
        return gone;
    }
}
