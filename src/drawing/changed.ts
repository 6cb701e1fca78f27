import type { Ceiling } from '../ceiling/model.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { group, polygon, text, type Item, type Point, type Sheet } from './display-list.ts';
import type { Extent } from './extent.ts';
import { MARGIN } from './sheet/frame.ts';
import { grouped } from '../plain/groups.ts';

/** What is marked on a plan. `lines`: names of lines; `all`: the whole room. `mark`: stands in the triangle at each cloud. */
interface Changed { readonly lines: readonly string[]; readonly all: boolean; readonly mark: string; readonly words: string }

/** One change on a plan: what its cloud goes round, and what stands in its triangle. `line`: undefined of the whole room. */
interface Mark { readonly line?: string; readonly mark: string; readonly title: string }

/** Points: how far a cloud stands off what it goes round, how wide each of its arcs is; and, for letters of a size, its triangle. */
const OFF = 5, ARC = 9, TRIANGLE = 9, LETTERS = 7.5;

/**
 * A plan with what is otherwise on it marked as drawings of the trade mark a revision: a cloud round it, and a triangle with the number of the change
 * (common practice, no source). Nothing is told by color alone. `words` stand in the margin over the border.
 */
export function markChanged(sheet: Sheet, ceiling: Ceiling, takeOff: TakeOff, { lines, all, mark, words }: Changed): Sheet {
    const marks = all ? [{ mark, title: 'changed: the room' }] : lines.map(line => ({ line, mark, title: `changed: line ${line}` }));
    const marked = withClouds(sheet, ceiling, takeOff, marks);
    if (!sheet.measured) return sheet;
    return {
        ...marked, title: `${sheet.title}, ${words}`,
        description: `${words}. ${all ? 'The whole room is marked.' : lines.length > 0 ? `Marked: ${lines.map(name => `line ${name}`).join(', ')}.` : ''} ${sheet.description}`,
        items: [...marked.items, text([sheet.paper.width - MARGIN, 12], `${words}${marks.length > 0 ? '; in a cloud: what changes' : ''}`.toUpperCase(), { size: 9, weight: 600, anchor: 'end' })],
    };
}

/**
 * The same without a word in the margin, each change with a mark of its own; its group is `changed.` and its number among them. `letters`: how high
 * those are, in points.
 */
export function withClouds(sheet: Sheet, ceiling: Ceiling, { pieces }: TakeOff, marks: readonly Mark[], letters = LETTERS): Sheet {
    const { measured } = sheet;
    if (!measured) return sheet;
    const { origin: [left, foot], pointsPerTick: scale } = measured, boxes = grouped(pieces, piece => piece.line);
    const around = (found: readonly { west: number; east: number; north: number; south: number }[]): Extent => ({
        left: left + Math.min(...found.map(box => box.west)) * scale - OFF, right: left + Math.max(...found.map(box => box.east)) * scale + OFF,
        top: foot - (ceiling.length - Math.min(...found.map(box => box.north))) * scale - OFF,
        foot: foot - (ceiling.length - Math.max(...found.map(box => box.south))) * scale + OFF,
    });
    const clouds = marks.flatMap(({ line, mark, title }, i) => {
        const whole = { west: 0, east: ceiling.width, north: 0, south: ceiling.length };
        const found = line === undefined ? [whole] : (boxes.get(line) ?? []).map(piece => piece.box);
        if (found.length === 0) return [];
        const extent = around(found);
        return [group(`changed.${i + 1}`, { title }, [cloud(extent), ...triangle(extent, mark, letters)])];
    });
    return { ...sheet, items: [...sheet.items, ...clouds] };
}

/** Arcs along the four sides, each bulging outward, drawn as short lines. */
function cloud({ left, top, right, foot }: Extent): Item {
    const corners: readonly Point[] = [[left, top], [right, top], [right, foot], [left, foot]], points: Point[] = [];
    corners.forEach(([x, y], i) => {
        const [toX, toY] = corners[(i + 1) % 4]!, length = Math.hypot(toX - x, toY - y), count = Math.max(1, Math.round(length / ARC));
        const [alongX, alongY] = [(toX - x) / count, (toY - y) / count], bulge = Math.min(ARC, length / count) / 2;
        for (let arc = 0; arc < count; arc++) for (let step = 0; step < 6; step++) {
            const turn = Math.PI * step / 6, along = arc + (1 - Math.cos(turn)) / 2, out = Math.sin(turn) * bulge * 0.7;
            points.push([x + alongX * along + alongY / Math.hypot(alongX, alongY) * out, y + alongY * along - alongX / Math.hypot(alongX, alongY) * out]);
        }
    });
    return polygon(points, 'edge');
}

/** At the upper right of its cloud, over all that is drawn below it. */
function triangle({ right, top }: Extent, mark: string, letters: number): Item[] {
    const k = letters / LETTERS, tall = TRIANGLE * k, half = tall + (mark.length > 2 ? 2 * k * (mark.length - 2) : 0);
    return [
        polygon([[right, top - tall], [right + half, top + tall * 0.75], [right - half, top + tall * 0.75]], 'edge', 'paper'),
        text([right, top + tall * 0.55], mark, { size: letters, weight: 600, anchor: 'middle' }),
    ];
}
