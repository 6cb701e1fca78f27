import { Document, WebIO, type Buffer as Bytes, type Material, type Mesh } from '@gltf-transform/core';
import { meshOf, type Corner } from '../../drawing/view/mesh.ts';
import type { Solid } from '../../dryfit/model.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { TICKS_PER_MM } from '../../quantity/ticks.ts';
import { toldLengths } from '../../takeoff/ends.ts';
import { PARTS, type Part } from '../../takeoff/model.ts';
import { atOnce, eachInSteps, type Steps } from '../../plain/steps.ts';
import { isCalm } from '../../plain/notice.ts';
import { cleanText } from '../../text/clean-text.ts';
import { partsTitle } from '../../job/part.ts';
import { partColor } from '../part-color.ts';

const METERS_PER_TICK = 1 / (1000 * TICKS_PER_MM);

/**
 * The pieces of a room as glTF 2.0 in one binary file: a node for every piece, named by its id, under a node for its part.
 * Meters, y up, x east, z south, as the format wants it; zero is the ceiling's north-west corner. The same pieces give
 * the same bytes. `notice`: why it is not to be built from, in the scene's name and extras.
 */
export function toGlb(name: string, solids: readonly Solid[], show: Show, notice: readonly string[] = []): Promise<Uint8Array> {
    return atOnce(glbInSteps(name, solids, show, notice));
}

/** Solids that are described in one step. */
const IN_STEP = 250;

/** The same step by step. */
export function* glbInSteps(name: string, solids: readonly Solid[], show: Show, notice: readonly string[]): Steps<Promise<Uint8Array>> {
    const document = new Document();
    document.getRoot().getAsset().generator = 'Cofferwright';
    const buffer = document.createBuffer();
    const scene = document.createScene(notice[0] === undefined || isCalm(notice) ? cleanText(name) : `${cleanText(name)} (${notice[0].replace(/:$/, '')})`);
    if (notice.length > 0) scene.setExtras({ standing: notice.map(cleanText) });
    document.getRoot().setDefaultScene(scene);
    for (const part of PARTS) {
        const own = solids.filter(solid => solid.piece.part === part);
        if (own.length === 0) continue;
        const material = materialOf(document, part);
        const group = document.createNode(partsTitle(part));
        scene.addChild(group);
        yield* eachInSteps(own, IN_STEP, solid => {
            const { piece } = solid, { back, face } = toldLengths(piece);
            group.addChild(document.createNode(piece.id).setMesh(meshFor(document, buffer, solid, material)).setExtras({
                part, where: piece.where, stock: piece.stock.name, length: printLength(back, show),
                ...(face === back ? {} : { lengthAtShortPoints: printLength(face, show) }),
            }));
        });
    }
    yield;
    return new WebIO().writeBinary(document);
}

function materialOf(document: Document, part: Part): Material {
    const color = [...partColor(part).map(linear), 1] as [number, number, number, number];
    return document.createMaterial(partsTitle(part)).setBaseColorFactor(color).setRoughnessFactor(0.9).setMetallicFactor(0);
}

/** A color as it is seen, as the share of light that it stands for (IEC 61966-2-1, sRGB). */
function linear(seen: number): number {
    const share = seen / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

/** Faces share no corners, so that each is lit flat. */
function meshFor(document: Document, buffer: Bytes, solid: Solid, material: Material): Mesh {
    const { corners, faces } = meshOf(solid);
    const positions: number[] = [];
    const normals: number[] = [];
    const triangles: number[] = [];
    for (const face of faces) {
        const points = face.map(i => corners[i]!);
        const first = positions.length / 3;
        const normal = upward(normalOf(points));
        for (const point of points) {
            positions.push(...upward(point).map(ticks => ticks * METERS_PER_TICK));
            normals.push(...normal);
        }
        for (let i = 2; i < points.length; i++) triangles.push(first, first + i - 1, first + i);
    }
    const accessor = (type: 'VEC3' | 'SCALAR', array: Float32Array | Uint16Array) => document.createAccessor().setType(type).setArray(array as never).setBuffer(buffer);
    const primitive = document.createPrimitive().setMaterial(material)
        .setAttribute('POSITION', accessor('VEC3', new Float32Array(positions))).setAttribute('NORMAL', accessor('VEC3', new Float32Array(normals)))
        .setIndices(accessor('SCALAR', new Uint16Array(triangles)));
    return document.createMesh(solid.piece.id).addPrimitive(primitive);
}

/** From z down to y up, by a quarter turn: east stays east, and south comes towards the eye. */
function upward([x, y, z]: readonly [number, number, number]): [number, number, number] {
    return [x, 0 - z, y];
}

/** Of length one, pointing out, by Newell's formula, which holds for any flat polygon. */
function normalOf(points: readonly Corner[]): readonly [number, number, number] {
    const sum = [0, 0, 0];
    for (const [i, [ax, ay, az]] of points.entries()) {
        const [bx, by, bz] = points[(i + 1) % points.length]!;
        sum[0]! += (ay - by) * (az + bz);
        sum[1]! += (az - bz) * (ax + bx);
        sum[2]! += (ax - bx) * (ay + by);
    }
    const length = Math.hypot(...sum);
    return [sum[0]! / length, sum[1]! / length, sum[2]! / length];
}
