import type { Given, Source } from '../provenance/source.ts';
import type { Rational } from '../quantity/rational.ts';

/** What is said of how a ceiling is put up; it names other rooms, so these types stand under what a room is. */
export interface PutUpSaidOf<Room> {
    /** Its word in the room. */
    readonly at: Source;
    /** The number of a coffer. */
    readonly firstBay?: Given<number>;
    readonly orders: readonly OrderSaid[];
    readonly waits: readonly WaitSaidOf<Room>[];
    /** The day on which it is begun, from 1. */
    readonly fromDay?: Given<number>;
    /** What is up by now, by the names of the text. */
    readonly up: readonly Given<string>[];
    readonly crews: Given<number>;
    /** Minutes. */
    readonly glue?: Given<Rational>; readonly clamped?: Given<Rational>;
}
/** `what`, by the names of the text, before or after another thing, or not before a day; `at`: its words. */
export interface OrderSaid {
    readonly at: Source;
    readonly what: readonly Given<string>[];
    readonly before?: Given<string>; readonly after?: Given<string>;
    readonly day?: Given<number>;
}

/** What others finish before what is named goes up, by the names of the text; before anything of the room where nothing is named. */
export type WaitSaidOf<Room> = { readonly before: readonly Given<string>[] } & (
    | { readonly kind: 'room'; readonly room: Given<RoomBeforeOf<Room>> }
    /** In words; and the day on which they are done. */
    | { readonly kind: 'trade'; readonly trade: Given<string>; readonly untilDay?: Given<number> }
);

/** Another room. Where it waits for this one, directly or through others, `circle` has the waits from this one's on, and nothing waits for it. */
export type RoomBeforeOf<Room> = { readonly name: string } & ({ readonly room: Room | undefined } | { readonly circle: readonly WaitInCircle[] });
/** One room of a circle, the room that it waits for, and the words that say so. */
export interface WaitInCircle { readonly room: string; readonly waitsFor: string; readonly at: Source }
