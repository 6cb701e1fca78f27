import type { Ticks } from '../../quantity/ticks.ts';

/**
 * A length that comes out of others, where it may come to lie, and what it must not pass: drawn much larger than it is,
 * between the two pieces of wood that leave it. Lengths in ticks, fractions of one allowed.
 */
export interface ToleranceFigure {
    readonly id: string;
    readonly title: string;
    /** What is to be seen, in words, for who cannot see it. */
    readonly description: string;
    /** The wood left of zero and the wood that stands off it; undefined where nothing stands beside each other. */
    readonly wood?: { readonly left: Cut; readonly right: Cut };
    /** As drawn, everything at its named size. */
    readonly nominal: number;
    readonly bars: readonly Bar[];
    /** From small to great, without gaps. */
    readonly zones: readonly Zone[];
}

/** A piece as it is cut through: growth rings in wood, none in sheet material. */
export interface Cut { readonly name: string; readonly isSheet: boolean }

export interface Bar {
    readonly kind: 'worst' | 'usual' | 'sum';
    readonly words: string;
    readonly least: number; readonly most: number;
    /** Of a sum: how many equal parts it is made of. */
    readonly parts?: number;
    /** Figures at its two ends; an empty one is left out. */
    readonly figures: readonly [string, string];
}

/** `wrong`: it must not lie here; `asked`: here it is wanted. */
export interface Zone { readonly kind: 'wrong' | 'asked' | 'plain'; readonly words: string; /** -Infinity and Infinity at the ends. */ readonly from: number; readonly to: number }

/** One run across the room, wall to wall, to scale; what is cut otherwise than the rest is marked. */
export interface RunStrip {
    readonly id: string;
    readonly title: string;
    readonly description: string;
    /** In their order; widths add up to the run. */
    readonly parts: readonly RunPart[];
}
export interface RunPart { readonly kind: 'band' | 'line' | 'coffer'; readonly name: string; readonly width: Ticks; readonly figure: string; /** Of a coffer that takes what is left over: `+1⁄32"`. */ readonly differs?: string }
