import type { Section } from '../../ceiling/model.ts';
import { group, sheet, text, type Group, type Item, type Sheet } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { paneGround } from '../paper.ts';
import { largestPlace } from './largest-place.ts';
import type { SectionContext } from './context.ts';
import type { PartNote } from './notes.ts';
import { descriptionOf, drawing, notesOf, titleOf } from './section.ts';
import { shapeOf } from './shape.ts';

export interface PaneSection extends Sheet {
    /** What no room was found for beside the picture: to be said in words near it. */
    readonly notes: readonly PartNote[];
}

/** Least ground on which wood and figures can be told apart, in points; in a smaller pane it is shown smaller. */
const LEAST = { width: 250, height: 230 };
/** From this width on the notes stand in a column beside the picture. */
const NOTES_FROM = 560;

/** The section alone, without a frame, as large as it goes on a ground of this size in points. */
export function drawPaneSection(section: Section, context: SectionContext, size: { readonly width: number; readonly height: number }): PaneSection {
    const ground = paneGround(Math.max(LEAST.width, size.width), Math.max(LEAST.height, size.height));
    const shape = shapeOf(section);
    const title = titleOf(section, context);
    if (shape === null) {
        const words = text([ground.width / 2, ground.height / 2], 'A size it needs is missing or wrong.', { size: 11, anchor: 'middle', tone: 'soft' });
        return { ...sheet({ id: 'section', title, description: words.text }, ground, [words]), notes: [] };
    }
    const area: Extent = { left: 0, top: 0, right: ground.width, foot: ground.height };
    const beside = ground.width >= NOTES_FROM;
    const placed = largestPlace(section, shape, context, area, beside);
    const items = drawing(section, shape, context, placed, beside);
    return {
        ...sheet({ id: 'section', title, description: descriptionOf(shape, context, { ratio: 1, label: 'not to scale' }) }, ground, items.map(named)),
        notes: beside ? [] : notesOf(section, shape, context, placed).beside,
    };
}

/** Only what has a name may be pointed at; the rest is one group of scenery. */
function named(item: Item, i: number): Group {
    return item.kind === 'group' ? item : group(`scenery.${i}`, {}, [item]);
}
