import { Cancellation, DefaultLinker, interruptAndCheck, type LangiumDocument, type LinkingError, type ReferenceInfo } from 'langium';
import { referencesIn } from './references-in.ts';

/** Links a file in one go: a file is small, and stopping at every word would cost more than finding what it means. */
export class CofferLinker extends DefaultLinker {
    override async link(document: LangiumDocument, cancelToken = Cancellation.CancellationToken.None): Promise<void> {
        await interruptAndCheck(cancelToken);
        for (const info of referencesIn(document.parseResult.value)) this.doLink(info, document);
    }

    /** What is wrong is put into words when the findings are asked for (findings/links.ts), not at every keystroke. */
    protected override createLinkingError(info: ReferenceInfo): LinkingError {
        return { info, message: `Nothing here is called ${info.reference.$refText}.` };
    }
}
