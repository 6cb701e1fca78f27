import { expect, test } from 'vitest';
import { FIELD_GAPS } from '../../src/data/gaps.ts';
import { OPEN_JOINT } from '../../src/dryfit/meetings.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { FILLED } from '../../src/rules/joint-opens.ts';

/** ANSI/AWI 0620-2018, 3.4 has millimeters, and inches beside them: 0.4 (.016), 0.8 (.031), 1.2 (.047). */
test('what passes as a closed joint is within Premium work, what filler closes within Custom work', () => {
    const { premium, custom, economy } = FIELD_GAPS;
    expect([premium, custom, economy].map(gap => Math.round(gap / TICKS_PER_INCH * 1000) / 1000)).toEqual([0.016, 0.031, 0.047]);
    for (const [limit, gap] of [[OPEN_JOINT, FIELD_GAPS.premium], [FILLED, FIELD_GAPS.custom]] as const) {
        expect(limit).toBeLessThanOrEqual(gap);
        // the next 64th would be more
        expect(limit + TICKS_PER_INCH / 64).toBeGreaterThan(gap);
    }
});
