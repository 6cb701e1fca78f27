import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from './ticks.ts';

export type Show = 'feet-inches' | 'millimeters';

const PARTS_PER_INCH = 128;
const TICKS_PER_PART = TICKS_PER_INCH / PARTS_PER_INCH;
const TICKS_PER_TENTH = TICKS_PER_MM / 10;

/**
 * A length as it is read aloud on the job: `4' 2 7/8"`, `14' 0 1/2"`, `16'`, `7 1/4"`, `-1/32"`, or `1239 mm`, `12.5 mm`.
 * Exact where it is a multiple of 1/128" (or of 0.1 mm); otherwise the nearest one with a `~` before it.
 */
export function printLength(ticks: Ticks, show: Show = 'feet-inches'): string {
    if (show === 'millimeters') return print(ticks, TICKS_PER_TENTH, tenths => `${tenths / 10} mm`);
    return print(ticks, TICKS_PER_PART, parts => {
        const feet = Math.floor(parts / (12 * PARTS_PER_INCH));
        const rest = parts % (12 * PARTS_PER_INCH);
        if (feet === 0) return inchText(rest);
        return rest === 0 ? `${feet}'` : `${feet}' ${inchText(rest, true)}`;
    });
}

/** How long things are in all, laid end to end: feet and inches, or meters, `64.96 m`, to the nearest centimeter. */
export function printRun(ticks: Ticks, show: Show = 'feet-inches'): string {
    return show === 'millimeters' ? `${(ticks / TICKS_PER_MM / 1000).toFixed(2)} m` : printLength(ticks, show);
}

/** The same in inches alone, for what is set at the saw and at the fence: `50 7/8"`. */
export function printInches(ticks: Ticks): string {
    return print(ticks, TICKS_PER_PART, parts => inchText(parts));
}

/** Sign, nearest step, and the mark of a rounded figure. A length that nobody could know stays visible as one. */
function print(ticks: Ticks, step: number, text: (steps: number) => string): string {
    if (!Number.isFinite(ticks)) return 'no length';
    const size = Math.abs(ticks);
    const steps = Math.floor(size / step + 0.5);
    const mark = size % step === 0 ? '' : '~';
    return `${mark}${ticks < 0 && steps !== 0 ? '-' : ''}${text(steps)}`;
}

/** 128ths of an inch as `7 1/4"`; after feet a bare fraction gets its zero: `0 1/2"`. */
function inchText(parts: number, afterFeet = false): string {
    const whole = Math.floor(parts / PARTS_PER_INCH);
    let over = parts % PARTS_PER_INCH;
    let under = PARTS_PER_INCH;
    while (over !== 0 && over % 2 === 0) { over /= 2; under /= 2; }
    if (over === 0) return `${whole}"`;
    return whole === 0 && !afterFeet ? `${over}/${under}"` : `${whole} ${over}/${under}"`;
}
