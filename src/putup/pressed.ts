import type { Ceiling } from '../ceiling/model.ts';
import { grouped } from '../plain/groups.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import { bottomRuns, type Bottom, type BottomOrder } from '../takeoff/closing/bottoms.ts';
import { eulerLoad } from '../takeoff/closing/bending.ts';
import { strengthOf } from '../takeoff/closing/ways.ts';
import type { TakeOff } from '../takeoff/model.ts';

/** What bottoms that are cut a little long do along a row of them: lines of one row alike. Lengths in ticks. */
export interface Pressed {
    readonly lines: readonly string[];
    /** How much longer than its opening each is cut, and whether the text says so; else it is what it would do. */
    readonly press: Ticks; readonly said: boolean;
    /** Pieces of the row, and those of them that stand between what does not give way: one at an end with room behind it is only moved on. */
    readonly pieces: number; readonly between: number;
    /** What these press in all; as the tape cuts them, which takes off up to a step of each. */
    readonly sum: Ticks; readonly asCut: Ticks;
    /** Each closes joints that are open by as much as this at both of its ends together. */
    readonly closes: Ticks;
    /** Where nothing gives way: how far the last one, of this length, is bowed in its middle; it stays straight while it is pressed by no more than that. */
    readonly bows: { readonly length: Ticks; readonly by: Ticks; readonly straightUpTo: Ticks };
    /** What it presses with when it begins to bow, in pounds; null where the strength of its wood is not known. */
    readonly force: number | null;
    /** Or how far the outermost lines that the row meets are pushed off, each, where there is room behind them; none of a row between walls. */
    readonly pushes: { readonly lines: readonly string[]; readonly by: Ticks } | null;
}

/** What is looked at where the text says no press. */
const TRIED = { 'feet-inches': [TICKS_PER_INCH / 64, TICKS_PER_INCH / 32], millimeters: [TICKS_PER_MM / 2, TICKS_PER_MM] } as const;

/**
 * Row by row. Pieces between two lines press them apart; those lines stand between pieces that press as much from the other side, but for the outermost, where
 * there is room behind the end piece until the band is up: so these are pushed apart, by half of the sum each, or the last piece is bowed.
 *
 * A piece of length l and thickness t that is pressed at its ends, which turn freely, stays straight and is squeezed up to Euler's load P = π² E I / l², that
 * is up to π² t² / 12 l, whatever the wood. Beyond it bows to a half wave, whose chord is π² q² / 4 l shorter, so q = 2/π sqrt((s - π² t² / 12 l) l), and the
 * force hardly grows: so no row presses with more. Joints that were open take some of it: both are the most there can be. E as in
 * takeoff/closing/bending.ts; that nothing else gives way: common practice, no source.
 */
export function pressedRows(ceiling: Ceiling, takeOff: TakeOff, order: BottomOrder): Pressed[] {
    const bottoms = new Map([...grouped(bottomRuns(ceiling, takeOff, order).flat(), ({ piece }) => piece.line ?? '').entries()].filter(([line]) => line !== ''));
    const rows = ceiling.lines.flatMap(({ name, section: { profile } }): Pressed[] => {
        const row = bottoms.get(name) ?? [], said = profile.bottom?.press?.value ?? 0;
        if (row.length < 2) return [];
        const tried = said > 0 ? [said] : TRIED[ceiling.room.job.show.value];
        return tried.flatMap(press => pressedRow(name, row, press, { said: said > 0, step: ceiling.room.job.cutTo.value }));
    });
    const alike = grouped(rows, ({ lines: _, ...same }) => JSON.stringify(same));
    return [...alike.values()].map(own => ({ ...own[0]!, lines: own.flatMap(({ lines }) => lines) }));
}

function pressedRow(line: string, row: readonly Bottom[], press: Ticks, { said, step }: { readonly said: boolean; readonly step: Ticks }): Pressed[] {
    const free = [row[0]!.ends[0].kind === 'free', row.at(-1)!.ends[1].kind === 'free'] as const;
    const between = row.slice(free[0] ? 1 : 0, free[1] ? -1 : undefined), last = between.at(-1);
    if (!last) return [];
    const sum = between.length * press;
    // opening: what a piece would be without its press
    const openingOf = ({ piece, play }: Bottom): Ticks => piece.overall + play;
    const longBy = (bottom: Bottom): Ticks => Math.floor((openingOf(bottom) + press) / step) * step - openingOf(bottom);
    const outer = [free[0] ? row[0]!.ends[1].meets : null, free[1] ? row.at(-1)!.ends[0].meets : null].flatMap(name => name ?? []);
    const length = openingOf(last), { thickness, width, stock } = last.piece, straightUpTo = Math.PI ** 2 * thickness ** 2 / (12 * length);
    const strength = strengthOf(stock.species?.value);
    return [{
        lines: [line], press, said, pieces: row.length, between: between.length, sum, closes: press,
        asCut: between.reduce((all, bottom) => all + longBy(bottom), 0),
        bows: { length, by: Math.round(2 / Math.PI * Math.sqrt(Math.max(0, sum - straightUpTo) * length)), straightUpTo: Math.round(straightUpTo) },
        force: strength ? eulerLoad({ length: inches(length), thickness: inches(thickness), width: inches(width) }, strength) : null,
        pushes: outer.length > 0 ? { lines: outer, by: Math.round(sum / outer.length) } : null,
    }];
}

function inches(length: Ticks): number {
    return length / TICKS_PER_INCH;
}
