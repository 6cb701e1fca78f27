import type { Ticks } from '../quantity/ticks.ts';
import type { Place as Named } from '../takeoff/ids.ts';
import type { Part } from '../takeoff/model.ts';
import type { Form, Seat } from './stand.ts';

/** One place in the ceiling for one piece: by the layout alone, before anything is known of the cut list. */
export interface Place {
    readonly id: string;
    readonly part: Part;
    readonly seat: Seat;
    /** The form that fits there, at a length that the tape has. */
    readonly form: Form;
    /** What rounding to the tape, and pressing, push each end past its place; negative: short of it. May be half a tick off whole. */
    readonly rounded: number; readonly pressed: number;
    /** What else may be in the way of others by plan: spacers within the bottom's gap. */
    readonly give: number;
}

/** A place before its length is rounded. `along` may be half a tick off whole. */
export interface Spot {
    readonly part: Part;
    readonly named: Named;
    readonly seat: Seat;
    readonly form: Omit<Form, 'along' | 'off'> & { readonly along: number; readonly off?: Form['off'] };
    readonly press?: Ticks;
    readonly give?: number;
    /** What coping takes off its length, both ends together. */
    readonly coped?: Ticks;
}
