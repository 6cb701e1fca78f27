import { expect, test } from 'vitest';
import { FIELD_GAPS, FLUSHNESS, LEVEL } from '../../src/data/gaps.ts';
import { PASSES } from '../../src/cutting/at-bench.ts';
import { NEAR, OPEN_JOINT } from '../../src/dryfit/meetings.ts';
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

/** Architectural Woodwork Standards, 1st ed. 2009: flat joints flush to .012" in Premium, .025" in Custom work. */
test('a board that passes at the bench makes no step that Custom work may not have, and what the dry fit takes for flush is within Premium', () => {
    expect([FLUSHNESS.premium, FLUSHNESS.custom].map(step => Math.round(step / TICKS_PER_INCH * 1000) / 1000)).toEqual([0.012, 0.025]);
    expect(PASSES).toBeLessThanOrEqual(FLUSHNESS.custom);
    expect(PASSES + TICKS_PER_INCH / 64).toBeGreaterThan(FLUSHNESS.custom);
    expect(NEAR).toBeLessThanOrEqual(FLUSHNESS.premium);
});

/** ANSI/AWI 0620-2018, 3.4: plumb and level to 3.2 mm in 2438 mm, 1/8 in. in 96 in. */
test('installed work is level to an eighth in eight feet', () => {
    expect(Math.round(LEVEL.off / TICKS_PER_INCH * 8)).toBe(1);
    expect(Math.round(LEVEL.over / TICKS_PER_INCH)).toBe(96);
});
