import { readFileSync } from 'node:fs';

/** One published figure, with its source beside it. */
export interface PublishedValue {
    readonly id: string;
    readonly quantity: string;
    readonly species?: string;
    readonly inputs?: Readonly<Record<string, number | string>>;
    readonly expected: number;
    readonly unit?: string;
    readonly tolerance: number;
    /** table: a cell; worked: an example worked in print; published: a printed number; derived: computed from the source's own equation. */
    readonly kind: 'table' | 'worked' | 'published' | 'derived';
    readonly source: string;
    readonly mark: string;
}

/** The figures of one file in tests/data/published whose id matches. Throws where none does: a check must check something. */
export function publishedValues(file: string, id: RegExp): PublishedValue[] {
    const { values } = JSON.parse(readFileSync(new URL(`published/${file}.json`, import.meta.url), 'utf8')) as { values: PublishedValue[] };
    const found = values.filter(value => id.test(value.id));
    if (found.length === 0) throw new Error(`No published value in ${file} matches ${id}`);
    return found;
}

/** A row of `test.each`: the figure, and its id and source as the test's name. */
export function checksOf(file: string, id: RegExp): [string, string, PublishedValue][] {
    return publishedValues(file, id).map(value => [value.id, value.source, value]);
}
