import type { Ceiling } from '../ceiling/model.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { group, polygon, text, type Item, type Point, type Sheet } from './display-list.ts';
import type { Extent } from './extent.ts';
import { MARGIN } from './sheet/frame.ts';

/** What is marked on a plan. `lines`: names of lines; `all`: the whole room. `mark`: stands in the triangle at each cloud. */
interface Changed { readonly lines: readonly string[]; readonly all: boolean; readonly mark: string; readonly words: string }

/** Points: how far a cloud stands off what it goes round, how wide each of its arcs is, and the size of its triangle. */
const OFF = 5, ARC = 9, TRIANGLE = 9;

/**
 * A plan with what is otherwise on it marked as drawings of the trade mark a revision: a cloud round it, and a triangle with the number of the change
 * (common practice, no source). Nothing is told by color alone. `words` stand in the margin over the border.
 */
export function markChanged(sheet: Sheet, ceiling: Ceiling, { pieces }: TakeOff, { lines, all, mark, words }: Changed): Sheet {
    const { measured, paper } = sheet;
    if (!measured) return sheet;
    const { origin: [left, foot], pointsPerTick: scale } = measured;
    const around = (boxes: readonly { west: number; east: number; north: number; south: number }[]): Extent => ({
        left: left + Math.min(...boxes.map(box => box.west)) * scale - OFF, right: left + Math.max(...boxes.map(box => box.east)) * scale + OFF,
        top: foot - (ceiling.length - Math.min(...boxes.map(box => box.north))) * scale - OFF,
        foot: foot - (ceiling.length - Math.max(...boxes.map(box => box.south))) * scale + OFF,
    });
    const ofLine = (name: string): Extent[] => {
        const boxes = pieces.filter(piece => piece.line === name).map(piece => piece.box);
        return boxes.length === 0 ? [] : [around(boxes)];
    };
    const extents = all ? [around([{ west: 0, east: ceiling.width, north: 0, south: ceiling.length }])] : lines.flatMap(ofLine);
    const clouds = extents.map((extent, i) => group(`changed.${i + 1}`, { title: `changed: ${all ? 'the room' : `line ${lines[i]}`}` }, [cloud(extent), ...triangle(extent, mark)]));
    return {
        ...sheet, title: `${sheet.title}, ${words}`, description: `${words}. ${all ? 'The whole room is marked.' : lines.length > 0 ? `Marked: ${lines.map(name => `line ${name}`).join(', ')}.` : ''} ${sheet.description}`,
        items: [...sheet.items, ...clouds, text([paper.width - MARGIN, 12], words.toUpperCase(), { size: 9, weight: 600, anchor: 'end' })],
    };
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
function triangle({ right, top }: Extent, mark: string): Item[] {
    const half = TRIANGLE + (mark.length > 2 ? 2 * (mark.length - 2) : 0);
    return [
        polygon([[right, top - TRIANGLE], [right + half, top + TRIANGLE * 0.75], [right - half, top + TRIANGLE * 0.75]], 'edge', 'paper'),
        text([right, top + TRIANGLE * 0.55], mark, { size: 7.5, weight: 600, anchor: 'middle' }),
    ];
}
