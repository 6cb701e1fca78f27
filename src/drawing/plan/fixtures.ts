import type { standingAtWalls } from '../../ceiling/at-the-wall.ts';
import { rectangleOf } from '../../job/fixture.ts';
import type { Fixture } from '../../job/model.ts';
import type { Claims } from '../claims.ts';
import { circle, group, line, polygon, rectangle, text, type Group, type Item, type Point, type TextRun } from '../display-list.ts';
import { around, grown, within, type Extent } from '../extent.ts';
import { clipToConvex } from '../fill/clip.ts';
import { patched } from '../patch.ts';
import type { PenName } from '../pens.ts';
import { sourceReference, type FileName } from '../source-reference.ts';
import { fitText } from '../text/fit-text.ts';
import { toX, toY, type PlanView } from './view.ts';

export interface PlacedFixture { readonly fixture: Fixture; readonly x: number; readonly y: number }

/** Those whose place is said, inside the room. */
export function placedFixtures(fixtures: readonly Fixture[], room: { readonly width: number; readonly length: number }): readonly PlacedFixture[] {
    return fixtures.flatMap(fixture => {
        const { x, y } = fixture;
        if (x === undefined || y === undefined || x < 0 || y < 0 || x > room.width || y > room.length) return [];
        return [{ fixture, x, y }];
    });
}

/** Smaller things are shown at this radius, so that their marks can be told apart. */
const LEAST_RADIUS = 3.2;

/** A fixture on the sheet: its symbol's radius, and that of the ground it keeps clear (0: none). */
interface Standing { readonly center: Point; readonly radius: number; readonly clear: number; readonly halves?: Point }

function standing({ fixture, x, y }: PlacedFixture, view: PlanView): Standing {
    const real = Math.max(0, (fixture.diameter ?? fixture.width)?.value ?? 0) / 2 * view.pointsPerTick, rectangle = rectangleOf(fixture);
    const kept = Math.max(0, fixture.keepClear?.value ?? 0) * view.pointsPerTick;
    if (rectangle) {
        const { across, down } = rectangle, halfOf = (side: number): number => Math.max(LEAST_RADIUS, side / 2 * view.pointsPerTick);
        const [wide, long] = [halfOf(across), halfOf(down)];
        return { center: [toX(view, x), toY(view, y)], radius: Math.max(wide, long), clear: kept, halves: [wide, long] };
    }
    return { center: [toX(view, x), toY(view, y)], radius: Math.max(LEAST_RADIUS, real), clear: kept > 0 ? real + kept : 0 };
}

/** Symbols in their own size, with the ground they keep clear dashed around them. Claims what they stand on. */
export function fixtureSymbols(fixtures: readonly PlacedFixture[], view: PlanView, room: Extent, claims: Claims, fileName: FileName): readonly Group[] {
    return fixtures.map(placed => {
        const { fixture } = placed;
        const { center, radius, clear, halves } = standing(placed, view);
        if (halves) {
            const box = around(center, ...halves);
            claims.take(grown(box, 3));
            return group(`fixture.${fixture.name}`, { title: `${fixture.kind.replace('-', ' ')} ${fixture.name}`, source: sourceReference(fixture.at, fileName) }, [
                ...clear > 0 ? boxed(cutBy(grown(box, clear), room), 'hidden') : [],
                ...boxSymbol(fixture.kind, box),
            ]);
        }
        claims.take(grown(around(center, radius, radius), besideClear(radius, clear) - 2));
        return group(`fixture.${fixture.name}`, { title: `${fixture.kind.replace('-', ' ')} ${fixture.name}`, source: sourceReference(fixture.at, fileName) }, [
            ...(clear > 0 ? ring(center, clear, room, 'hidden') : []),
            ...(within(around(center, radius, radius), grown(room, LEAST_RADIUS + 1)) ? symbol(fixture.kind, center, radius) : [...ring(center, radius, room, 'edge'), ...symbol(fixture.kind, center, LEAST_RADIUS)]),
        ]);
    });
}

/** Their names beside them, inside the room. */
export function fixtureNames(fixtures: readonly PlacedFixture[], view: PlanView, room: Extent, claims: Claims, least = 0): readonly Group[] {
    return fixtures.map(placed => {
        const { center, radius, clear, halves } = standing(placed, view);
        const candidates = nameCandidates(placed.fixture.name, center, halves ? halves[0] + besideClear(0, clear) : radius + besideClear(radius, clear), least);
        const runs = claims.placeFirst(candidates, extent => within(extent, room)) ?? [];
        return group(`fixture-name.${placed.fixture.name}`, {}, runs.flatMap(run => patched(run, 'paper')));
    });
}

/**
 * What stands at a wall, dashed since it is under the ceiling: as long as it is along the wall, and as far out as it stands, its name in front of it. One
 * that has no depth to speak of is shown by a line. It is no ground that words keep off.
 */
export function fixturesAtWalls(
    standing: ReturnType<typeof standingAtWalls>, view: PlanView, room: Extent, claims: Claims, fileName: FileName, least = 0,
): readonly Group[] {
    return standing.map(({ fixture, wall: { from: start, to: end, length }, from, to, atWall: { depth } }) => {
        const way = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
        // the room lies to the right of the wall
        const at = (along: number, out: number): Point => [toX(view, start.x + way.x * along - way.y * out), toY(view, start.y + way.y * along + way.x * out)];
        const out = Math.max(depth, LEAST_OUT / view.pointsPerTick), front = at((from + to) / 2, out);
        const runs = claims.placeFirst(nameCandidates(fixture.name, front, 4, least), extent => within(extent, room)) ?? [];
        return group(`fixture.${fixture.name}`, { title: `${fixture.kind.replace('-', ' ')} ${fixture.name}`, source: sourceReference(fixture.at, fileName) }, [
            polygon([at(from, 0), at(to, 0), at(to, out), at(from, out)], 'hidden'), ...runs.flatMap(run => patched(run, 'paper')),
        ]);
    });
}
/** Points on the sheet: less could not be told from the wall. */
const LEAST_OUT = 3;

/** Words stand off the ring that is kept clear too, unless it is so large that they would find no place at all. */
function besideClear(radius: number, clear: number): number {
    return Math.max(5, Math.min(clear - radius + 2, 20));
}

/** A ring, or as much of it as lies in the room. */
function ring([x, y]: Point, radius: number, room: Extent, pen: PenName): readonly Item[] {
    if (within(around([x, y], radius, radius), room)) return [circle([x, y], radius, pen)];
    const corners: readonly Point[] = [[room.left, room.top], [room.right, room.top], [room.right, room.foot], [room.left, room.foot]];
    const at = (step: number): Point => [x + radius * Math.cos(step * Math.PI / RING_STEPS), y + radius * Math.sin(step * Math.PI / RING_STEPS)];
    return Array.from({ length: 2 * RING_STEPS }, (_, step) => clipToConvex([at(step), at(step + 1)], corners))
        .flatMap(segment => (segment === null ? [] : [line(segment[0], segment[1], pen)]));
}
const RING_STEPS = 36;

function* nameCandidates(name: string, [x, y]: Point, off: number, least: number): Iterable<readonly TextRun[]> {
    const { text: words, size } = fitText(name, least > 0 ? 110 : 64, Math.max(7, least), Math.max(6, least));
    const at = (dx: number, dy: number, anchor: 'start' | 'middle' | 'end') => [text([x + dx, y + dy], words, { size, anchor, tone: 'soft' })];
    yield at(off, size * 0.35, 'start');
    yield at(-off, size * 0.35, 'end');
    yield at(0, off + size, 'middle');
    yield at(0, -off - 1, 'middle');
    yield at(off, off + size, 'start');
    yield at(-off, off + size, 'end');
}

function boxed({ left, top, right, foot }: Extent, pen: PenName): readonly Item[] {
    return [rectangle(left, top, right, foot, pen)];
}

function cutBy(one: Extent, other: Extent): Extent {
    const [left, top] = [Math.max(one.left, other.left), Math.max(one.top, other.top)];
    return { left, top, right: Math.min(one.right, other.right), foot: Math.min(one.foot, other.foot) };
}

/** Where the dark middle of a junction box begins, as in its small symbol. */
const INNER = 0.275;

/** What is rectangular at its own size, with the mark of its kind. */
function boxSymbol(kind: string, { left, top, right, foot }: Extent): readonly Item[] {
    const box = rectangle(left, top, right, foot, 'edge', 'paper'), falling = line([left, top], [right, foot], 'thin'), rising = line([left, foot], [right, top], 'thin');
    const [aside, down] = [(right - left) * INNER, (foot - top) * INNER];
    if (kind === 'junction-box') return [box, rectangle(left + aside, top + down, right - aside, foot - down, null, 'ink')];
    return [box, ...kind === 'register' ? [falling, rising] : [kind === 'speaker' ? falling : rising]];
}

/** Round things round, square things square; each kind with a mark of its own, shown in the key. */
export function symbol(kind: string, [x, y]: Point, r: number): readonly Item[] {
    const ring = circle([x, y], r, 'edge', 'paper');
    const square = rectangle(x - r, y - r, x + r, y + r, 'edge', 'paper');
    const out = r + 2.4;
    switch (kind) {
        case 'light': return [ring, line([x - out, y], [x + out, y], 'thin'), line([x, y - out], [x, y + out], 'thin')];
        case 'sprinkler': return [ring, circle([x, y], r * 0.42, null, 'ink')];
        case 'smoke-alarm': return [ring, circle([x, y], r * 0.55, 'thin')];
        case 'speaker': return [ring, line([x - r * 0.7, y - r * 0.7], [x + r * 0.7, y + r * 0.7], 'thin')];
        case 'fan': return [ring, line([x - r * 0.7, y - r * 0.7], [x + r * 0.7, y + r * 0.7], 'thin'), line([x - r * 0.7, y + r * 0.7], [x + r * 0.7, y - r * 0.7], 'thin')];
        case 'register': return [square, line([x - r, y - r], [x + r, y + r], 'thin'), line([x - r, y + r], [x + r, y - r], 'thin')];
        case 'junction-box': return [square, rectangle(x - r * 0.45, y - r * 0.45, x + r * 0.45, y + r * 0.45, null, 'ink')];
        case 'access-panel': return [square, line([x - r, y + r], [x + r, y - r], 'thin')];
        default: return [square];
    }
}
