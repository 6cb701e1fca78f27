/** Days are written as in ISO 8601: `2026-03-04`; so they are in order where their texts are. */

/** Whether the calendar has that day. */
export function isDate(text: string): boolean {
    const [, month = 0, day = 0] = partsOf(text);
    return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(text);
}

/** What is wrong with a day that is on no calendar, in words. */
export function whyNoDate(text: string): string {
    const [, month = 0, day] = partsOf(text);
    if (month < 1 || month > 12 || day === undefined) return 'months are 01 to 12, and a day is written year, month, day, as in 2026-03-04';
    return day === 0 ? 'days begin with 01' : `that month has ${daysIn(text)} days`;
}

/** How many days the month of that text has, by the Gregorian calendar. */
function daysIn(text: string): number {
    const [year = 0, month = 0] = partsOf(text);
    if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
    return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

function partsOf(text: string): number[] {
    return text.split(/\D/).map(Number);
}
