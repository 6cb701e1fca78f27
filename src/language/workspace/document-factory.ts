import { DefaultLangiumDocumentFactory, isOperationCancelled, type AstNode, type DocumentState, type LangiumDocument, type LangiumSharedCoreServices, type ParseResult, type TextDocument, type URI } from 'langium';
import type { CofferServices } from '../coffer-services.ts';
import { faultMessage } from '../parser/messages.ts';
import { belongsTo } from './services-of.ts';

type Mutable<T> = Parameters<DefaultLangiumDocumentFactory['update']>[0] & T;

/** Makes documents that know their services, and that survive the disappearance of their file. */
export class CofferDocumentFactory extends DefaultLangiumDocumentFactory {
    private readonly registry: LangiumSharedCoreServices['ServiceRegistry'];

    constructor(services: LangiumSharedCoreServices) {
        super(services);
        this.registry = services.ServiceRegistry;
    }

    protected override createLangiumDocument<T extends AstNode>(
        result: ParseResult<T>, uri: URI, textDocument?: TextDocument, text?: string,
    ): LangiumDocument<T> {
        const document = super.createLangiumDocument(result, uri, textDocument, text);
        belongsTo(document, this.registry.getServices(uri) as CofferServices);
        return document;
    }

    /**
     * A file can vanish between the notice that it changed and the reading of it. Then it is empty until the notice of its
     * removal arrives; an error here would stop the building of every other file, now and at each later edit.
     */
    override async update<T extends AstNode>(document: Mutable<LangiumDocument<T>>, cancelToken: Parameters<DefaultLangiumDocumentFactory['update']>[1]): Promise<LangiumDocument<T>> {
        try {
            return await super.update(document, cancelToken);
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
