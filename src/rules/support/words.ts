import { isOnRule, printIn, printMark, shortest } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../../quantity/ticks.ts';
import type { JobSettings } from '../../job/model.ts';
import { tapeOf } from '../../job/tape.ts';
import { listed } from '../../plain/words.ts';

/** Lengths in the job's own units, as they stand in messages and in the text that a fix writes. */
export interface Sizes {
    /** As it was said; what is on no rule has decimals below a foot, `5.512"`, and is read off at the tape's nearest mark above, with a `~` before it. */
    (ticks: Ticks): string;
    /** For figures finer than the tape, such as paint or a tolerance: `1/64"` where a rule has a mark for it, else `0.028"` or `0.71 mm`. */
    fine(ticks: number): string;
    /** How far off something is on the plan, where a tape is laid: as it is where a rule has a mark for it, else at the tape's next mark above. */
    off(ticks: number): string;
    /** How far a joint stands open or is too tight, which is told by eye and not by a caliper: at the nearest 64th, `~3/64"`, and never nothing. */
    gap(ticks: number): string;
    /**
     * What was worked out and may be finer than a 64th: at the nearest 64th, `~3/64"`. Less than one is told by its thousandths, `0.012"`, since no tape has
     * a mark for it and who measures it has a gauge in hand, as for a film of paint.
     */
    told(ticks: number): string;
    /** The most that something may come to: where a rule has no mark for it, at the next 64th above, `3/64"` of 0.036"; behind "up to" and "at most". */
    most(ticks: number): string;
}

/** Thicknesses, widths and gaps: a caliper reads them where the tape has no mark, and what is wrong with them is often less than its step. */
const CALIPERED: Ticks = TICKS_PER_FOOT;
/** No rule has it, but it is what a tolerance of half a 64th is called. */
const HAIR: Ticks = TICKS_PER_INCH / 128;
const SIXTY_FOURTH: Ticks = TICKS_PER_INCH / 64;

export function sizesOf(job: JobSettings): Sizes {
    const show = job.show.value;
    const print = (ticks: Ticks): string => {
        if (Math.abs(ticks) < CALIPERED) return fine(ticks);
        const exact = printIn(ticks, show);
        return exact.startsWith('~') ? `~${printMark(ticks, tapeOf(job))}` : exact;
    };
    const fine = (ticks: number): string => {
        if (isOnRule(ticks, show) || Math.abs(ticks) === HAIR) return printIn(ticks, show);
        return show === 'millimeters' ? `${shortest(ticks / TICKS_PER_MM, 2)} mm` : `${shortest(ticks / TICKS_PER_INCH, 3)}"`;
    };
    const step = job.cutTo.value, off = (ticks: number): string => print(isOnRule(ticks, show) ? ticks : Math.ceil(ticks / step) * step);
    const gap = (ticks: number): string => (show === 'millimeters' || isOnRule(ticks, show) ? fine(ticks)
        : `~${printIn(Math.max(1, Math.round(ticks / SIXTY_FOURTH)) * SIXTY_FOURTH, show)}`);
    const told = (ticks: number): string => {
        const size = Math.abs(ticks);
        if (size < SIXTY_FOURTH || show === 'millimeters' || isOnRule(ticks, show)) return fine(Math.round(ticks));
        return `~${printIn(Math.sign(ticks) * Math.round(size / SIXTY_FOURTH) * SIXTY_FOURTH, show)}`;
    };
    const most = (ticks: number): string => (show === 'millimeters' ? fine(ticks) : printIn(Math.ceil(ticks / SIXTY_FOURTH) * SIXTY_FOURTH, show));
    return Object.assign(print, { fine, off, gap, told, most });
}

/** `line 2`, `lines 1, 2 and 3`. */
export function linesNamed(names: readonly string[]): string {
    return `${names.length === 1 ? 'line' : 'lines'} ${listed(names)}`;
}

/** The wall that a run is measured along: what is divided east-west stands along the north wall. */
export function alongWall(along: 'north-south' | 'east-west'): string {
    return along === 'east-west' ? 'along the north wall' : 'along the east wall';
}
