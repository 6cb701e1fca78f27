import type { Item, Point, Sheet, TextRun } from '../../../src/drawing/display-list.ts';
import { grown, itemExtent, overlap, textExtents, within } from '../../../src/drawing/extent.ts';
import { MARGIN } from '../../../src/drawing/sheet/frame.ts';
import { groups, leaves, texts } from './walk.ts';

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

/**
 * Leaders, lines of dimensions and their extension lines that run through a text, by its letters' box, with the text. A figure interrupts the line that it
 * stands on, and a leader may end at its own words: so those of its own group are left out.
 */
export function linesThroughWords(sheet: Sheet): readonly string[] {
    const words = texts(sheet.items).map(run => ({ run, extents: textExtents(run).map(extent => grown(extent, -0.3)) }));
    const owners = groups(sheet.items).filter(group => group.items.some(item => stretchesOf(item).length > 0));
    return owners.flatMap(owner => {
        const own = new Set<TextRun>(texts([owner])), stretches = owner.items.flatMap(stretchesOf);
        return words.filter(({ run, extents }) => !own.has(run) && extents.some(extent => stretches.some(([from, to]) => enters(from, to, extent))))
            .map(({ run }) => `${owner.id} through ${run.text}`);
    });
}

function stretchesOf(item: Item): readonly (readonly [Point, Point])[] {
    if (item.kind === 'line' && item.pen === 'dimension') return [[item.from, item.to]];
    return item.kind === 'polyline' && item.pen === 'dimension' ? item.points.slice(1).map((to, i) => [item.points[i]!, to] as const) : [];
}

/** Looked at in steps of a quarter of a point, otherwise than the drawing does. */
function enters([fromX, fromY]: Point, [toX, toY]: Point, extent: ReturnType<typeof itemExtent>): boolean {
    const box = { left: Math.min(fromX, toX) - 1, right: Math.max(fromX, toX) + 1, top: Math.min(fromY, toY) - 1, foot: Math.max(fromY, toY) + 1 };
    if (!overlap(box, extent)) return false;
    const steps = Math.max(1, Math.ceil(Math.hypot(toX - fromX, toY - fromY) * 4));
    return Array.from({ length: steps + 1 }, (_, i) => [fromX + (toX - fromX) * i / steps, fromY + (toY - fromY) * i / steps] as const)
        .some(([x, y]) => x > extent.left && x < extent.right && y > extent.top && y < extent.foot);
}
