import type { Ceiling, Line } from '../../ceiling/model.ts';
import type { ShapedWall } from '../../ceiling/shape.ts';
import type { Show } from '../../quantity/print-length.ts';
import { roundTo } from '../../quantity/round.ts';
import { group, text, type Item, type Point } from '../display-list.ts';
import { drawStack, layStack, type Stack } from '../dimensions/stack.ts';
import { figure } from '../figures.ts';
import { patched } from '../patch.ts';
import { CAP_HEIGHT } from '../text/measure-text.ts';
import { alongFromStart, endsOf, runsAskew } from './line-ends.ts';
import { readingAngle, turnedBy } from './turn.ts';
import { toX, toY, type PlanView } from './view.ts';
import { wallThickness } from './walls.ts';

const SIZE = 8.6;
/** Between a wall and the figure of its length. */
const OFF = 3.4;

/** A rectangle is told by its two directions, every other room by its walls. */
export function isRectangle({ walls }: Pick<Ceiling, 'walls'>): boolean {
    return walls.length === 4 && walls.every(({ from, to }) => from.x === to.x || from.y === to.y);
}

/** What stands beside one wall, outside: its length, and over it where lines begin at it that run askew, by their centers. */
export interface BesideWall { readonly wall: ShapedWall; readonly words: string; readonly stack?: Stack }

/** @param k points to a tick. */
export function besideWalls(ceiling: Ceiling, show: Show, k: number): readonly BesideWall[] {
    const askew = ceiling.lines.filter(runsAskew), step = ceiling.room.job.cutTo.value;
    return ceiling.walls.flatMap((wall): BesideWall[] => {
        const words = figure(wall.length, show), isTold = isToldByStrings(ceiling, wall), places = placesOn(ceiling, wall, askew);
        if (places.length === 0) return isTold ? [] : [{ wall, words }];
        const inOrder = isTurned(wall) ? places.map(place => wall.length - place).reverse() : places;
        const at = [0, ...inOrder.map(place => roundTo(place, step)), wall.length], stops = [0, ...inOrder, wall.length].map(place => place * k);
        const id = `dimensions.wall.${wall.name}`;
        const lines = { id: `${id}.lines`, title: `Lines along the ${wall.name} wall, by their centers`, stops, figures: at.slice(1).map((place, i) => figure(place - at[i]!, show)) };
        const whole = { id, title: `The ${wall.name} wall`, stops: [0, wall.length * k], figures: [words] };
        return [{ wall, words, stack: layStack(isAbove(wall) ? 'top' : 'foot', [[lines], ...isTold ? [] : [[whole]]], SIZE, wallThickness(k) + 10) }];
    });
}

/** How much room it takes off the inner face of any wall. */
export function besideDepth(all: readonly BesideWall[], k: number): number {
    return Math.max(0, ...all.map(({ stack }) => stack?.depth ?? wallThickness(k) + OFF + SIZE));
}

export function drawBesideWalls(all: readonly BesideWall[], view: PlanView): readonly Item[] {
    const thick = wallThickness(view.pointsPerTick);
    return all.map(({ wall, words, stack }) => {
        const long = wall.length * view.pointsPerTick, { from, to } = wall, start = isTurned(wall) ? to : from;
        const flat: readonly Item[] = stack ? drawStack(stack, 0, thick + 3)
            : patched(text([long / 2, isAbove(wall) ? -thick - OFF : thick + OFF + SIZE * CAP_HEIGHT], words, { size: SIZE, anchor: 'middle' }), 'paper');
        return group(`wall.${wall.name}`, { title: `The ${wall.name} wall: ${words}` }, turnedBy(flat, readingAngle(wayOf(wall)), [toX(view, start.x), toY(view, start.y)]));
    });
}

/** The north and the west wall of the box round the room, whole, where strings for all of the room stand along them. */
function isToldByStrings(ceiling: Ceiling, { from, to }: ShapedWall): boolean {
    if (ceiling.lines.some(runsAskew) || !ceiling.walls.every(wall => wall.from.x === wall.to.x || wall.from.y === wall.to.y)) return false;
    if (isRectangle(ceiling)) return true;
    return from.y === 0 && to.y === 0 && Math.abs(from.x - to.x) === ceiling.width
        || from.x === 0 && to.x === 0 && Math.abs(from.y - to.y) === ceiling.length;
}

/** Where lines that run askew begin at this wall, or end that begin at none; in ticks from its beginning. */
function placesOn(ceiling: Ceiling, wall: ShapedWall, askew: readonly Line[]): readonly number[] {
    const places = askew.flatMap(line => {
        const ends = endsOf(ceiling, line), end = ends.find(each => each.wall);
        return end?.wall?.name === wall.name ? [alongFromStart(wall, end.at)] : [];
    });
    return places.sort((a, b) => a - b);
}

function wayOf({ from, to }: ShapedWall): Point {
    return [to.x - from.x, to.y - from.y];
}

/** Words along it are read against the way it runs. */
function isTurned(wall: ShapedWall): boolean {
    const [x, y] = wayOf(wall), turn = readingAngle([x, y]) * Math.PI / 180;
    return x * Math.cos(turn) - y * Math.sin(turn) < 0;
}

/** The outside, at the left of who walks clockwise round the room, is over words that are read along the wall. */
function isAbove(wall: ShapedWall): boolean {
    return !isTurned(wall);
}
