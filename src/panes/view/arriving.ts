import { BufferAttribute, BufferGeometry, Group, LineBasicMaterial, LineSegments, Mesh, MeshLambertMaterial, type Color, type Plane } from 'three';
import type { ViewContent, ViewPiece } from '../../pages/view/content.ts';
import type { Arrival } from '../../pages/view/order.ts';
import { placeOn, type PoseInView } from '../../pages/view/playing.ts';
import { TICKS_PER_INCH } from '../../quantity/ticks.ts';
import { buffersOf } from './geometry.ts';

/** What bends is cut into so many stretches, each straight. */
const STRETCHES = 24;

interface Looks { readonly color: Color; readonly line: Color; readonly planes: Plane[] }

/** One piece on its way to its place: moved as a whole while it is straight, corner by corner while it leans or bends. */
export class Arriving {
    readonly key: string;
    private readonly group = new Group();
    private readonly geometry = new BufferGeometry();
    private readonly lines = new BufferGeometry();
    private readonly materials: readonly [MeshLambertMaterial, LineBasicMaterial];
    /** As it stands in the end: corners of triangles and of edges, in inches. */
    private readonly home: readonly [Float32Array, Float32Array];

    /** It joins the `parent`, with which it is moved and hidden. */
    constructor(
        piece: ViewPiece, private readonly arrival: Arrival, content: ViewContent, { color, line, planes }: Looks, parent: Group,
    ) {
        this.key = piece.key;
        const { positions, edges } = buffersOf([piece], content);
        this.home = arrival.frame ? [inStretches(positions, 3), inStretches(edges, 2)] : [positions, edges];
        const [corners, ends] = this.home;
        this.geometry.setAttribute('position', new BufferAttribute(corners.slice(), 3));
        this.lines.setAttribute('position', new BufferAttribute(ends.slice(), 3));
        this.geometry.computeVertexNormals();
        this.materials = [
            new MeshLambertMaterial({
                color: color.clone().lerp(line, 0.35), clippingPlanes: planes, polygonOffset: true, polygonOffsetFactor: -1, polygonOffsetUnits: -1,
            }),
            new LineBasicMaterial({ color: line, clippingPlanes: planes }),
        ];
        const mesh = new Mesh(this.geometry, this.materials[0]), outline = new LineSegments(this.lines, this.materials[1]);
        // where it goes may lie outside of the box it came from
        mesh.frustumCulled = outline.frustumCulled = false;
        this.group.add(mesh, outline);
        parent.add(this.group);
    }

    take(pose: PoseInView): void {
        const { frame } = this.arrival;
        if (!frame) {
            this.group.position.set(pose.aside.x / TICKS_PER_INCH, 0 - pose.below / TICKS_PER_INCH, pose.aside.y / TICKS_PER_INCH);
            return;
        }
        for (const [i, geometry] of [this.geometry, this.lines].entries()) {
            const home = this.home[i]!, position = geometry.getAttribute('position') as BufferAttribute;
            for (let at = 0; at < home.length; at += 3) {
                const [east, up, south] = [home[at]!, home[at + 1]!, home[at + 2]!].map(inches => inches * TICKS_PER_INCH) as [number, number, number];
                const { x, y, z } = placeOn({ x: east, y: south, z: 0 - up }, pose, frame);
                position.setXYZ(at / 3, x / TICKS_PER_INCH, 0 - z / TICKS_PER_INCH, y / TICKS_PER_INCH);
            }
            position.needsUpdate = true;
        }
        this.geometry.computeVertexNormals();
    }

    dispose(): void {
        this.group.removeFromParent();
        for (const each of [this.geometry, this.lines, ...this.materials]) each.dispose();
    }
}

/** Triangles, or edges, cut into short ones, so that they can bend: each side of so many stretches. `corners`: three of a triangle, two of an edge. */
export function inStretches(positions: Float32Array, corners: 2 | 3): Float32Array {
    const cut: number[] = [], n = STRETCHES, at = (from: number, i: number): number[] => [...positions.subarray(from + 3 * i, from + 3 * i + 3)];
    for (let from = 0; from < positions.length; from += 3 * corners) {
        const a = at(from, 0), b = at(from, 1), c = corners === 3 ? at(from, 2) : a;
        const spot = (i: number, j: number): number[] => a.map((value, axis) => value + (b[axis]! - value) * i / n + (c[axis]! - value) * j / n);
        if (corners === 2) {
            for (let i = 0; i < n; i++) cut.push(...spot(i, 0), ...spot(i + 1, 0));
            continue;
        }
        for (let i = 0; i < n; i++) for (let j = 0; i + j < n; j++) {
            cut.push(...spot(i, j), ...spot(i + 1, j), ...spot(i, j + 1));
            if (i + j < n - 1) cut.push(...spot(i + 1, j), ...spot(i + 1, j + 1), ...spot(i, j + 1));
        }
    }
    return new Float32Array(cut);
}
