import { crossing, directionOf, squareThrough, turn } from '../plane/line.ts';
import { reach, type Point } from '../plane/point.ts';
import type { Flank } from './carriers.ts';
import { isOutside } from './corners.ts';
import { isBreak, stretchesOf, type Border, type FlankWalk, type Stretch } from './flank-walks.ts';
import type { Faceless, NoSide } from './model.ts';
import { hasSide, sideRunOf } from './sides.ts';
import type { Unit } from './unit.ts';

/**
 * Stretches of a flank that have no length at the face: where the face of a beam lies exactly in line with that of a half beam or a band round
 * an outside corner, or two beams stand against each other. Nothing is seen of a side there, and none is cut: the two that it would stand between run
 * on, square, to the back of where it would be, which closes the corner. Common practice, no source.
 */
export function facelessIn(walks: readonly FlankWalk[], unit: Unit): Faceless {
    const found = new Map<string, NoSide | null>();
    const isFaceless = (stretch: Stretch): boolean => Math.abs(faceOf(stretch)) <= ROUNDING * unit.perTick;
    for (const walk of walks) {
        // what closes an end is seen below what hides it
        if (walk.flank.closes) continue;
        for (const stretch of stretchesOf(walk, () => true)) if (isFaceless(stretch)) found.set(keyOf(stretch), null);
        if (!hasSide(walk.flank)) continue;
        for (const stretch of stretchesOf(walk, isBreak)) {
            if (isFaceless(stretch)) found.set(keyOf(stretch), { of: walk.flank.of.name, flank: walk.flank.side, nth: stretch.nth });
        }
    }
    return found;
}

/** In ticks: what is shorter is rounding. */
export const ROUNDING = 2;

/** Two flanks follow one another in one corner at most, so the two that a stretch lies between tell it. */
export function keyOf({ flank, start, end }: Stretch): string {
    return `${start.other.id} ${flank.id} ${end.other.id}`;
}

/** Its length at the face, from corner to corner of the coffer. */
export function faceOf({ flank, start, end }: Stretch): number {
    return reach(cornerOf(start.other, flank), cornerOf(flank, end.other), directionOf(flank.base));
}

/** Where a coffer goes from one face to the next; two walls in line go on across where they join. */
export function cornerOf(before: Flank, after: Flank): Point {
    const corner = crossing(before.face, after.face);
    if (corner) return corner;
    const joint = after.of.kind === 'wall' ? after.of.start : { x: 0, y: 0 };
    return crossing(after.face, squareThrough(after.base, joint))!;
}

/** The stretches that sides are cut for, what stands beside a stretch without a face running past it. */
export function brokenStretches(walks: readonly FlankWalk[], faceless: Faceless): Stretch[] {
    const all = walks.filter(({ flank }) => hasSide(flank)).flatMap(walk => stretchesOf(walk, isBreak));
    if (faceless.size === 0) return all;
    const gone = all.filter(stretch => faceless.has(keyOf(stretch)));
    const past = (own: Flank, border: Border, beyond: (stretch: Stretch) => readonly [Flank, Flank]): Border => {
        const between = border.cut === null || border.cut === 'dies' ? undefined : gone.find(stretch => stretch.flank === border.other && beyond(stretch)[0] === own);
        return between ? runningPast(border, own, beyond(between)[1], between.start.other === own) : border;
    };
    return all.filter(stretch => !gone.includes(stretch)).map(({ flank, start, end, nth }) => ({
        flank, nth, start: past(flank, start, each => [each.end.other, each.start.other]), end: past(flank, end, each => [each.start.other, each.end.other]),
    }));
}

/** Sides that would end against another, and have no length left at their back: too near to an outside corner. There the other ends against them. */
export function turnedIn(stretches: readonly Stretch[], unit: Unit): ReadonlySet<string> {
    const butted = stretches.filter(({ start, end }) => start.cut === 'butt' || end.cut === 'butt');
    return new Set(butted.filter(stretch => sideRunOf(stretch).some(({ face, back, flank }) => {
        const way = directionOf(flank.base);
        return reach(back.from, back.to, way) <= 0 && reach(face.from, face.to, way) > ROUNDING * unit.perTick;
    })).map(keyOf));
}

export function withTurned(stretches: readonly Stretch[], turned: ReadonlySet<string>): readonly Stretch[] {
    if (turned.size === 0) return stretches;
    const short = stretches.filter(stretch => turned.has(keyOf(stretch)));
    const cut = (border: Border, isShort: boolean, other: (stretch: Stretch) => boolean): Border =>
        isShort && border.cut === 'butt' ? { ...border, cut: 'past' } : border.cut === 'past' && short.some(other) ? { ...border, cut: 'butt' } : border;
    return stretches.map(stretch => {
        const { flank, start, end } = stretch, isShort = turned.has(keyOf(stretch));
        return {
            ...stretch, start: cut(start, isShort, each => each.flank === start.other && each.end.other === flank && each.end.cut === 'butt'),
            end: cut(end, isShort, each => each.flank === end.other && each.start.other === flank && each.start.cut === 'butt'),
        };
    });
}

/** `next`: what stands on the other side of where there is none. In line with it, or against it, both end at the back; at an angle they meet each other. */
function runningPast(border: Border, own: Flank, next: Flank, comesFirst: boolean): Border {
    if (turn(own.base, next.base) === 0) return { ...border, cut: 'past', endsSquare: true, ...own.base.a * next.base.a + own.base.b * next.base.b > 0 && { joins: next } };
    const outside = comesFirst ? isOutside(own, next) : isOutside(next, own);
    return { other: next, outside, cut: !hasSide(next) ? 'dies' : outside ? 'outside-miter' : 'miter' };
}
