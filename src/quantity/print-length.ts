import { roundTo } from './round.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from './ticks.ts';

export type Show = 'feet-inches' | 'millimeters';

/** What lengths are read off in a job: the system, and its finest mark, which lengths are cut to. */
export interface Tape { readonly show: Show; readonly step: Ticks }

const PARTS_PER_INCH = 128;
const PART = TICKS_PER_INCH / PARTS_PER_INCH;
const TENTH = TICKS_PER_MM / 10;
/** Marks that every tape of the system has: 1/32", 0.5 mm. What has no other spelling is read off at the nearest of them. */
const COMMON: Readonly<Record<Show, Ticks>> = { 'feet-inches': TICKS_PER_INCH / 32, millimeters: TICKS_PER_MM / 2 };
/** The finest mark of a steel rule. */
const RULE = TICKS_PER_INCH / 64;

/**
 * A length that somebody said, as it is read aloud on the job: `4' 2 7/8"`, `14' 0 1/2"`, `16'`, `7 1/4"`, `-1/32"`, or `1239 mm`,
 * `12.5 mm`. Exact where the job's own system has it (1/128", or 0.1 mm); a board of 19 mm is `19 mm` in a job in inches too. All else is
 * read off at the nearest 1/32" or 0.5 mm, with a `~` before it. Lengths that are worked out are printed by `printMark`.
 */
export function printLength(ticks: Ticks, show: Show = 'feet-inches'): string {
    return printIn(ticks, spelledIn(ticks, show));
}

/** Whether a rule of this system has a mark there, be it finer than the job's tape: 1/64", 0.1 mm. */
export function isOnRule(ticks: Ticks, show: Show): boolean {
    return ticks % (show === 'millimeters' ? TENTH : RULE) === 0;
}

/** A length that was worked out, at the nearest mark of the job's tape; no `~` before it, since every mark is read off so. */
export function printMark(ticks: Ticks, { show, step }: Tape): string {
    return printIn(roundTo(ticks, step), show);
}

/** The length in this system whatever it was said in: `~5 1/2"` of 140 mm. */
export function printIn(ticks: Ticks, show: Show): string {
    if (show === 'millimeters') return print(ticks, TENTH, COMMON[show], tenths => `${tenths / 10} mm`);
    return print(ticks, PART, COMMON[show], parts => {
        const feet = Math.floor(parts / (12 * PARTS_PER_INCH));
        const rest = parts % (12 * PARTS_PER_INCH);
        if (feet === 0) return inchText(rest);
        return rest === 0 ? `${feet}'` : `${feet}' ${inchText(rest, true)}`;
    });
}

/** How long things are in all, laid end to end, to the nearest inch or centimeter: `213' 2"`, `64.96 m`. Less than a foot is a length like any. */
export function printRun(ticks: Ticks, show: Show = 'feet-inches'): string {
    if (show === 'millimeters') return `${(ticks / TICKS_PER_MM / 1000).toFixed(2)} m`;
    return printLength(ticks < TICKS_PER_FOOT ? ticks : roundTo(ticks, TICKS_PER_INCH), show);
}

/** The same as `printLength`, in inches alone, for what is set at the saw and at the fence: `50 7/8"`. */
export function printInches(ticks: Ticks): string {
    return spelledIn(ticks, 'feet-inches') === 'millimeters' ? printIn(ticks, 'millimeters') : print(ticks, PART, COMMON['feet-inches'], parts => inchText(parts));
}

/** A board of 19 mm is called that in a job in inches too. One of 3/4" is not in a job in millimeters, where nobody has a tape for it. */
function spelledIn(ticks: Ticks, show: Show): Show {
    return ticks % PART !== 0 && ticks % COMMON.millimeters === 0 ? 'millimeters' : show;
}

/** Sign, nearest mark, and the sign of a rounded figure; `text` is given multiples of `part`. A length that nobody could know stays visible as one. */
function print(ticks: Ticks, part: Ticks, mark: Ticks, text: (parts: number) => string): string {
    if (!Number.isFinite(ticks)) return 'no length';
    const isExact = ticks % part === 0;
    const parts = Math.abs(isExact ? ticks : roundTo(ticks, mark)) / part;
    return `${isExact ? '' : '~'}${ticks < 0 && parts !== 0 ? '-' : ''}${text(parts)}`;
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

/** At most that many decimals, without zeros at the end. */
export function shortest(value: number, decimals: number): string {
    return String(Number(value.toFixed(decimals)));
}
