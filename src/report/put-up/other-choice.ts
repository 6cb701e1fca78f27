import type { Ceiling } from '../../ceiling/model.ts';
import type { Room } from '../../job/model.ts';
import { priceInSteps } from '../../pipeline/price.ts';
import { counted, listed } from '../../plain/words.ts';
import { atOnce, type Steps } from '../../plain/steps.ts';
import { bestThrough } from '../../putup/closing/best-through.ts';
import { otherwise } from '../../putup/closing/otherwise.ts';
import type { PutUp } from '../../putup/model.ts';
import { printMark, type Tape } from '../../quantity/print-length.ts';
import type { Rational } from '../../quantity/rational.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { turnedWords } from '../../rules/support/closing-words.ts';
import { hoursText } from '../estimate/words.ts';

/** A choice of what runs through that leaves fewer closing pieces, and what it changes: each figure as it is and as it would be. */
export interface OtherChoice {
    /** `line A through at A2`. */
    readonly words: string;
    readonly closing: Change; readonly proved: boolean;
    readonly longest: Change; readonly splices: Change;
    /** Boards of a plan made at once for the room alone. */
    readonly boards: Change;
    /** Of one person; null where nothing is timed. */
    readonly minutes: { readonly now: Rational; readonly then: Rational } | null;
    readonly added: readonly Batch[]; readonly dropped: readonly Batch[];
}
interface Change { readonly now: number; readonly then: number }
type Cost = Pick<OtherChoice, 'boards' | 'minutes'>;
interface Batch { readonly part: 'bottom' | 'blocking'; readonly length: Ticks; readonly count: number }

/** Undefined where no other choice leaves fewer, or none that can be laid out. */
export function otherChoice(ceiling: Ceiling, order: Pick<PutUp, 'band'>): OtherChoice | undefined {
    const best = bestThrough(ceiling, order);
    if (!best?.as || best.now === null || best.least >= best.now) return undefined;
    return {
        words: turnedWords(best.turned), closing: { now: best.now, then: best.least }, proved: best.proved, ...otherwise(ceiling, best.as),
        ...atOnce(costInSteps(ceiling.room, best.as.room)),
    };
}

/** Boards and hours of a room as it is, and as it would be. */
export function* costInSteps(is: Room, other: Room): Steps<Cost> {
    const now = yield* figuresOf(is);
    yield;
    const then = yield* figuresOf(other);
    return { boards: { now: now.boards, then: then.boards }, minutes: now.minutes && then.minutes ? { now: now.minutes, then: then.minutes } : null };
}

function* figuresOf(room: Room): Steps<{ readonly boards: number; readonly minutes: Rational | null }> {
    const { plan, estimate } = yield* priceInSteps([room], room.job);
    return {
        boards: plan.stocks.flatMap(({ buy }) => buy).reduce((sum, { count }) => sum + count, 0), minutes: estimate.labor.length > 0 ? estimate.minutes : null,
    };
}

/** The same in sentences. */
export function otherChoiceWords({ words, closing, proved, longest, splices, boards, minutes, added, dropped }: OtherChoice, tape: Tape): string[] {
    const batches = (all: readonly Batch[]): string =>
        listed(all.map(({ part, length, count }) => `${count} x ${part === 'bottom' ? 'bottom' : 'blocking'} of ${printMark(length, tape)}`));
    return [
        `With ${words} ${closing.then === 0 ? 'there is no closing piece' : `${counted(closing.then, 'closing piece')} remain${closing.then === 1 ? 's' : ''}`}, not ${closing.now}${proved ? ', and no choice leaves fewer' : ''}.`,
        `That changes: ${[`the longest piece ${change(longest, ticks => printMark(ticks, tape))}`, `splices ${change(splices, String)}`, ...costWords({ boards, minutes })].join('; ')}.`,
        ...added.length + dropped.length > 0 ? [`Cut are then ${batches(added)} in the place of ${batches(dropped)}.`] : [],
    ];
}

/** `boards 12, not 13, by a plan made at once`, and `hours 8 h, not 8 h 10 min`, each where there are any. */
export function costWords({ boards, minutes }: Cost): string[] {
    const planned = boards.now + boards.then > 0 ? [`boards ${change(boards, String)}, by a plan made at once`] : [];
    if (!minutes) return planned;
    const { now, then } = minutes, print = (figure: number): string => hoursText(figure === now.valueOf() ? now : then);
    return [...planned, `hours ${change({ now: now.valueOf(), then: then.valueOf() }, print)}`];
}

function change({ now, then }: Change, print: (figure: number) => string): string {
    return now === then ? `${print(now)} as now` : `${print(then)}, not ${print(now)}`;
}
