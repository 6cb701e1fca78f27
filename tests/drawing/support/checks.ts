import type { Sheet } from '../../../src/drawing/display-list.ts';
import { grown, itemExtent, overlap, textExtents, within } from '../../../src/drawing/extent.ts';
import { MARGIN } from '../../../src/drawing/sheet/frame.ts';
import { leaves, texts } from './walk.ts';

/** Pairs of texts whose boxes, by the font's widths, overlap. */
export function touching(sheet: Sheet): readonly string[] {
    const runs = texts(sheet.items).map(run => ({ run, extents: textExtents(run).map(extent => grown(extent, -0.05)) }));
    return runs.flatMap(({ run, extents }, i) => runs.slice(i + 1).filter(other => extents.some(extent => other.extents.some(its => overlap(extent, its)))).map(other => `${run.text} | ${other.run.text}`));
}

/** What sticks out of the sheet's border. */
export function outside(sheet: Sheet): readonly unknown[] {
    const border = grown({ left: MARGIN, top: MARGIN, right: sheet.paper.width - MARGIN, foot: sheet.paper.height - MARGIN }, 0.01);
    return leaves(sheet.items).filter(item => !within(itemExtent(item), border));
}
