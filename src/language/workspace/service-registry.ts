import { DefaultServiceRegistry, type URI } from 'langium';
import type { LangiumServices } from 'langium/lsp';

/**
 * Finds the language of a document. A text that was never saved has no suffix to be known by, and once it is closed the
 * editor's word for its language is gone too, while work on it may still be waiting: it is ours all the same. So is a
 * file that is called `.coffer` and nothing else, which counts as one without a suffix.
 */
export class CofferServiceRegistry extends DefaultServiceRegistry {
    override getServices(uri: URI): LangiumServices {
        const [only] = this.all;
        return only && (uri.scheme === 'untitled' || uri.path.endsWith('/.coffer')) ? only as LangiumServices : super.getServices(uri) as LangiumServices;
    }
}
