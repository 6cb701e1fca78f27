/** Knows corners in plain numbers and nothing of how they came about. */
export type Corners = readonly { readonly x: number; readonly y: number }[];
export interface Cover { readonly name: string; readonly corners: Corners }

/**
 * Whether parts cover a room, with nothing twice and nothing outside; `merged` may lie over each other and count as one. No corner
 * lies inside a level slab between two neighboring corners' heights, so edges are straight there: parts that follow one another
 * without gap at two heights of it, in the same order, do so in all of it. Tells what is wrong at the first height where something is.
 */
export function gapInCover(room: Corners, parts: readonly Cover[], merged: readonly Corners[]): string | undefined {
    const heights = [...new Set([room, ...merged, ...parts.map(part => part.corners)].flat().map(corner => corner.y))].sort((a, b) => a - b);
    for (const [i, top] of heights.slice(0, -1).entries()) {
        const under = heights[i + 1]!;
        const [upper, lower] = [top + (under - top) / 3, top + (under - top) * 2 / 3].map(y => across(y, room, parts, merged));
        const wrong = upper!.wrong ?? lower!.wrong ?? (upper!.order === lower!.order ? undefined : `parts cross between ${top} and ${under}`);
        if (wrong !== undefined) return wrong;
    }
    return undefined;
}

interface Stretch { readonly name: string; readonly from: number; readonly to: number }
const ROUNDING = 1e-4;

function across(y: number, room: Corners, parts: readonly Cover[], merged: readonly Corners[]): { wrong?: string; order: string } {
    const rooms = stretches(y, 'room', room);
    const met = [...parts.flatMap(({ name, corners }) => stretches(y, name, corners)), ...joined(merged.flatMap(corners => stretches(y, 'channel', corners)))]
        .sort((a, b) => a.from - b.from || a.to - b.to);
    const order = met.map(stretch => stretch.name).join(' ');
    const left = [...met];
    for (const { from, to } of rooms) {
        let at = from;
        while (at < to - ROUNDING) {
            const next = left.shift();
            if (!next || Math.abs(next.from - at) > ROUNDING) return { wrong: `at ${y}: ${next ? `${next.name} begins at ${next.from}` : 'nothing'} where ${at} is next`, order };
            at = next.to;
        }
        if (Math.abs(at - to) > ROUNDING) return { wrong: `at ${y}: beyond the room, ${at} past ${to}`, order };
    }
    return left.length > 0 ? { wrong: `at ${y}: ${left[0]!.name} outside the room`, order } : { order };
}

function stretches(y: number, name: string, corners: Corners): Stretch[] {
    const crossed = corners.flatMap((a, i) => {
        const b = corners[(i + 1) % corners.length]!;
        return a.y < y === b.y < y ? [] : [a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y)];
    }).sort((a, b) => a - b);
    return Array.from({ length: crossed.length / 2 }, (_, i) => ({ name, from: crossed[2 * i]!, to: crossed[2 * i + 1]! }))
        .filter(({ from, to }) => to - from > ROUNDING);
}

function joined(all: readonly Stretch[]): Stretch[] {
    const result: Stretch[] = [];
    for (const next of [...all].sort((a, b) => a.from - b.from)) {
        const last = result.at(-1);
        if (last && next.from <= last.to + ROUNDING) result[result.length - 1] = { ...last, to: Math.max(last.to, next.to) };
        else result.push(next);
    }
    return result;
}

/** Twice the area, as a plain number. */
export function shoelace(corners: Corners): number {
    return Math.abs(corners.reduce((sum, a, i) => sum + a.x * corners[(i + 1) % corners.length]!.y - corners[(i + 1) % corners.length]!.x * a.y, 0));
}
