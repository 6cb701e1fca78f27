import type { Ceiling } from '../../ceiling/model.ts';
import type { Room } from '../../job/model.ts';
import { price } from '../../pipeline/price.ts';
import { counted, listed } from '../../plain/words.ts';
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
interface Batch { readonly part: 'bottom' | 'blocking'; readonly length: Ticks; readonly count: number }

/** Undefined where no other choice leaves fewer, or none that can be laid out. */
export function otherChoice(ceiling: Ceiling, order: Pick<PutUp, 'band'>): OtherChoice | undefined {
    const best = bestThrough(ceiling, order);
    if (!best?.as || best.now === null || best.least >= best.now) return undefined;
    const { longest, splices, added, dropped } = otherwise(ceiling, best.as), now = figuresOf(ceiling.room), then = figuresOf(best.as.room);
    return {
        words: turnedWords(best.turned), closing: { now: best.now, then: best.least }, proved: best.proved, longest, splices, added, dropped,
        boards: { now: now.boards, then: then.boards }, minutes: now.minutes && then.minutes ? { now: now.minutes, then: then.minutes } : null,
    };
}

function figuresOf(room: Room): { readonly boards: number; readonly minutes: Rational | null } {
    const { plan, estimate } = price([room], room.job);
    return {
        boards: plan.stocks.flatMap(({ buy }) => buy).reduce((sum, { count }) => sum + count, 0), minutes: estimate.labor.length > 0 ? estimate.minutes : null,
    };
}

/** The same in sentences. */
export function otherChoiceWords({ words, closing, proved, longest, splices, boards, minutes, added, dropped }: OtherChoice, tape: Tape): string[] {
    const batches = (all: readonly Batch[]): string =>
        listed(all.map(({ part, length, count }) => `${count} x ${part === 'bottom' ? 'bottom' : 'blocking'} of ${printMark(length, tape)}`));
    const change = ({ now, then }: Change, print: (figure: number) => string): string => (now === then ? `${print(now)} as now` : `${print(then)}, not ${print(now)}`);
    return [
        `With ${words} ${closing.then === 0 ? 'there is no closing piece' : `${counted(closing.then, 'closing piece')} remain${closing.then === 1 ? 's' : ''}`}, not ${closing.now}${proved ? ', and no choice leaves fewer' : ''}.`,
        `That changes: the longest piece ${change(longest, ticks => printMark(ticks, tape))}; splices ${change(splices, String)}${boards.now + boards.then > 0 ? `; boards ${change(boards, String)}, by a plan made at once` : ''}`
            + `${minutes ? `; hours ${change({ now: minutes.now.valueOf(), then: minutes.then.valueOf() }, figure => hoursText(figure === minutes.now.valueOf() ? minutes.now : minutes.then))}` : ''}.`,
        ...added.length + dropped.length > 0 ? [`Cut are then ${batches(added)} in the place of ${batches(dropped)}.`] : [],
    ];
}
