import { Vector3, type PerspectiveCamera } from 'three';
import { eyeFor, type Vector } from '../../drawing/view/eye.ts';
import type { Look } from '../../pages/view/state.ts';

/** From the middle of the ceiling towards the eye, for each way to look at it. */
const DIRECTIONS: Readonly<Record<Look, Vector3>> = {
    floor: new Vector3(-0.42, -0.78, 0.86).normalize(),
    // not quite straight: which way is up in the picture has to be plain
    below: new Vector3(0, -1, 0.0001).normalize(),
    above: new Vector3(-0.55, 0.8, 0.95).normalize(),
};

export function directionOf(look: Look): Vector3 {
    return DIRECTIONS[look].clone();
}

/** A box by its two corners; y up, z south. */
interface Bounds { readonly min: Vector3; readonly max: Vector3 }

/** Where to stand, and what to look at, so that all of the box is in the picture, in its middle, with a little air around. */
export function standingFor({ min, max }: Bounds, direction: Vector3, { aspect }: Pick<PerspectiveCamera, 'aspect'>): { readonly at: Vector3; readonly target: Vector3 } {
    const eye = eyeFor({ least: downward(new Vector3(min.x, max.y, min.z)), most: downward(new Vector3(max.x, min.y, max.z)) }, downward(direction), aspect);
    const at = upward(eye.at), ahead = upward(eye.ahead);
    const middle = min.clone().add(max).multiplyScalar(0.5);
    // the picture turns about the spot of its middle that lies as deep as the middle of the box
    const distance = middle.clone().sub(at).dot(ahead);
    return { target: at.clone().add(ahead.clone().multiplyScalar(distance)), at: at.add(ahead.multiplyScalar(-distance * AIR)) };
}
const AIR = 0.05;

/** The drawings' z points down, a screen's y up. */
function downward({ x, y, z }: Vector3): Vector {
    return [x, z, -y];
}
function upward([x, y, z]: Vector): Vector3 {
    return new Vector3(x, -z, y);
}
