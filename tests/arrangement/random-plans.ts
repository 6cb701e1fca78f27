import fc from 'fast-check';
import type { BeamLine, BoxBeam, Corners as CornerKind, HalfBeam, Perimeter, Plan } from '../../src/arrangement/plan.ts';
import type { Corners } from './cover.ts';

/**
 * Plans of rectangles, L's and T's whose walls and lines run along the axes, in even ticks, so that nothing is rounded; and with
 * each the channels between the backs of its sides, reckoned here from the numbers alone: rectangles that may lie over each other.
 */
interface RandomPlan { readonly plan: Plan; readonly room: Corners; readonly channels: readonly Corners[] }

const INCH = 16256;
type Direction = 'x' | 'y';
interface Spaced { readonly shape: 'rectangle' | 'L' | 'T'; readonly wide: number; readonly high: number; readonly notch: readonly [number, number] }

const even = (from: number, to: number): fc.Arbitrary<number> => fc.integer({ min: from * INCH / 2, max: to * INCH / 2 }).map(half => 2 * half);
const beams = fc.record({ inside: even(2, 8), side: fc.constantFrom(INCH / 2, INCH * 3 / 4, INCH), depth: fc.constantFrom(6 * INCH, 8 * INCH) });
const perimeters = fc.constantFrom('bare' as const, 'band' as const, 'half-beam' as const, 'half-beam' as const, 'half-timber' as const);

export const randomPlans: fc.Arbitrary<RandomPlan> = fc.record({
    space: fc.record({ shape: fc.constantFrom('rectangle' as const, 'L' as const, 'T' as const), wide: even(230, 320), high: even(150, 260), notch: fc.tuple(even(60, 90), even(50, 90)) }),
    perimeters: fc.array(perimeters, { minLength: 4, maxLength: 4 }),
    band: even(1, 2), half: fc.record({ inside: even(1, 4), side: fc.constantFrom(INCH / 2, INCH * 3 / 4) }), deeperHalf: fc.boolean(),
    // of a rectangle, wall by wall
    deeper: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
    downs: beams, acrosses: beams,
    xs: fc.array(even(0, 320), { maxLength: 5 }), ys: fc.array(even(0, 260), { maxLength: 4 }),
    stems: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
    corners: fc.constantFrom<CornerKind>({ kind: 'mitered' }, { kind: 'butted', past: 'north-south' }, { kind: 'butted', past: 'east-west' }),
    through: fc.constantFrom('north-south', 'east-west'),
}).map(made => {
    const room = roomOf(made.space);
    const depth = Math.max(made.downs.depth, made.acrosses.depth) + (made.deeperHalf ? INCH : 0);
    const half: HalfBeam = { kind: 'half-beam', inside: made.half.inside, depth, side: { thickness: made.half.side, heldDown: 0 } };
    const halfAt = (i: number): HalfBeam => ({ ...half, depth: depth + (room.length === 4 && made.deeper[i] ? INCH : 0) });
    // round an outside corner a band and a half beam cannot meet: these rooms have one kind all round
    const walls = room.map((from, i) => ({ name: `wall ${i}`, from, perimeter: perimeterOf(made.perimeters[room.length === 4 ? i : 0]!, made.band, halfAt(i)) }));
    const widest = Math.max(made.band, half.inside + half.side.thickness);
    const places = (wanted: readonly number[], direction: Direction, beam: typeof made.downs): number[] => {
        const reach = beam.inside / 2 + beam.side, kept: number[] = [];
        for (const at of wanted) {
            const clear = room.every(corner => Math.abs(corner[direction] - at) > widest + reach + INCH)
                && kept.every(other => Math.abs(other - at) > 2 * reach + INCH);
            if (clear && chord(room, direction, at)) kept.push(at);
        }
        return kept;
    };
    const ys = places(made.ys, 'y', made.acrosses), bar = room.length === 4 && made.downs.depth <= made.acrosses.depth ? ys[0] : undefined;
    const across = ys.map((at, i) => lineAt(room, 'y', at, `across ${i}`, made.acrosses));
    const down = places(made.xs, 'x', made.downs).map((at, i) => {
        const line = lineAt(room, 'x', at, `down ${i}`, made.downs);
        return bar !== undefined && made.stems[i] ? { ...line, to: 'across 0', end: bar } : line;
    });
    const lines = [...down, ...across];
    return {
        room,
        plan: { walls, lines: lines.map(lineOf), through: made.through, corners: made.corners },
        channels: [...lines.flatMap(line => channelsOf(line, lines, walls)), ...walls.flatMap((_, i) => channelOfWall(walls, i))],
    };
});

function roomOf({ shape, wide, high, notch: [w, h] }: Spaced): { x: number; y: number }[] {
    const p = (x: number, y: number): { x: number; y: number } => ({ x, y });
    switch (shape) {
        case 'rectangle': return [p(0, 0), p(wide, 0), p(wide, high), p(0, high)];
        case 'L': return [p(0, 0), p(wide, 0), p(wide, high - h), p(wide - w, high - h), p(wide - w, high), p(0, high)];
        case 'T': return [p(0, 0), p(wide, 0), p(wide, high - h), p(wide - w, high - h), p(wide - w, high), p(w, high), p(w, high - h), p(0, high - h)];
    }
}

function perimeterOf(kind: Perimeter['kind'], thickness: number, half: HalfBeam): Perimeter {
    switch (kind) {
        case 'half-beam': return half;
        case 'half-timber': return { kind, width: half.inside, depth: half.depth };
        case 'band': return { kind, thickness, top: 0, foot: INCH };
        case 'bare': return { kind };
    }
}

interface Line {
    readonly direction: Direction;
    readonly at: number;
    readonly name: string;
    readonly from: string;
    readonly to: string;
    readonly start: number;
    readonly end: number;
    readonly inside: number;
    readonly side: number;
    readonly depth: number;
}

const other = (direction: Direction): Direction => (direction === 'x' ? 'y' : 'x');

/** The walls that a straight line across these rooms meets: two, in the order that it meets them. */
function chord(room: Corners, direction: Direction, at: number): [{ wall: number; place: number }, { wall: number; place: number }] | undefined {
    const met = room.flatMap((a, wall) => {
        const b = room[(wall + 1) % room.length]!;
        return Math.min(a[direction], b[direction]) < at && at < Math.max(a[direction], b[direction]) ? [{ wall, place: a[other(direction)] }] : [];
    }).sort((a, b) => a.place - b.place);
    return met.length === 2 ? [met[0]!, met[1]!] : undefined;
}

function lineAt(room: Corners, direction: Direction, at: number, name: string, beam: { inside: number; side: number; depth: number }): Line {
    const [start, end] = chord(room, direction, at)!;
    return { direction, at, name, from: `wall ${start.wall}`, to: `wall ${end.wall}`, start: start.place, end: end.place, ...beam };
}

function lineOf({ direction, at, name, from, to, inside, side, depth }: Line): BeamLine {
    const board = { thickness: side, heldDown: 0 };
    const beam: BoxBeam = { kind: 'box', inside, depth, left: board, right: board };
    return {
        name, from, to, beam, family: direction === 'x' ? 'north-south' : 'east-west',
        spot: direction === 'x' ? { x: at, y: 0 } : { x: 0, y: at }, heading: direction === 'x' ? { x: 0, y: 1 } : { x: 1, y: 0 },
    };
}

function box(direction: Direction, from: number, to: number, start: number, end: number): Corners {
    const p = (across: number, along: number): { x: number; y: number } => (direction === 'x' ? { x: across, y: along } : { x: along, y: across });
    return [p(from, start), p(to, start), p(to, end), p(from, end)];
}

/** From what it ends at to what it ends at; a deeper line that crosses parts it from face to face. */
function channelsOf(line: Line, lines: readonly Line[], walls: Plan['walls']): Corners[] {
    const off = (name: string): number => {
        const bar = lines.find(each => each.name === name);
        if (bar) return bar.inside / 2 + (bar.depth > line.depth ? bar.side : 0);
        const { perimeter } = walls.find(wall => wall.name === name)!;
        if (perimeter.kind === 'half-beam') return perimeter.inside + (perimeter.depth > line.depth ? perimeter.side.thickness : 0);
        return perimeter.kind === 'band' ? perimeter.thickness : perimeter.kind === 'half-timber' ? perimeter.width : 0;
    };
    const deeper = lines.filter(each => each.direction !== line.direction && each.depth > line.depth && ![line.from, line.to].includes(each.name)
        && each.start < line.at && line.at < each.end && line.start < each.at && each.at < line.end).sort((a, b) => a.at - b.at);
    const starts = [line.start + off(line.from), ...deeper.map(each => each.at + each.inside / 2 + each.side)];
    const ends = [...deeper.map(each => each.at - each.inside / 2 - each.side), line.end - off(line.to)];
    return starts.map((start, i) => box(line.direction, line.at - line.inside / 2, line.at + line.inside / 2, start, ends[i]!));
}

/**
 * Behind a half beam: to the wall, or to the band or the deeper half beam beside it, or a timber no shallower; round an outside corner as far again as it
 * is wide.
 */
function channelOfWall(walls: Plan['walls'], i: number): Corners[] {
    const corner = (k: number): { x: number; y: number } => walls[(k + walls.length) % walls.length]!.from as { x: number; y: number };
    const { perimeter } = walls[i]!, a = corner(i), b = corner(i + 1);
    if (perimeter.kind !== 'half-beam') return [];
    const way = { x: Math.sign(b.x - a.x), y: Math.sign(b.y - a.y) };
    const beyond = (k: number, before: { x: number; y: number }, at: { x: number; y: number }, after: { x: number; y: number }): number => {
        const next = walls[(k + walls.length) % walls.length]!.perimeter;
        if (next.kind === 'band') return 0 - next.thickness;
        if (next.kind === 'half-timber') return next.depth >= perimeter.depth ? 0 - next.width : 0;
        if (next.kind === 'half-beam' && next.depth > perimeter.depth) return 0 - next.inside - next.side.thickness;
        const turned = (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x);
        return next.kind === 'half-beam' && turned < 0 ? next.inside : 0;
    };
    const back = beyond(i - 1, corner(i - 1), a, b), on = beyond(i + 1, a, b, corner(i + 2));
    const from = { x: a.x - way.x * back, y: a.y - way.y * back }, to = { x: b.x + way.x * on, y: b.y + way.y * on };
    // to the right of the wall's way lies the room
    const inward = { x: 0 - way.y * perimeter.inside, y: way.x * perimeter.inside };
    return [[from, to, { x: to.x + inward.x, y: to.y + inward.y }, { x: from.x + inward.x, y: from.y + inward.y }]];
}
