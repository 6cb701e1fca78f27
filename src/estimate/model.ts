import type { Stock } from '../job/model.ts';
import type { Rates } from '../job/rates.ts';
import type { Source } from '../provenance/source.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';

/**
 * What a job costs and what it is sold for. Money is exact until a line is written: each line is rounded once, to the
 * currency's minor unit, and every sum is a sum of lines as they stand there, so that whoever adds up the paper comes to
 * the same cent.
 */
export interface Estimate {
    /** ISO 4217 code of the money in it. */
    readonly currency: string;
    readonly rooms: readonly string[];
    readonly materials: readonly MaterialLine[];
    readonly supplies: readonly SupplyLine[];
    readonly labor: readonly LaborLine[];
    /** What is set aside and what is added, in the order it is added. */
    readonly additions: readonly Addition[];
    readonly sums: Sums;
    /** Minutes of one person, and days of the crews; undefined where nobody says how many they are. */
    readonly minutes: Rational;
    /** How many people, where the same crew does all of it. */
    readonly crew?: number;
    readonly days?: Rational;
    /** What the rooms under each set of rates come to of the total, exact. */
    readonly parts: readonly { readonly rates: Rates; readonly total: Rational }[];
    /** What has no rate, and so is in no sum. Where there is any, the total is not the whole price. */
    readonly missing: readonly Missing[];
}

export interface Sums {
    readonly materials: Rational; readonly supplies: Rational; readonly labor: Rational; readonly delivery: Rational; readonly allowances: Rational;
    /** All that it costs: the above, tax on materials, contingency and overhead. */
    readonly cost: Rational;
    readonly profit: Rational;
    /** Before tax on everything. */
    readonly price: Rational;
    readonly total: Rational;
}

/** Boards of one stock and length that are bought, or on hand and used: those cost what they are worth, or nothing. */
export interface MaterialLine {
    readonly stock: Stock; readonly length: Ticks; readonly count: number;
    /** Of what is on hand, where it is less wide than its stock. */
    readonly width?: Ticks;
    /** How many of them are bought besides those that are cut. */
    readonly spare: number;
    readonly each: Rational; readonly onHand: boolean; readonly amount: Rational;
}
export interface SupplyLine {
    readonly what: string; readonly count: number; readonly unit: string; readonly each: Rational; readonly amount: Rational; readonly at: Source;
}

/** Phases of the work, in their order. */
export const PHASES = ['setting out', 'saw set-ups', 'blocking', 'sides', 'bottoms', 'band', 'trim', 'filling and sanding', 'first of its kind'] as const;
export type Phase = (typeof PHASES)[number];

export interface LaborLine {
    /** Undefined where it belongs to all rooms together, as the set-ups of the saw do. */
    readonly room?: string;
    readonly phase: Phase;
    /** `sides`, `corners of sides`, `first bay`. */
    readonly what: string;
    readonly basis: LaborBasis;
    readonly minutes: Rational;
    /** Undefined where nobody says what an hour costs. */
    readonly amount?: Rational;
    /** Where the rate is said. */
    readonly at: Source;
}
export type LaborBasis =
    | { readonly by: 'length'; readonly ticks: Ticks; readonly perTick: Rational }
    | { readonly by: 'count'; readonly count: number; readonly unit: string; readonly each: Rational }
    | { readonly by: 'share'; readonly share: Rational; /** Minutes it is a share of, and what they are. */ readonly minutes: Rational; readonly ofWhat: string };

export interface Addition {
    readonly kind: 'delivery' | 'allowance' | 'tax on materials' | 'contingency' | 'overhead' | 'profit' | 'minimum' | 'tax';
    readonly what: string;
    /** Why it is so much: `12 % of $4,210.00`. Undefined where the sum is simply said. */
    readonly share?: { readonly share: Rational; readonly of: Rational; readonly ofWhat: string };
    readonly amount: Rational;
    readonly at: Source;
}

/** Something to be priced that nobody has said a rate of. */
export interface Missing {
    /** Of the language's words: `labor.cleats`, `bid.supplies.nails`, `price`. */
    readonly rate: string;
    /** What it would be the rate of: `214' 6" of cleats`. */
    readonly of: string;
    readonly room?: string;
    /** Where it could be said. */
    readonly at?: Source;
}
