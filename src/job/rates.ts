import type { ClosingWord } from './closing-word.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Rational } from '../quantity/rational.ts';

/**
 * What an hour and a piece of work cost: `labor` and `bid` of the folder and of those above it, the nearest first. What
 * nobody says is undefined, and whoever makes an estimate says so; there is no rate that is simply supposed.
 */
export interface Rates { readonly labor: Labor; readonly bid: Bid }

/** So much money, exact, in the currency's major unit. */
export interface Sum { readonly amount: Rational; readonly currency: string }

/** What `labor` times, and its word there. Parts by the foot, exact minutes a tick; other work by the piece, exact minutes each. */
export const BY_LENGTH = { blocking: 'blocking', side: 'sides', cleat: 'cleats', bottom: 'bottom', timber: 'timber', molding: 'molding', band: 'band', trim: 'trim' } as const;
export const BY_COUNT = {
    layout: 'layout', panel: 'panels', spacer: 'spacers', corner: 'corner', butt: 'butt', splice: 'splice', coffer: 'coffer', 'set-up': 'set-up',
} as const;
export type TimedByLength = keyof typeof BY_LENGTH;
export type TimedByCount = keyof typeof BY_COUNT;

export interface Labor {
    /** Where the nearest `labor` stands. Undefined: there is none. */
    readonly at?: Source;
    readonly crew?: Given<number>;
    /** What an hour of one person costs. */
    readonly rate?: Given<Sum>;
    /** Working minutes of a day. */
    readonly day: Given<Rational>;
    readonly byLength: Partial<Record<TimedByLength, Given<Rational>>>;
    readonly byCount: Partial<Record<TimedByCount, Given<Rational>>>;
    /** Minutes that a closing piece takes besides its foot and its joints: `of` one way, or whatever its way. */
    readonly closing?: readonly Given<ClosingTime>[];
    /** Minutes of these that cutting one piece takes. */
    readonly cutting?: Given<Rational>;
    /** Shares: 1 is 100 %. */
    readonly firstBay?: Given<Rational>;
    readonly unfamiliar?: Given<{
        readonly share: Rational;
        /** Profiles by where they are declared; none: every detail. */
        readonly of: readonly { readonly at: Source }[];
    }>;
}

interface ClosingTime { readonly minutes: Rational; readonly of?: ClosingWord }

/** What a closing piece takes that gets in that way: what is said of it, else what is said of all. Undefined where nobody says. */
export function closingTime({ closing = [] }: Pick<Labor, 'closing'>, way: ClosingWord | undefined): Given<Rational> | undefined {
    const found = (way && closing.find(({ value: { of } }) => of === way)) ?? closing.find(({ value: { of } }) => of === undefined);
    return found && { ...found, value: found.value.minutes };
}

export interface Bid {
    /** Where the nearest `bid` stands. Undefined: there is none. */
    readonly at?: Source;
    readonly overhead?: Given<Rational>;
    readonly profit?: Given<{ readonly share: Rational; readonly of: 'price' | 'cost' }>;
    readonly tax?: Given<{ readonly share: Rational; readonly on: 'materials' | 'everything' }>;
    readonly contingency?: Given<Rational>;
    readonly delivery?: Given<Sum>;
    readonly allowances: readonly Given<Sum & { readonly for?: string }>[];
    readonly minimum?: Given<Sum>;
    readonly supplies: Supplies;
    readonly contractor?: Given<string>;
    readonly validDays?: Given<number>;
    readonly deposit?: Given<Rational>;
    readonly scope: readonly Given<string>[];
    readonly exclusions: readonly Given<string>[];
    readonly terms: readonly Given<string>[];
}

/** Every sum of money that is said, supplies aside: the hour's first. */
export function sumsIn({ labor, bid }: Rates): readonly Given<Sum>[] {
    return [labor.rate, bid.delivery, bid.minimum, ...bid.allowances].filter(given => given !== undefined);
}

/** Screws, nails and biscuits each; glue and filler a cubic tick; caulk a tube. */
export interface Supplies {
    readonly screws?: Given<Sum>; readonly nails?: Given<Sum>; readonly biscuits?: Given<Sum>;
    readonly glue?: Given<Sum>; readonly filler?: Given<Sum>; readonly caulk?: Given<Sum>;
}
