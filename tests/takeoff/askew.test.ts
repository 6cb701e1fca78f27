import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { baysOf } from '../../src/ceiling/bays.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Piece } from '../../src/takeoff/model.ts';
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

/** At 45 degrees and fanned: the ends of a channel stand at an angle, and no spacer comes into what stands there. */
test.each([[0, 1], [1, 0.1]])('spacers of beams that run askew stand in their channels, as near to their ends as they may: room %s', async (at, leans) => {
    const { ceiling } = (await layoutsOf(readFileSync(new URL('spacers-askew.coffer', import.meta.url), 'utf8')))[at]!, off = takeOff(ceiling!);
    const spacers = off.pieces.filter(({ part }) => part === 'spacer'), inch = 16256, { faults } = dryFit(ceiling!, off);
    expect(faults.filter(fault => fault.kind !== 'misfit' || fault.clashes.some(({ kind }) => kind !== 'rounded'))).toEqual([]);
    for (const line of ceiling!.lines) {
        const { x, y } = line.heading, long = Math.hypot(x, y), along = (p: { x: number; y: number }): number => (p.x * x + p.y * y) / long;
        for (const bay of baysOf(line)) {
            const mine = spacers.filter(piece => piece.line === line.name && piece.bay === bay.number);
            const middles = mine.map(({ corners }) => corners.reduce((sum, corner) => sum + along(corner), 0) / 4 / inch);
            // 6" from the face on the center of the line: more than half of 3/4" and of 5 1/2" across at 45 degrees, which is 3 1/8"
            expect(Math.abs(middles[0]! - bay.start / inch - 6)).toBeLessThan(0.001);
            expect(Math.abs(bay.end / inch - middles.at(-1)! - 6)).toBeLessThan(0.001);
            expect(Math.max(...middles.slice(1).map((middle, i) => middle - middles[i]!), 0)).toBeLessThanOrEqual(24.001);
            expect(bay.leans.every(lean => lean <= leans)).toBe(true);
            for (const { corners } of mine) for (const p of corners) {
                const aside = Math.abs((p.x - line.spot.x) * y - (p.y - line.spot.y) * x) / long / inch;
                expect(Math.abs(aside - 2.75)).toBeLessThan(0.001);
            }
        }
    }
    // one that hangs elsewhere is seen
    const moved = spacers[0]!.corners.map(p => ({ x: p.x + 4 * inch, y: p.y + 4 * inch })) as unknown as Piece['corners'];
    const off45 = off.pieces.map(piece => (piece === spacers[0] ? { ...piece, corners: moved } : piece));
    expect(dryFit(ceiling!, { ...off, pieces: off45 }).faults.length).toBeGreaterThan(faults.length);
});
