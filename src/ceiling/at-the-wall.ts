import { arrangedOf } from './plan.ts';
import { isLevel, type ShapedWall } from './shape.ts';
import type { Band, Ceiling, HalfBeam, Line } from './model.ts';
import type { AtWall, Fixture } from '../job/model.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import type { Point } from '../plane/point.ts';

/** What stands at a wall: from where to where along it (from its beginning, the room on the right), out into the room from 0 to `depth`. */
interface Standing {
    readonly fixture: Fixture; readonly atWall: AtWall;
    readonly wall: ShapedWall;
    readonly from: number; readonly to: number;
}

/** What a beam, a band or a trim reaches of it: how far in from the edge that looks into the room, and how far that hangs below the ceiling. */
export interface Reaching {
    /** "line 2", "the band along the east wall". */
    readonly name: string;
    readonly what: Line | Band | HalfBeam | 'trim';
    /** Its line or wall. */
    readonly of: string;
    readonly into: Ticks; readonly foot: Ticks;
}

/** Less than this is rounding, not an overlap. */
const TELLS = TICKS_PER_INCH / 64;

/** Whatever stands at a wall of the room and says enough of itself; of a wall that there is not, nothing. */
export function standingAtWalls({ walls, room: { fixtures } }: { readonly walls: readonly ShapedWall[]; readonly room: Pick<Ceiling['room'], 'fixtures'> }): Standing[] {
    return fixtures.flatMap((fixture): Standing[] => {
        const { atWall } = fixture, wall = atWall && walls.find(({ name }) => name === atWall.wall.value || `wall-${name}` === atWall.wall.value);
        if (!atWall || !wall) return [];
        const { length } = wall, width = atWall.width?.value ?? length, begins = atWall.begins?.value ?? 0;
        const [from, to] = isFrom(wall, atWall.from) ? [begins, begins + width] : [length - begins - width, length - begins];
        return [{ fixture, atWall, wall, from: atWall.width && !atWall.begins ? 0 : from, to: atWall.width && !atWall.begins ? length : to }];
    });
}

/** Whether the wall begins at the end that lies towards that corner. */
function isFrom(wall: ShapedWall, corner: AtWall['from']): boolean {
    const { from, to } = wall;
    return isLevel(wall) ? corner.endsWith('east') === from.x > to.x : corner.startsWith('south') === from.y > to.y;
}

/** All that reaches into its footprint and hangs lower than `below`, the deepest of each beam, each wall's edging and each coffer's trim. */
export function reachingInto(standing: Standing, ceiling: Ceiling, below: Ticks): Reaching[] {
    const found = new Map<string, Reaching>(), lines = new Map(ceiling.lines.map(line => [line.name, line]));
    for (const { part, of, coffers, corners, foot } of arrangedOf(ceiling).exact.pieces) {
        if (foot - below < TELLS) continue;
        const into = reachOf(corners.map(corner => onWall(standing.wall, corner)), standing);
        if (into < TELLS) continue;
        const what = part === 'trim' ? 'trim' : lines.get(of) ?? ceiling.around[of];
        if (!what) continue;
        const name = what === 'trim' ? `the trim of coffer ${coffers[0]}` : 'kind' in what ? `the ${what.kind === 'band' ? 'band' : 'half beam'} along the ${of} wall` : `line ${of}`;
        const before = found.get(name);
        found.set(name, { name, what, of, into: Math.max(Math.round(into), before?.into ?? 0), foot: Math.max(foot, before?.foot ?? 0) });
    }
    return [...found.values()];
}

/** Along the wall, and out into the room. */
function onWall({ from, to, length }: ShapedWall, { x, y }: Point): Point {
    const dx = (to.x - from.x) / length, dy = (to.y - from.y) / length;
    return { x: (x - from.x) * dx + (y - from.y) * dy, y: (y - from.y) * dx - (x - from.x) * dy };
}

/** How deep the outline of a piece reaches behind the front of it; 0 where they have at most an edge in common. */
function reachOf(outline: readonly Point[], { from, to, atWall: { depth } }: Standing): number {
    let left: readonly Point[] = outline;
    for (const [axis, limit, sign] of [['x', from, 1], ['x', to, -1], ['y', 0, 1], ['y', depth, -1]] as const) left = keptOf(left, axis, limit, sign);
    if (left.length < 3) return 0;
    const span = (axis: 'x' | 'y'): number => Math.max(...left.map(point => point[axis])) - Math.min(...left.map(point => point[axis]));
    return Math.min(span('x'), span('y')) < TELLS ? 0 : depth - Math.min(...left.map(({ y }) => y));
}

/** What of a convex outline lies on one side of a limit. */
function keptOf(outline: readonly Point[], axis: 'x' | 'y', limit: number, sign: 1 | -1): Point[] {
    const inside = (point: Point): number => (point[axis] - limit) * sign;
    return outline.flatMap((a, i): Point[] => {
        const b = outline[(i + 1) % outline.length]!, [da, db] = [inside(a), inside(b)];
        const cut = da > 0 !== db > 0 ? [{ x: a.x + (b.x - a.x) * da / (da - db), y: a.y + (b.y - a.y) * da / (da - db) }] : [];
        return da > 0 ? [a, ...cut] : cut;
    });
}
