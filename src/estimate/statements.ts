import { sameSource, type Given } from '../provenance/source.ts';

/** Whether two rates are the same words of the text, as where rooms under different rates share what is said above them. */
export function sameStatement(a: Given<unknown> | undefined, b: Given<unknown> | undefined): boolean {
    return a === b || a !== undefined && b !== undefined && sameSource(a.at, b.at);
}

/** Something that is said, with the numbers of the parts of the work that it holds for. */
export interface Statement<T> { readonly given: Given<T>; readonly parts: readonly number[] }

/** What parts of the work say; what several of them have from the same words is one statement. In the order of the parts. */
export function statementsOf<T>(said: readonly (readonly Given<T>[])[]): Statement<T>[] {
    const all: { given: Given<T>; parts: number[] }[] = [];
    for (const [part, own] of said.entries()) {
        for (const given of own) {
            const known = all.find(other => !other.parts.includes(part) && sameStatement(other.given, given));
            if (known) known.parts.push(part);
            else all.push({ given, parts: [part] });
        }
    }
    return all;
}
