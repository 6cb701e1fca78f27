import type { Ceiling, HalfBeam, Line } from '../ceiling/model.ts';
import type { Piece } from './model.ts';

/** The line, or the half beam along a wall, that a piece lies in: a bottom, blocking. */
export function carrierOf({ line, on }: Pick<Piece, 'line' | 'on'>, { lines, around }: Pick<Ceiling, 'lines' | 'around'>): Line | HalfBeam {
    return line === null ? around[on!] as HalfBeam : lines.find(({ name }) => name === line)!;
}

/** What that is called: the line's name, or the wall's. */
export function carrierName({ line, on }: Pick<Piece, 'line' | 'on'>): string {
    return line ?? on!;
}
