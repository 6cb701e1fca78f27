import type { Published } from './published.ts';

interface Times extends Published {
    /** Minutes. */
    readonly open?: number; readonly clamped?: readonly [least: number, most: number];
    /** Hours until a joint may be strained. */
    readonly rest?: number;
}

/** Yellow carpenter's glue (polyvinyl acetate, aliphatic) at room temperature. The sheet of the glue at hand comes first. */
export const CLAMPED: Times = { clamped: [30, 60], rest: 24, source: 'Franklin International, gluing guide for its wood glues, clamping', mark: 'read' };
/** What shows that it is closed in time, whatever the minutes: the film still liquid when pressure comes on. */
export const IN_TIME: Published = { source: 'Franklin Adhesives & Polymers, questions on wood adhesives: open time', mark: 'read' };
/** From spreading to closing the joint. Of sheets of single glues none with this figure could be read; the table stands for the kind. */
export const OPEN: Times = { open: 5, source: 'table of glues by kind in a handbook on biscuit joiners, yellow polyvinyl acetate', mark: 'read second-hand' };
