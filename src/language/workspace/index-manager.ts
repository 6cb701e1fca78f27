import { DefaultIndexManager, type Cancellation, type LangiumDocument, type URI } from 'langium';
import type { CofferSharedServices } from '../services.ts';
import type { Jobs } from './jobs.ts';

/** Keeps the list of jobs beside the index of names: both are made from what has just been parsed. */
export class CofferIndexManager extends DefaultIndexManager {
    private readonly jobs: Jobs;

    constructor(services: CofferSharedServices) {
        super(services);
        this.jobs = services.workspace.Jobs;
    }

    override async updateContent(document: LangiumDocument, cancelToken?: Cancellation.CancellationToken): Promise<void> {
        this.jobs.update(document);
        await super.updateContent(document, cancelToken);
    }

    override remove(uri: URI): void {
        this.jobs.remove(uri.toString());
        super.remove(uri);
    }
}
