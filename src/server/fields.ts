import { URI } from 'langium';

/** What a message of the editor's holds, each field of it perhaps not what it should be: another version of the extension may have sent anything. */
export type Unsure<Params> = { readonly [Field in keyof Params]?: unknown };

export function fieldsOf<Params>(params: unknown): Unsure<Params> {
    return typeof params === 'object' && params !== null ? params as Unsure<Params> : {};
}

/** An address as it was sent; undefined where it is none, as one with half a character, which nobody could ask about. */
export function addressIn(value: unknown): string | undefined {
    if (typeof value !== 'string') return undefined;
    try {
        URI.parse(value).toString();
        return value;
    } catch {
        return undefined;
    }
}
