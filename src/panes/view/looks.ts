import { Vector3, type PerspectiveCamera } from 'three';
import type { Look } from '../../pages/view/state.ts';

/** From the middle of the ceiling towards the eye, for each way to look at it. */
const DIRECTIONS: Readonly<Record<Look, Vector3>> = {
    floor: new Vector3(-0.42, -0.78, 0.86).normalize(),
    below: new Vector3(0, -1, 0.0001).normalize(),
    above: new Vector3(-0.55, 0.8, 0.95).normalize(),
};

export function directionOf(look: Look): Vector3 {
    return DIRECTIONS[look].clone();
}

/** A box by its two corners. */
export interface Bounds { readonly min: Vector3; readonly max: Vector3 }

export interface Standing { readonly target: Vector3; readonly distance: number }

/**
 * Where to look at and from how far, looking against `direction`, so that all of the box is in the picture and in its middle,
 * with a little air around.
 */
export function standingFor({ min, max }: Bounds, direction: Vector3, { fov, aspect }: Pick<PerspectiveCamera, 'fov' | 'aspect'>): Standing {
    const back = direction.clone().normalize();
    const aside = new Vector3(0, 1, 0).cross(back).normalize();
    const up = back.clone().cross(aside);
    const high = Math.tan(fov * Math.PI / 360) / AIR, wide = high * aspect;
    const corners = [min.x, max.x].flatMap(x => [min.y, max.y].flatMap(y => [min.z, max.z].map(z => new Vector3(x, y, z))));
    const target = min.clone().add(max).multiplyScalar(0.5);
    // of the near and the far corners, seen in perspective, the middle is found in a few steps
    let distance = 1;
    for (let step = 0; step < 6; step++) {
        const seen = corners.map(corner => {
            const from = corner.clone().sub(target);
            return { towards: from.dot(back), x: from.dot(aside), y: from.dot(up) };
        });
        distance = Math.max(1, ...seen.map(({ towards, x, y }) => towards + Math.max(Math.abs(x) / wide, Math.abs(y) / high)));
        const middle = (along: 'x' | 'y') => {
            const shares = seen.map(corner => corner[along] / (distance - corner.towards));
            return (Math.min(...shares) + Math.max(...shares)) / 2 * distance;
        };
        target.add(aside.clone().multiplyScalar(middle('x'))).add(up.clone().multiplyScalar(middle('y')));
    }
    return { target, distance };
}
const AIR = 1.05;
