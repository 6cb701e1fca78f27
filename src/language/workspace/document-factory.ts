import { DefaultLangiumDocumentFactory, isOperationCancelled, type AstNode, type Cancellation, type DocumentState, type LangiumDocument, type LangiumSharedCoreServices, type ParseResult, type ParserOptions, type TextDocument, type URI } from 'langium';
import type { CofferServices } from '../coffer-services.ts';
import { faultMessage } from '../parser/messages.ts';
import type { CofferDocuments } from './documents.ts';
import { MOST_WORDS_OF_ALL, NO_ROOM_LEFT } from './most-files.ts';
import { belongsTo } from './services-of.ts';

type Mutable<T> = Parameters<DefaultLangiumDocumentFactory['update']>[0] & T;

/** Makes documents that know their services, and that survive the disappearance of their file. */
export class CofferDocumentFactory extends DefaultLangiumDocumentFactory {
    private readonly registry: LangiumSharedCoreServices['ServiceRegistry'];
    private readonly workspace: LangiumSharedCoreServices['workspace'];
    private readonly refused = new WeakSet<ParseResult>();
    /** Words and signs of all files together; with as many no further file is read. */
    mostWords = MOST_WORDS_OF_ALL;

    constructor(services: LangiumSharedCoreServices) {
        super(services);
        this.registry = services.ServiceRegistry;
        this.workspace = services.workspace;
    }

    protected override parse<T extends AstNode>(uri: URI, text: string, options?: ParserOptions): ParseResult<T> {
        return this.hasRoom(uri) ? super.parse<T>(uri, text, options) : this.refusal(super.parse<T>(uri, '', options));
    }

    protected override async parseAsync<T extends AstNode>(uri: URI, text: string, cancelToken: Cancellation.CancellationToken): Promise<ParseResult<T>> {
        return this.hasRoom(uri) ? super.parseAsync<T>(uri, text, cancelToken) : this.refusal(await super.parseAsync<T>(uri, '', cancelToken));
    }

    private hasRoom(uri: URI): boolean {
        return this.documents.wordsBeside(uri) < this.mostWords;
    }

    /** Made with the help of this one. */
    private get documents(): CofferDocuments {
        return this.workspace.LangiumDocuments as CofferDocuments;
    }

    private refusal<T extends ParseResult>(nothing: T): T {
        nothing.lexerErrors.push({ offset: 0, line: 1, column: 1, length: 1, message: NO_ROOM_LEFT });
        this.refused.add(nothing);
        return nothing;
    }

    protected override createLangiumDocument<T extends AstNode>(
        result: ParseResult<T>, uri: URI, textDocument?: TextDocument, text?: string,
    ): LangiumDocument<T> {
        // what is not read is not kept either, but where it is the editor's
        const document = super.createLangiumDocument(result, uri, textDocument, this.refused.has(result) ? '' : text);
        belongsTo(document, this.registry.getServices(uri) as CofferServices);
        return document;
    }

    /**
     * A file can vanish between the notice that it changed and the reading of it. Then it is empty until the notice of its
     * removal arrives; an error here would stop the building of every other file, now and at each later edit.
     */
    override async update<T extends AstNode>(document: Mutable<LangiumDocument<T>>, cancelToken: Parameters<DefaultLangiumDocumentFactory['update']>[1]): Promise<LangiumDocument<T>> {
        try {
            const updated = await super.update(document, cancelToken);
            this.documents.recount(updated);
            return updated;
        } catch (error) {
            if (isOperationCancelled(error)) throw error;
            document.state = this.empty(document);
            return document;
        }
    }

    /** Leaves a document without content and with the reason as its one error, until its text changes. */
    giveUp(document: Mutable<LangiumDocument>, error: unknown): void {
        this.empty(document);
        document.parseResult.lexerErrors.push({ offset: 0, line: 1, column: 1, length: 1, message: faultMessage(error) });
        document.references = [];
    }

    /** Returns the state of what it holds then. */
    private empty<T extends AstNode>(document: Mutable<LangiumDocument<T>>): DocumentState {
        const empty = this.fromString<T>('', document.uri);
        document.parseResult = empty.parseResult;
        Object.assign(document.parseResult.value, { $document: document });
        return empty.state;
    }
}
