import type { Given } from '../provenance/source.ts';
import type { Stock } from './model.ts';

/** Fiberboard and the like: said to be MDF, or ripped from a sheet without grain. It has no growth rings, and its edges hold little. */
export function isFiberboard(part: { readonly stock?: Given<Stock> } | undefined): boolean {
    const stock = part?.stock?.value;
    return stock?.species?.value === 'mdf' || stock?.sheet?.value.grain === 'none';
}
