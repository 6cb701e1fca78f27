import { minus, type Point } from './point.ts';

const DEGREES = 180 / Math.PI;

/** The angle at `at` on the right of somebody who walks from `before` to `after`, in degrees: 90 in the corner of a room walked clockwise. */
export function angleOnTheRight(before: Point, at: Point, after: Point): number {
    const back = minus(before, at), on = minus(after, at);
    const turned = degreesOf(on.x * back.y - on.y * back.x, on.x * back.x + on.y * back.y);
    return turned <= 0 ? turned + 360 : turned;
}

/** atan2 in degrees, with the angles of the compass exact. */
export function degreesOf(across: number, along: number): number {
    if (across === 0) return along < 0 ? 180 : 0;
    if (along === 0) return across < 0 ? -90 : 90;
    if (across === along) return across < 0 ? -135 : 45;
    if (across === 0 - along) return across < 0 ? -45 : 135;
    return Math.atan2(across, along) * DEGREES;
}

export function radians(degrees: number): number {
    return degrees / DEGREES;
}
