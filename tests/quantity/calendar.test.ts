import { expect, test } from 'vitest';
import { isDate, whyNoDate } from '../../src/quantity/calendar.ts';

test('every day of two centuries, and none besides, as the calendar of the machine has them', () => {
    for (let year = 1896; year <= 2104; year++) for (let month = 0; month <= 13; month++) for (let day = 0; day <= 32; day++) {
        const text = [String(year), String(month).padStart(2, '0'), String(day).padStart(2, '0')].join('-');
        const time = new Date(`${text}T00:00:00Z`);
        const is = !Number.isNaN(time.getTime()) && time.toISOString().startsWith(text);
        if (isDate(text) !== is) expect.fail(`${text} is ${is ? '' : 'no '}day`);
    }
    expect(isDate('2026-03-04')).toBe(true);
    expect(['2026', '2026-03'].map(isDate)).toEqual([false, false]);
});

test('why a day is none', () => {
    expect(whyNoDate('2026-02-29')).toBe('that month has 28 days');
    expect(whyNoDate('2028-02-30')).toBe('that month has 29 days');
    expect(whyNoDate('2026-04-31')).toBe('that month has 30 days');
    expect(whyNoDate('2026-12-32')).toBe('that month has 31 days');
    for (const text of ['2026-13-01', '2026-00-10', '2026', '2026-03', '']) expect(whyNoDate(text), text).toBe('months are 01 to 12, and a day is written year, month, day, as in 2026-03-04');
    expect(whyNoDate('2026-04-00')).toBe('days begin with 01');
});
