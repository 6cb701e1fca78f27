import type { Section } from '../../ceiling/model.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { sheet, type Sheet } from '../display-list.ts';
import { paperFor } from '../paper.ts';
import { ceilingAbove } from './ceiling-above.ts';
import { reachOf, shapeOf } from './shape.ts';
import type { SectionView } from './view.ts';
import { wood } from './wood.ts';

/** Greatest width and height of the beam itself, in points; around it stands a little of the ceiling. */
const BEAM = { width: 200, height: 130 };
const STUB = 26;
const ABOVE = 28;
const UNDER = 16;

/**
 * The section alone, as big as a note in passing: wood and ceiling, no figures, no title block. Undefined where the text
 * does not say enough for a section.
 */
export function drawSmallSection(section: Section, show: Show): Sheet | undefined {
    const shape = shapeOf(section);
    if (shape === null) return undefined;
    const reach = reachOf(shape);
    const pointsPerTick = Math.min(BEAM.width / (2 * reach.aside), BEAM.height / (reach.down + reach.up));
    const width = 2 * (reach.aside * pointsPerTick + STUB);
    const ceiling = ABOVE + reach.up * pointsPerTick;
    const height = ceiling + reach.down * pointsPerTick + UNDER;
    const view: SectionView = { pointsPerTick, middle: width / 2, ceiling, left: 10, right: width - 10, top: 14 };
    const paper = { ...paperFor(show), width, height, cssWidth: `${Math.round(width)}px`, cssHeight: `${Math.round(height)}px` };
    const title = `Section through ${section.profile.label}`;
    const description = `${printLength(shape.outerWidth, show)} wide and ${printLength(shape.depth, show)} deep.`;
    return sheet({ id: 'section', title, description }, paper, [
        ...ceilingAbove(view, { board: null, panel: shape.panel }, Math.min(height - 4, ceiling + 12)),
        ...wood(shape, view, (part, name) => ({ title: name, part })),
    ]);
}
