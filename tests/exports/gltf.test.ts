import { NodeIO, type Document, type Node } from '@gltf-transform/core';
import { validateBytes } from 'gltf-validator';
import { describe, expect, test } from 'vitest';
import { toGlb } from '../../src/exports/gltf/gltf.ts';
import { PARTS } from '../../src/takeoff/model.ts';
import { extentOf, MODELS, solidVolume } from './support/models.ts';
import { volumeOf } from './support/volume.ts';

/** Corners of a node's mesh in the scene, in meters, and its triangles. */
function surfaceOf(node: Node): { readonly corners: readonly (readonly [number, number, number])[]; readonly triangles: readonly number[] } {
    const [primitive] = node.getMesh()!.listPrimitives();
    const positions = primitive!.getAttribute('POSITION')!;
    const corners = Array.from({ length: positions.getCount() }, (_, i) => positions.getElement(i, []) as unknown as [number, number, number]);
    return { corners, triangles: [...primitive!.getIndices()!.getArray()!] };
}

describe.each(MODELS.map(model => [model.name, model] as const))('%s', (_name, { ceiling, solids, pieces }) => {
    const show = ceiling.room.job.show.value;
    const bytes = toGlb(ceiling.room.name, solids, show);
    const read = async (): Promise<Document> => new NodeIO().readBinary(await bytes);

    test('the validator of the format has nothing to say', async () => {
        const { issues, info } = await validateBytes(await bytes);
        expect(issues).toMatchObject({ numErrors: 0, numWarnings: 0, numInfos: 0, messages: [] });
        expect(info.drawCallCount).toBe(solids.length);
    });

    test('the same bytes every time', async () => {
        expect(Buffer.compare(await toGlb(ceiling.room.name, solids, show), await bytes)).toBe(0);
    });

    test('every piece of the cut list is a node with its name, under its part', async () => {
        const [scene] = (await read()).getRoot().listScenes();
        const groups = scene!.listChildren();
        expect(groups.length).toBe(PARTS.filter(part => pieces.pieces.some(piece => piece.part === part)).length);
        const nodes = groups.flatMap(group => group.listChildren());
        expect(nodes.map(node => node.getName()).sort()).toEqual(pieces.pieces.map(piece => piece.id).sort());
        for (const group of groups) {
            const parts = new Set(group.listChildren().map(node => node.getExtras()['part']));
            const materials = new Set(group.listChildren().map(node => node.getMesh()!.listPrimitives()[0]!.getMaterial()!.getName()));
            expect([parts.size, [...materials]]).toEqual([1, [group.getName()]]);
        }
    });

    test('each is where it stands in the room, in meters, and as large as its solid', async () => {
        const nodes = new Map((await read()).getRoot().listNodes().map(node => [node.getName(), node]));
        for (const solid of solids) {
            const { corners, triangles } = surfaceOf(nodes.get(solid.piece.id)!);
            const [west, east, north, south, top, foot] = extentOf(solid) as [number, number, number, number, number, number];
            const span = (axis: 0 | 1 | 2) => [Math.min(...corners.map(c => c[axis])), Math.max(...corners.map(c => c[axis]))];
            const found = [...span(0), ...span(1), ...span(2)];
            [west, east, -foot, -top, north, south].forEach((wanted, i) => expect(found[i], solid.piece.id).toBeCloseTo(wanted, 5));
            const volume = solidVolume(solid);
            // about its own corner, so that single precision is precise
            const [x, y, z] = corners[0]!;
            const about = corners.map(c => [c[0] - x, c[1] - y, c[2] - z] as const);
            expect(Math.abs(volumeOf(i => about[i]!, triangles) / volume - 1), solid.piece.id).toBeLessThan(1e-4);
        }
    });
});
