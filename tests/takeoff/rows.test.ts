import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inches, millimeters } from '../../src/quantity/rational.ts';
import { rowsOf, rowsOff } from '../../src/takeoff/rows.ts';
import { runs } from '../support/full.ts';
import { cutTo } from '../dryfit/ceilings.ts';

/** Rooms of every kind, with residue of every kind, with and without band and press, at the steps that tapes have. */
const STEPS = { '1/16"': inches('1/16'), '1/32"': inches('1/32'), '1 mm': millimeters(1), '0.5 mm': millimeters('0.5') };

test.each(Object.entries(STEPS))('cut to %s, no row is longer than the room but for its press, nor shorter than the text allows', (_, step) => {
    let rows = 0;
    fc.assert(fc.property(cutTo(step), all => {
        if (!all) return;
        rows += rowsOf(all.ceiling, all.off.pieces).length;
        expect(rowsOff(all.ceiling, all.off.pieces).map(({ part, pieces, sum, room }) => `${part} ${pieces[0]!.id} ${sum - room}`)).toEqual([]);
        for (const run of [all.ceiling.across, all.ceiling.down]) expect(run.residue.rest).toBeGreaterThanOrEqual(0);
    }), { seed: 5, numRuns: runs(60, 15) });
    expect(rows).toBeGreaterThan(400);
});

test('a row is found where each of its pieces is a step too long, or all of them are two steps too short', () => {
    const step = inches('1/32');
    let planted = 0;
    fc.assert(fc.property(cutTo(step), fc.boolean(), (all, long) => {
        if (!all) return;
        const row = rowsOf(all.ceiling, all.off.pieces).find(one => one.pieces.length > 2);
        if (!row) return;
        // past whatever the text allows this row
        const by = long ? Math.ceil((row.room + row.longer - row.sum) / row.pieces.length) + step
            : -Math.ceil((row.sum - row.room + row.shorter) / row.pieces.length) - step;
        const pieces = all.off.pieces.map(piece => row.pieces.includes(piece) ? { ...piece, cutBack: piece.cutBack + by } : piece);
        const off = rowsOff(all.ceiling, pieces);
        expect(off.map(one => [one.part, one.pieces.map(piece => piece.id), one.sum > one.room]))
            .toEqual([[row.part, row.pieces.map(piece => piece.id), long]]);
        planted++;
    }), { seed: 6, numRuns: runs(60, 15) });
    expect(planted).toBeGreaterThan(runs(15, 4));
});
