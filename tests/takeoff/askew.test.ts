import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';

/** An L whose walls stand a degree off the compass, of two depths: its beams lean to the west as they run south, and are still told from the north. */
test('in an L out of square pieces have names of their own, bays are counted from the north, and nothing is missing', async () => {
    const [layout] = await layoutsOf(readFileSync(new URL('askew.coffer', import.meta.url), 'utf8')), ceiling = layout!.ceiling!;
    expect(ceiling.lines[0]!.heading.x).toBeLessThan(0);
    const { pieces } = takeOff(ceiling), { faults, looked } = dryFit(ceiling, takeOff(ceiling));
    expect(new Set(pieces.map(({ id }) => id)).size).toBe(pieces.length);
    expect(looked.pieces).toBe(pieces.length);
    // lengths are on no mark of the tape, so what rounding opens is told, and nothing else
    expect(faults.filter(fault => fault.kind !== 'misfit' || fault.causes.length > 0 || fault.clashes.some(({ kind }) => kind !== 'rounded'))).toEqual([]);
    const bays = pieces.filter(({ part, line, on }) => part === 'side' && line === '1' && on === 'east').sort((a, b) => a.bay! - b.bay!);
    expect(bays.map(({ bay }) => bay)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    const norths = bays.map(({ box }) => box.north);
    expect(norths).toEqual([...norths].sort((a, b) => a - b));
});
