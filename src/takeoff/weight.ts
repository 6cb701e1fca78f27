import type { Ceiling } from '../ceiling/model.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import { poundsPerCubicFoot } from '../data/species.ts';
import { TICKS_PER_FOOT } from '../quantity/ticks.ts';
import type { Piece } from './model.ts';

/** What hangs on a line or on a half beam, in pounds; `unknown`: names of stocks of which no species is said, or no table has its weight. */
interface Hanging { readonly pounds: number; readonly unknown: readonly string[] }

/**
 * Weight of everything that a beam carries, its blocking, its sides, and the trim along it, by the beam's line or wall: full sections of dressed boards at
 * 12 % moisture content, so without rabbets and copes, and without what is fastened to it later.
 */
export function hangingOn(of: string, ceiling: Ceiling, pieces: readonly Piece[]): Hanging {
    let pounds = 0;
    const unknown = new Set<string>();
    for (const piece of pieces) {
        if (beamOf(piece, ceiling) !== of) continue;
        const density = piece.stock.species && poundsPerCubicFoot(piece.stock.species.value);
        if (density === undefined) unknown.add(piece.stock.name);
        else pounds += (piece.face + piece.back) / 2 * piece.width * piece.thickness / TICKS_PER_FOOT ** 3 * density;
    }
    return { pounds, unknown: [...unknown] };
}

/** The line or the wall's half beam that a piece hangs on; a band is fastened to its wall. */
function beamOf({ line, part, on, coffer }: Piece, ceiling: Ceiling): string | null {
    if (line !== null || part === 'band') return line;
    if (part !== 'trim') return on;
    const { edges } = arrangedOf(ceiling).exact.coffers.find(({ number }) => number === coffer)!;
    return edges.find(edge => edge.on === on)!.along[0]!;
}
