import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { checksOf, type PublishedValue } from './published.ts';

/** A square room with N beams of outer width w each way, nothing round the walls, as the layout divides it. */
function runOf(value: PublishedValue, unit: number) {
    const { R, w, N } = value.inputs as Record<'R' | 'w' | 'N', number>;
    const b = jobBuilder();
    const thickness = unit === TICKS_PER_MM ? 19 : 0.75;
    const board = b.stock('board', { thickness: thickness * unit, width: (w - 2 * thickness) * unit, lengths: ["16'"] });
    const side = b.stock('side', { thickness: thickness * unit, width: 7 * unit * (unit === TICKS_PER_MM ? 20 : 1), lengths: ["16'"] });
    const beams = b.profile('beam', { blocking: { stock: board }, sides: { stock: side }, bottom: { stock: board } });
    const layout = layOut(b.room('room', { width: R * unit, length: R * unit, north: { coffers: N + 1 }, east: { coffers: N + 1 }, beams, through: 'north-south' }));
    expect(layout.ceiling, JSON.stringify(layout.troubles)).toBeDefined();
    return layout.ceiling!.across;
}

describe('equal coffers in a run', () => {
    test.each(checksOf('spacing', /^coffer\./))('%s: %s', (id, _source, value) => {
        const unit = id.includes('mm') ? TICKS_PER_MM : TICKS_PER_INCH;
        const run = runOf(value, unit);
        const middle = (i: number): number => (run.lines[i]!.low + run.lines[i]!.high) / 2;
        const figures = id.endsWith('.gap') ? run.coffers
            : id.endsWith('.pitch') ? run.lines.slice(1).map((_, i) => middle(i + 1) - middle(i))
                : [middle(0) - run.start];
        expect(figures.length).toBeGreaterThan(0);
        // A position is rounded to the whole tick, so two of them can be one tick off together.
        for (const ticks of figures) expect(Math.abs(ticks / unit - value.expected)).toBeLessThanOrEqual(value.tolerance + 1 / unit);
    });
});
