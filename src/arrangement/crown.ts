import { radians } from '../plane/angle.ts';

/**
 * What a miter saw is set to for a crown that lies flat on its table. `spring`: degrees between its back and the wall (38 in most
 * of the trade, 45 in some); `corner`: degrees of the corner, inside or outside. In degrees, both positive.
 *
 *     miter = atan(sin spring / tan(corner / 2))      bevel = asin(cos spring x cos(corner / 2))
 */
export function sawFlat(spring: number, corner: number): { miter: number; bevel: number } {
    const half = radians(corner / 2), lean = radians(spring), degrees = (angle: number): number => Math.abs(angle) / radians(1);
    return { miter: degrees(Math.atan(Math.sin(lean) / Math.tan(half))), bevel: degrees(Math.asin(Math.cos(lean) * Math.cos(half))) };
}
