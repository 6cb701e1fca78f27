import {
    BufferAttribute, BufferGeometry, DirectionalLight, DoubleSide, FrontSide, Group, HemisphereLight, LineBasicMaterial, LineSegments, Mesh, MeshBasicMaterial,
    MeshLambertMaterial,
    Plane, PlaneGeometry, Scene, Shape, ShapeGeometry, Vector2, Vector3, type Material, type Object3D,
} from 'three';
import type { ChangedInView } from '../../pages/view/changed.ts';
import type { ViewContent, ViewPiece } from '../../pages/view/content.ts';
import type { CutFrom } from '../../pages/view/state.ts';
import { TICKS_PER_INCH } from '../../quantity/ticks.ts';
import { PARTS, type Part } from '../../takeoff/model.ts';
import type { Palette } from './colors.ts';
import { arrivalsIn, type Moment } from '../../pages/view/playing.ts';
import { Arriving } from './arriving.ts';
import { capsOf } from './caps.ts';
import { ChangedLayer } from './changed-layer.ts';
import { buffersOf, geometryOf, type Buffers } from './geometry.ts';
import { woodMaterial } from './wood.ts';

/** All pieces of one part: drawn in one stroke, moved and hidden together. */
interface PartGroup {
    readonly part: Part;
    readonly group: Group;
    readonly mesh: Mesh;
    readonly caps: Mesh;
    readonly capEdges: LineSegments;
    readonly edges: LineSegments;
    /** In the order in which they are put up, where that is known. */
    readonly pieces: readonly ViewPiece[];
    readonly buffers: Buffers;
    /** So many of them are shown, from the first. */
    shown: number;
}

/** How many steps down a part goes when the beam is taken apart, in the order in which it is built: what stays up is put up first. */
const STEPS: Readonly<Record<Part, number>> = { panel: 0, blocking: 0, band: 0, trim: 1, spacer: 1.6, cleat: 2.8, side: 3.6, bottom: 5, timber: 3, molding: 6 };
/** Walls are shown this much farther down than the beams, in inches. */
const WALL_BELOW = 5;
/** What lies against walls and ceiling stands before them, however far away the eye is. */
const BEHIND = { polygonOffset: true, polygonOffsetFactor: 3, polygonOffsetUnits: 3 };
const OFF_THE_WALL = 0.05;
/** Cut ends lie this far on the side that is left, in inches, so that the cut does not take them too. */
const INSIDE = 0.002;

/** The ceiling as a scene: pieces by part, the ceiling and walls they hang in, light. */
export class CeilingScene {
    readonly scene = new Scene();
    private readonly parts: PartGroup[] = [];
    private readonly cutPlane = new Plane(new Vector3(0, 0, -1), 0);
    private readonly planes: Plane[] = [];
    private readonly marks = new Group();
    /** To be given back to the graphics card: with the scene, and with the marks, which change with the cursor. */
    private readonly made: { dispose(): void }[] = [];
    private readonly madeForMarks: { dispose(): void }[] = [];
    private readonly sun = new DirectionalLight(0xffffff, 1.5);
    private apart = 0;
    /** The place of each piece in the order of putting up. */
    private readonly rank: ReadonlyMap<string, number>;
    private arriving: Arriving | undefined;
    private changed: ChangedLayer | undefined;
    private isShown: (part: Part) => boolean = () => true;

    constructor(private readonly content: ViewContent, private readonly palette: Palette) {
        this.rank = new Map(content.order ? arrivalsIn(content.order).map(({ key }, i) => [key, i]) : []);
        const { width, length, depth } = this.size;
        for (const part of PARTS) this.addPart(part);
        this.addRoom(depth);
        this.addLight(width, length);
        this.scene.add(this.marks);
    }

    /** In inches. */
    get size(): { readonly width: number; readonly length: number; readonly depth: number } {
        const { width, length, depth } = this.content.size;
        return { width: width / TICKS_PER_INCH, length: length / TICKS_PER_INCH, depth: depth / TICKS_PER_INCH };
    }

    /** The box that all of it stands in, as far as it is taken apart and not cut away. */
    get bounds(): { readonly min: Vector3; readonly max: Vector3 } {
        const { width, length, depth } = this.size;
        const min = new Vector3(0, -depth - WALL_BELOW - 5 * this.step() * this.apart, 0), max = new Vector3(width, 0, length);
        const { normal, constant } = this.cutPlane;
        if (this.planes.length > 0) {
            if (normal.x + normal.z < 0) max.min(new Vector3(normal.x < 0 ? constant : Infinity, Infinity, normal.z < 0 ? constant : Infinity));
            else min.max(new Vector3(normal.x > 0 ? -constant : -Infinity, -Infinity, normal.z > 0 ? -constant : -Infinity));
        }
        return { min, max };
    }

    takeApart(share: number): void {
        this.apart = share;
        for (const { part, group } of this.parts) group.position.y = this.heightOf(part);
    }

    show(isShown: (part: Part) => boolean): void {
        this.isShown = isShown;
        for (const { part, group } of this.parts) group.visible = isShown(part);
    }

    /** Marks what is otherwise since a commit, or no longer; null: nothing. After all that moves and hides parts. */
    showChanged(changes: ChangedInView | null, pixelRatio: number): void {
        if (!changes) {
            this.changed?.dispose();
            this.changed = undefined;
            return;
        }
        this.changed ??= new ChangedLayer(changes, this.parts, this.content, this.scene, { palette: this.palette, planes: this.planes, pixelRatio });
        this.changed.stand(this.isShown, part => this.heightOf(part));
    }

    private heightOf(part: Part): number {
        return -STEPS[part] * this.step() * this.apart;
    }

    /** As it is seen at this moment of putting up; null: all of it. True where pieces have come or gone. */
    stand(moment: Moment | null): boolean {
        let isOther = false;
        for (const part of this.parts) {
            const shown = moment ? part.pieces.filter(({ key }) => (this.rank.get(key) ?? Infinity) < moment.up).length : part.pieces.length;
            if (shown === part.shown) continue;
            isOther = true;
            part.shown = shown;
            part.mesh.geometry.setDrawRange(0, part.buffers.starts[shown]!);
            part.edges.geometry.setDrawRange(0, part.buffers.edgeStarts[shown]!);
        }
        this.arrive(moment?.moving ?? null);
        return isOther;
    }

    private arrive(moving: Moment['moving']): void {
        if (this.arriving && this.arriving.key !== moving?.arrival.key) {
            this.arriving.dispose();
            this.arriving = undefined;
        }
        const piece = moving && this.content.pieces.find(({ key }) => key === moving.arrival.key);
        const part = piece && this.parts.find(each => each.part === piece.part);
        if (!moving || !piece || !part?.group.visible) return;
        const looks = { color: this.palette.parts[piece.part], line: this.palette.lit, planes: this.planes };
        this.arriving ??= new Arriving(piece, moving.arrival, this.content, looks, part.group);
        this.arriving.take(moving.pose);
    }

    cut(share: number, from: CutFrom): void {
        const { width, length } = this.size;
        const inward: Readonly<Record<CutFrom, readonly [Vector3, number]>> = {
            south: [new Vector3(0, 0, -1), length * (1 - share)], north: [new Vector3(0, 0, 1), -length * share],
            east: [new Vector3(-1, 0, 0), width * (1 - share)], west: [new Vector3(1, 0, 0), -width * share],
        };
        const [normal, constant] = inward[from];
        this.cutPlane.set(normal, constant);
        this.planes.length = 0;
        if (share > 0) this.planes.push(this.cutPlane);
        for (const part of this.parts) this.cap(part, share > 0);
    }

    /** Where boards are cut open: their ends, and the line round each. */
    private cap({ caps, capEdges, pieces, shown }: PartGroup, isCut: boolean): void {
        caps.visible = capEdges.visible = isCut;
        if (!isCut) return;
        const { normal, constant } = this.cutPlane;
        const axis = normal.x === 0 ? 2 : 0;
        const inward = axis === 0 ? normal.x : normal.z;
        const { positions, edges } = capsOf(pieces.slice(0, shown), this.content, axis, -constant * inward + inward * INSIDE);
        for (const [object, numbers] of [[caps, positions], [capEdges, edges]] as const) {
            object.geometry.dispose();
            object.geometry.setAttribute('position', new BufferAttribute(numbers, 3));
            object.geometry.computeBoundingSphere();
        }
    }

    /** The piece that was hit, out of what is shown and not cut away. */
    pieceAt(object: Object3D, face: number, point: Vector3): ViewPiece | undefined {
        if (this.planes.some(plane => plane.distanceToPoint(point) < 0)) return undefined;
        const part = this.parts.find(({ mesh }) => mesh === object);
        return part ? part.pieces[part.buffers.pieceOf[face]!] : this.changed?.pieceAt(object, face);
    }

    get meshes(): readonly Mesh[] {
        return [...this.parts, ...this.changed?.left ?? []].filter(({ group }) => group.visible).map(({ mesh }) => mesh);
    }

    /** Lights pieces up: their surface in the color, and their edges through whatever lies before them. */
    mark(lit: ReadonlySet<string>, wrong: ReadonlySet<string>): void {
        this.marks.clear();
        for (const each of this.madeForMarks.splice(0)) each.dispose();
        for (const [keys, color, order] of [[wrong, this.palette.wrong, 1], [lit, this.palette.lit, 2]] as const) {
            for (const { part, pieces, group, shown } of [...this.parts, ...this.changed?.left ?? []]) {
                const own = pieces.slice(0, shown).filter(({ key }) => keys.has(key));
                if (own.length === 0 || !group.visible) continue;
                const { geometry, lines } = geometryOf(buffersOf(own, this.content));
                const paint = new MeshLambertMaterial({
                    color: this.palette.parts[part].clone().lerp(color, 0.72), clippingPlanes: this.planes, polygonOffset: true, polygonOffsetFactor: -1,
                    polygonOffsetUnits: -1,
                });
                const line = new LineBasicMaterial({
                    color, clippingPlanes: this.planes, depthTest: false, transparent: true, opacity: order === 1 ? 0.6 : 0.95,
                });
                this.madeForMarks.push(geometry, lines, paint, line);
                const through = new LineSegments(lines, line);
                through.renderOrder = 10 + order;
                const both = new Group();
                both.position.copy(group.position);
                both.add(new Mesh(geometry, paint), through);
                this.marks.add(both);
            }
        }
    }

    dispose(): void {
        this.arriving?.dispose();
        this.changed?.dispose();
        for (const each of [...this.made, ...this.madeForMarks]) each.dispose();
        this.sun.shadow.map?.dispose();
    }

    private step(): number {
        return Math.max(4, this.size.depth * 0.75);
    }

    private keep<M extends Material>(material: M): M {
        this.made.push(material);
        return material;
    }

    private addPart(part: Part): void {
        const rankOf = ({ key }: ViewPiece): number => this.rank.get(key) ?? this.rank.size;
        const pieces = this.content.pieces.filter(piece => piece.part === part).sort((a, b) => rankOf(a) - rankOf(b));
        if (pieces.length === 0) return;
        const { palette, planes } = this;
        const buffers = buffersOf(pieces, this.content);
        const { geometry, lines } = geometryOf(buffers);
        this.made.push(geometry, lines);
        const mesh = new Mesh(geometry, this.keep(woodMaterial(palette.parts[part], planes, palette.flat)));
        mesh.castShadow = mesh.receiveShadow = !palette.flat;
        const [end, endLine] = [new BufferGeometry(), new BufferGeometry()];
        this.made.push(end, endLine);
        const caps = new Mesh(end, this.keep(new MeshBasicMaterial({ color: palette.cut.clone().lerp(palette.parts[part], 0.35), side: DoubleSide })));
        const capEdges = new LineSegments(endLine, this.keep(new LineBasicMaterial({ color: palette.edge })));
        caps.visible = capEdges.visible = false;
        const edges = new LineSegments(lines, this.keep(new LineBasicMaterial({
            color: palette.edge, transparent: true, opacity: palette.edgeOpacity, clippingPlanes: planes,
        })));
        const group = new Group();
        group.add(mesh, caps, capEdges, edges);
        this.scene.add(group);
        this.parts.push({ part, group, mesh, caps, capEdges, edges, pieces, buffers, shown: pieces.length });
    }

    /** The ceiling over the room's outline, and the inner face of each wall; from outside one looks through them. */
    private addRoom(depth: number): void {
        const { palette, planes } = this, high = depth + WALL_BELOW;
        const corners = this.content.outline.map(([x, y]) => new Vector2(x / TICKS_PER_INCH, y / TICKS_PER_INCH));
        const add = (geometry: BufferGeometry, color: Palette['wall'], place: (mesh: Mesh) => void): void => {
            const mesh = new Mesh(geometry, this.keep(palette.flat ? new MeshBasicMaterial({ color, side: FrontSide, clippingPlanes: planes, ...BEHIND })
                : new MeshLambertMaterial({ color, side: FrontSide, clippingPlanes: planes, ...BEHIND })));
            this.made.push(geometry);
            place(mesh);
            mesh.receiveShadow = true;
            this.scene.add(mesh);
        };
        add(new ShapeGeometry(new Shape(corners)), palette.ceiling, mesh => { mesh.rotation.x = Math.PI / 2; mesh.position.y = OFF_THE_WALL; });
        for (const [i, from] of corners.entries()) {
            // the room lies to the right of a wall as one goes round it, and a plane's face looks there when it is turned along the wall
            const to = corners[(i + 1) % corners.length]!, turn = Math.atan2(from.y - to.y, to.x - from.x),
                [out, back] = [Math.sin(turn) * OFF_THE_WALL, Math.cos(turn) * OFF_THE_WALL];
            add(new PlaneGeometry(from.distanceTo(to), high), palette.wall, mesh => {
                mesh.rotation.y = turn;
                mesh.position.set((from.x + to.x) / 2 - out, -high / 2, (from.y + to.y) / 2 - back);
            });
        }
    }

    /** As by day: soft from all around, and from a window low in the south-west, whose light the beams take from each other. */
    private addLight(width: number, length: number): void {
        const { sun, scene } = this;
        if (this.palette.flat) {
            scene.add(new HemisphereLight(0xffffff, 0xffffff, Math.PI));
            return;
        }
        scene.add(new HemisphereLight(0xdfe6ee, 0xfff6e8, 1.9));
        const reach = Math.hypot(width, length);
        sun.position.set(width / 2 - reach * 0.75, -reach * 0.8, length / 2 + reach * 0.55);
        sun.target.position.set(width / 2, 0, length / 2);
        sun.castShadow = true;
        sun.shadow.mapSize.set(2048, 2048);
        sun.shadow.radius = 5;
        sun.shadow.bias = -0.0006;
        sun.shadow.normalBias = 0.12;
        Object.assign(sun.shadow.camera, { left: -reach * 0.62, right: reach * 0.62, top: reach * 0.62, bottom: -reach * 0.62, near: 1, far: reach * 3 });
        // from above there is no window; what is up there is seen all the same
        const attic = new DirectionalLight(0xffffff, 0.9);
        attic.position.set(width * 0.2, reach, length);
        scene.add(sun, sun.target, attic);
    }
}
