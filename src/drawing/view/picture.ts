import type { Ceiling } from '../../ceiling/model.ts';
import type { Prism, Solid } from '../../dryfit/model.ts';
import { atOnce, eachInSteps, type Steps } from '../../plain/steps.ts';
import { TICKS_PER_INCH } from '../../quantity/ticks.ts';
import type { Part, Piece } from '../../takeoff/model.ts';
import type { Point } from '../display-list.ts';
import { cleanText } from '../../text/clean-text.ts';
import { cross, dot, eyeFor, minus, seenAt, unit, type Eye, type Vector } from './eye.ts';
import { inTwo, type Face, type Shape } from './in-two.ts';
import { meshesOf } from './mesh.ts';
import { paintingInSteps, type Seen } from './order.ts';
import { shadowOn } from './shadow.ts';

/** A picture of the ceiling as it is seen from the room, in points; what comes later covers what came before. */
export interface Picture {
    readonly title: string; readonly description: string;
    readonly width: number; readonly height: number;
    /** The ceiling as found, and the shadows on it. */
    readonly ground: readonly Patch[]; readonly shadows: readonly (readonly Point[])[];
    /** Pieces and walls: where a wall juts into the room it may hide pieces. */
    readonly things: readonly (SeenPrism | SeenWall)[];
}
/** `light`: 0 for what is turned away from it, 1 for what faces it. */
export interface Patch { readonly points: readonly Point[]; readonly light: number }
/** What is seen of one prism of a piece. */
export interface SeenPrism {
    readonly piece: string; readonly part: Part; readonly faces: readonly Patch[]; readonly edges: readonly (readonly [Point, Point])[];
}

interface SeenWall { readonly wall: string; readonly faces: readonly Patch[] }

const WIDTH = 960;
const HEIGHT = 640;
const MARGIN = 14;
/** From the ceiling towards the eye: from the south-west, as one looks up coming in. */
const BACK: Vector = [-0.42, 0.86, 0.78];
/** Towards the window whose light throws shadows: low in the south-west. */
const WINDOW = unit([-0.75, 0.55, 0.8]);
/** Towards what lights the faces: the window, and more than it the floor. */
const LIGHT = unit([-0.42, 0.3, 0.86]);
const WALL_BELOW = 5 * TICKS_PER_INCH;

/** The ceiling from below, in perspective, with every piece that can be seen. */
export function drawView(ceiling: Ceiling, solids: readonly Solid[]): Picture {
    return atOnce(drawViewInSteps(ceiling, solids));
}

/** Solids, or what is drawn of them, that are worked out in one step. */
const IN_STEP = 400;

/** The same step by step. */
export function* drawViewInSteps(ceiling: Ceiling, solids: readonly Solid[]): Steps<Picture> {
    const { width, length, room } = ceiling;
    const depth = Math.max(0, ...solids.flatMap(solid => solid.prisms.map(({ foot }) => foot)));
    const eye = eyeFor({ least: [0, 0, 0], most: [width, length, depth + WALL_BELOW] }, BACK, (WIDTH - 2 * MARGIN) / (HEIGHT - 2 * MARGIN));
    const scale = (HEIGHT - 2 * MARGIN) / 2;
    const at = (spot: Vector): Point => {
        const [x, y] = seenAt(eye, spot);
        return [WIDTH / 2 + x * scale, HEIGHT / 2 - y * scale];
    };
    const thingsOf = (solid: Solid): Thing[] => meshesOf(solid).map((mesh, i) => ({ ...shapeOf(solid.prisms[i]!, mesh, eye), of: solid.piece }));
    const things: readonly Thing[] = [
        ...(yield* eachInSteps(solids, IN_STEP, thingsOf)).flat(),
        ...ceiling.walls.map((wall): Thing => ({ ...wallShape(wall, depth + WALL_BELOW, eye), of: wall })),
    ];
    const seen = (thing: Thing): Standing => {
        const corners = cornersOf(thing.prism);
        const away = corners.reduce((sum, corner) => sum + dot(minus(corner, eye.at), eye.ahead), 0) / corners.length;
        return { ...thing, frame: frameOf(corners.map(at)), depth: away };
    };
    const halves = (thing: Standing): readonly [Standing, Standing] | undefined => {
        const [one, other] = inTwo(thing) ?? [];
        return one && other && [seen({ ...one, of: thing.of }), seen({ ...other, of: thing.of })];
    };
    const outline = ceiling.walls.map(({ from: { x, y } }): Point => [x, y]);
    yield;
    const standing = yield* eachInSteps(things, IN_STEP, seen);
    const painted = yield* paintingInSteps(standing, eye.at, halves);
    const shown = yield* eachInSteps(painted.filter(({ faces }) => faces.length > 0), IN_STEP, each => drawn(each, at));
    const shadows = shadowsOf(solids, WINDOW, outline).map(shadow => shadow.map(([x, y]) => at([x, y, 0])));
    const title = ['Ceiling from below', room.title ?? room.name, room.job.title?.value].filter(Boolean).join(', ');
    return {
        title: cleanText(title), description: cleanText(`Seen from the floor, in perspective: ${solids.length} pieces.`), width: WIDTH, height: HEIGHT,
        // it looks straight down
        ground: [{ points: outline.map(([x, y]) => at([x, y, 0])), light: LIGHT[2] }],
        shadows, things: shown,
    };
}

/** A prism of a piece, or a wall, where it stands. */
type Thing = Shape & { readonly of: Piece | Wall };
type Standing = Thing & Seen;
type Wall = Ceiling['walls'][number];

function drawn({ of, faces, edges }: Thing, at: (spot: Vector) => Point): SeenPrism | SeenWall {
    const patches = faces.map(({ corners, light }): Patch => ({ points: corners.map(at), light }));
    return 'part' in of ? { piece: of.id, part: of.part, faces: patches, edges: edges.map(([from, to]) => [at(from), at(to)] as const) }
        : { wall: of.name, faces: patches };
}

/** Thick enough to be a prism, so thin that nothing is in it: what is seen of it is its inner face. */
const THIN = 8;

function wallShape({ from, to, length }: Wall, high: number, eye: Eye): Shape {
    const out = { x: (to.y - from.y) / length * THIN, y: (from.x - to.x) / length * THIN };
    const prism: Prism = { outline: [[from.x + out.x, from.y + out.y], [to.x + out.x, to.y + out.y], [to.x, to.y], [from.x, from.y]], top: 0, foot: high };
    const inner: readonly Vector[] = [[to.x, to.y, 0], [from.x, from.y, 0], [from.x, from.y, high], [to.x, to.y, high]];
    return { prism, faces: [inner].flatMap(face => facing(face, eye)), edges: [] };
}

function cornersOf({ outline, top, foot }: Prism): readonly Vector[] {
    return outline.flatMap(([x, y]): readonly Vector[] => [[x, y, top], [x, y, foot]]);
}

function frameOf(points: readonly Point[]): Seen['frame'] {
    const xs = points.map(([x]) => x), ys = points.map(([, y]) => y);
    return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), foot: Math.max(...ys) };
}

function shapeOf(prism: Prism, { corners, faces, edges }: ReturnType<typeof meshesOf>[number], eye: Eye): Shape {
    const front = faces.flatMap(face => facing(face.map(i => corners[i]!), eye));
    const onFront = ([from, to]: readonly [number, number]) => front.some(({ corners: [on, ...others] }) => {
        const normal = normalOf([on!, ...others]);
        return [from, to].every(i => Math.abs(dot(minus(corners[i]!, on!), normal)) < 2);
    });
    return { prism, faces: front, edges: edges.filter(onFront).map(([from, to]) => [corners[from]!, corners[to]!] as const) };
}

/** A face with the light on it; nothing where it looks away from the eye. */
function facing(corners: readonly Vector[], eye: Eye): Face[] {
    const normal = normalOf(corners);
    return dot(normal, minus(eye.at, corners[0]!)) <= 0 ? [] : [{ corners, light: Math.max(0, dot(normal, LIGHT)) }];
}

/** Pointing out of what it belongs to, of length one. */
function normalOf([a, b, c]: readonly Vector[]): Vector {
    return unit(cross(minus(b!, a!), minus(c!, a!)));
}

function shadowsOf(solids: readonly Solid[], light: Vector, outline: readonly Point[]): readonly (readonly Point[])[] {
    const prisms: readonly Prism[] = solids.flatMap(solid => solid.prisms);
    return prisms.map(prism => shadowOn(prism, light, outline)).filter(shadow => shadow.length > 2);
}
