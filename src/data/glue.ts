import type { Published } from './published.ts';

interface Times extends Published {
    /** Minutes. */
    readonly open?: number; readonly clamped?: readonly [least: number, most: number];
    /** Hours until a joint may be strained. */
    readonly rest?: number;
}

/** Yellow carpenter's glue (polyvinyl acetate, aliphatic) at room temperature. The sheet of the glue at hand comes first. */
export const CLAMPED: Times = { clamped: [30, 60], rest: 24, source: 'Gluing guide for wood glues, section on clamping, as glue makers publish it', mark: 'read second-hand' };
/** From spreading to closing the joint. */
export const OPEN: Times = { open: 5, source: 'Technical data sheets of aliphatic carpenter\'s glue', mark: 'from memory' };
