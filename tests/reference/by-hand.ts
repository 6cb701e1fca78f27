import { expect } from 'vitest';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';

interface EndJson { angle: number; how?: string; flat?: { miter: number; bevel: number } }
export interface PieceJson {
    id: string; room: string; part: string;
    face: { ticks: number }; back: { ticks: number }; overall: { ticks: number }; long?: { ticks: number }; short?: { ticks: number };
    ends: EndJson[]; left: EndJson; right: EndJson; hand: string | null; meets: (string | null)[];
}
/** By room and piece: lengths in inches, angles in degrees. */
export type ByHand = Record<string, Record<string, Partial<Record<'face' | 'back' | 'overall' | 'left' | 'right' | 'miter' | 'bevel', number>>>>;

/** Holds pieces of a cut list against figures that were worked out outside of the program. How many figures there were. */
export function heldByHand(pieces: readonly PieceJson[], wanted: ByHand): number {
    const found = new Map(pieces.map(piece => [piece.id, piece]));
    let figures = 0;
    for (const [room, own] of Object.entries(wanted)) for (const [name, each] of Object.entries(own)) {
        const piece = found.get(`${room}.${name}`)!, what = `${room}.${name}`;
        expect(piece, what).toBeDefined();
        for (const [key, value] of Object.entries(each) as [keyof typeof each, number][]) {
            const isLength = key === 'face' || key === 'back' || key === 'overall';
            const is = isLength ? piece[key].ticks / TICKS_PER_INCH : key === 'left' || key === 'right' ? piece[key].angle : piece.left.flat![key];
            // a corner that is off the ticks is rounded to one; an angle follows from two of them
            expect(Math.abs(is - value), `${what} ${key}: ${is}, by hand ${value}`).toBeLessThan(isLength ? 3 / TICKS_PER_INCH : 0.02);
            figures++;
        }
    }
    return figures;
}
