import type { Source } from '../../provenance/source.ts';

/**
 * The places in the text that a page leads to. A page's markup names them by number (`data-at="12"`), so that it is short
 * and, once printed or sent on, says nothing of the machine it was made on.
 */
export class Sources {
    readonly list: Source[] = [];
    private readonly numbers = new Map<string, number>();

    /** The number of a place, the same for the same place. */
    number(source: Source): number {
        const { uri, range: { start, end } } = source;
        const key = `${uri}#${start.line}:${start.character}-${end.line}:${end.character}`;
        let number = this.numbers.get(key);
        if (number === undefined) {
            this.numbers.set(key, number = this.list.length);
            this.list.push(source);
        }
        return number;
    }
}
