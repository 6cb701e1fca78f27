import { Group, LineBasicMaterial, LineDashedMaterial, LineSegments, Mesh, MeshBasicMaterial, type Object3D, type Plane, type Scene } from 'three';
import type { ChangedInView } from '../../pages/view/changed.ts';
import type { ViewContent, ViewPiece } from '../../pages/view/content.ts';
import { COMES, type Comes } from '../../pages/view/state.ts';
import { PARTS, type Part } from '../../takeoff/model.ts';
import type { Palette } from './colors.ts';
import { buffersOf, geometryOf, type Buffers } from './geometry.ts';
import { hatchedMaterial } from './hatched.ts';

/** Pieces of a part that stood there, seen through and dashed. */
interface Left extends PartThere { readonly shown: number; readonly mesh: Mesh; readonly buffers: Buffers }

/** A part of the ceiling as it is. */
interface PartThere { readonly part: Part; readonly group: Group; readonly pieces: readonly ViewPiece[] }

/** Behind what stands in the same plane now. */
const BEHIND = { polygonOffset: true, polygonOffsetFactor: 2, polygonOffsetUnits: 2 };
/** In inches. */
const DASH = { dashSize: 2.2, gapSize: 1.6 };

/** What is otherwise since a commit: hatched where something has come, and as a ghost where something stood. */
export class ChangedLayer {
    readonly left: readonly Left[];
    private readonly hatched: readonly Group[];
    private readonly made: { dispose(): void }[] = [];

    constructor(
        { come, left }: ChangedInView, parts: readonly PartThere[], private readonly content: Pick<ViewContent, 'shapes'>,
        private readonly scene: Scene, private readonly looks: { readonly palette: Palette; readonly planes: Plane[]; readonly pixelRatio: number },
    ) {
        const howOf = new Map(come.map(({ key, how }) => [key, how]));
        this.hatched = parts.flatMap(({ group, pieces }) => COMES.flatMap(how => {
            const own = pieces.filter(({ key }) => howOf.get(key) === how);
            return own.length === 0 ? [] : [this.hatch(own, how, group)];
        }));
        this.left = PARTS.flatMap(part => {
            const own = left.filter(piece => piece.part === part);
            return own.length === 0 ? [] : [this.ghost(part, own)];
        });
    }

    /** With the parts, which are moved and hidden. */
    stand(isShown: (part: Part) => boolean, heightOf: (part: Part) => number): void {
        for (const { part, group } of this.left) {
            group.visible = isShown(part);
            group.position.y = heightOf(part);
        }
    }

    /** The ghost that an object is, at one of its faces. */
    pieceAt(object: Object3D, face: number): ViewPiece | undefined {
        const left = this.left.find(({ mesh }) => mesh === object);
        return left?.pieces[left.buffers.pieceOf[face]!];
    }

    dispose(): void {
        for (const each of [...this.hatched, ...this.left.map(({ group }) => group)]) each.removeFromParent();
        for (const each of this.made) each.dispose();
    }

    private hatch(pieces: readonly ViewPiece[], how: Comes, parent: Group): Group {
        const { palette, planes, pixelRatio } = this.looks, color = palette.comes[how], { geometry, lines } = geometryOf(buffersOf(pieces, this.content));
        const paint = hatchedMaterial(how, color, planes, pixelRatio), line = new LineBasicMaterial({ color, clippingPlanes: planes });
        this.made.push(geometry, lines, paint, line);
        const group = new Group();
        group.add(new Mesh(geometry, paint), new LineSegments(lines, line));
        parent.add(group);
        return group;
    }

    private ghost(part: Part, pieces: readonly ViewPiece[]): Left {
        const { palette: { left: color }, planes } = this.looks, buffers = buffersOf(pieces, this.content), { geometry, lines } = geometryOf(buffers);
        const paint = new MeshBasicMaterial({ color, clippingPlanes: planes, transparent: true, opacity: 0.1, depthWrite: false, ...BEHIND });
        const line = new LineDashedMaterial({ color, clippingPlanes: planes, ...DASH });
        this.made.push(geometry, lines, paint, line);
        const group = new Group(), mesh = new Mesh(geometry, paint);
        group.add(mesh, new LineSegments(lines, line).computeLineDistances());
        this.scene.add(group);
        return { part, group, pieces, shown: pieces.length, mesh, buffers };
    }
}
