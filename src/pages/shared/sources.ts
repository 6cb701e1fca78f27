import type { Source } from '../../provenance/source.ts';
import { Numbered } from '../../plain/at-key.ts';

/**
 * The places in the text that a page leads to. A page's markup names them by number (`data-at="12"`), so that it is short
 * and, once printed or sent on, says nothing of the machine it was made on.
 */
export class Sources {
    private readonly numbered = new Numbered<Source>();

    get list(): readonly Source[] {
        return this.numbered.list;
    }

    /** The number of a place, the same for the same place. */
    number(source: Source): number {
        const { uri, range: { start, end } } = source;
        return this.numbered.at(`${uri}#${start.line}:${start.character}-${end.line}:${end.character}`, () => source);
    }
}
