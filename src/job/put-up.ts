import type { Given, Source } from '../provenance/source.ts';
import type { Rational } from '../quantity/rational.ts';

/** What is said of how a ceiling is put up. */
export interface PutUpSaid {
    /** Its word in the room. */
    readonly at: Source;
    /** The number of a coffer. */
    readonly firstBay?: Given<number>;
    readonly orders: readonly OrderSaid[];
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
