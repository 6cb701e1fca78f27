import type { Given, Source } from '../provenance/source.ts';
import type { Measure } from '../quantity/measure.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Direction } from './compass.ts';

/**
 * Panels between the ceiling and the beams, one over each coffer, which meet behind the beams. Without a stock they only make the ceiling lower. `seams`:
 * what is done of one that is larger than its sheet.
 */
export interface PanelWords {
    readonly at: Source;
    readonly body?: Source;
    readonly thickness?: Given<Measure>;
    readonly gap: Given<Ticks>;
    /** The way the length of the sheets runs; undefined: as suits the coffers. */
    readonly running?: Given<Direction>;
    readonly seams: Given<'behind-beams' | 'across-coffers'>;
}
