import type { Tone } from './themes.ts';

/** Line weights in points, heavy to light, with what each is drawn for. */
export const PENS = {
    /** Cut by the section, and the inner face of the walls. */
    cut: { width: 1.7, tone: 'ink' },
    border: { width: 1.4, tone: 'ink' },
    /** The slanted tick at the end of a dimension. */
    tick: { width: 1, tone: 'ink' },
    /** An edge the eye sees. */
    edge: { width: 0.9, tone: 'ink' },
    /** A joint, a lesser edge. */
    thin: { width: 0.45, tone: 'ink' },
    fine: { width: 0.3, tone: 'ink' },
    /** Dimension, extension and leader lines. */
    dimension: { width: 0.35, tone: 'ink' },
    center: { width: 0.35, tone: 'soft', dashes: [14, 2.5, 2.5, 2.5] },
    /** Behind what is drawn. */
    hidden: { width: 0.3, tone: 'soft', dashes: [2.6, 1.6] },
    /** A nail inside the wood; the bow of a wall, where it is drawn deeper than it is. */
    nail: { width: 0.4, tone: 'ink', dashes: [4, 2.2] },
    /** Seen beyond the cut. */
    beyond: { width: 0.35, tone: 'soft' },
    grain: { width: 0.26, tone: 'soft' },
    hatch: { width: 0.22, tone: 'soft' },
    /** Something is wrong here. */
    wrong: { width: 1.1, tone: 'accent' },
} as const satisfies Record<string, Pen>;

export interface Pen { readonly width: number; readonly tone: Tone; readonly dashes?: readonly number[] }
export type PenName = keyof typeof PENS;

export function penOf(name: PenName): Pen {
    return PENS[name];
}
