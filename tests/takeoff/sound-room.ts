import { expect } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { sumOf } from '../../src/provenance/why.ts';
import type { TakeOff } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { exampleRoom } from '../support/example-room.ts';
import type { ProfileWords } from '../support/job-builder.ts';

/** The example room with beams of these words: laid out without a trouble, every piece in the dry fit without a fault, every sum as long as its piece. */
export function soundRoom(beam: ProfileWords): { readonly ceiling: Ceiling; readonly off: TakeOff } {
    const { ceiling, troubles } = layOut(exampleRoom({}, beam));
    expect(troubles).toEqual([]);
    const off = takeOff(ceiling!), fit = dryFit(ceiling!, off);
    expect(fit.faults).toEqual([]);
    expect(fit.looked.pieces).toBe(off.pieces.length);
    for (const piece of off.pieces) expect(`${piece.id} ${sumOf(piece.why)}`).toBe(`${piece.id} ${piece.back}`);
    return { ceiling: ceiling!, off };
}
