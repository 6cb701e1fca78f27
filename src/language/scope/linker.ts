import { Cancellation, DefaultLinker, interruptAndCheck, type AstNode, type CstNode, type LangiumDocument, type LinkingError, type Reference, type ReferenceInfo } from 'langium';
import { LeanReference, type Asked } from './lean-reference.ts';
import { referencesIn } from './references-in.ts';

/** Links a file in one go: a file is small, and stopping at every word would cost more than finding what it means. */
export class CofferLinker extends DefaultLinker {
    override async link(document: LangiumDocument, cancelToken = Cancellation.CancellationToken.None): Promise<void> {
        await interruptAndCheck(cancelToken);
        for (const info of referencesIn(document.parseResult.value)) this.doLink(info, document);
    }

    override buildReference(node: AstNode, property: string, refNode: CstNode | undefined, refText: string): Reference {
        return new LeanReference(this as unknown as Asked, node, property, refNode, refText);
    }

    /** What is wrong is put into words when the findings are asked for (findings/links.ts), not at every keystroke. */
    protected override createLinkingError(info: ReferenceInfo): LinkingError {
        return { info, message: `Nothing here is called ${info.reference.$refText}.` };
    }
}
