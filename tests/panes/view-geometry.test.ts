import { beforeAll, describe, expect, test } from 'vitest';
import { viewInSteps, type ViewContent } from '../../src/pages/view/content.ts';
import { capsOf } from '../../src/panes/view/caps.ts';
import { buffersOf } from '../../src/panes/view/geometry.ts';
import { keyOf } from '../../src/panes/view/keys.ts';
import { standingFor, directionOf } from '../../src/panes/view/looks.ts';
import { dryFitOf } from '../../src/pipeline/inspect-closely.ts';
import { Vector3 } from 'three';
import { den, house } from '../cli/house.ts';
import { solidVolume } from '../exports/support/models.ts';
import { volumeOf } from '../exports/support/volume.ts';
import { roomOnPage, serve } from './support/content.ts';
import { madeBy } from '../pages/made.ts';

const viewContent = madeBy(viewInSteps);

let content: ViewContent, volumes: ReadonlyMap<string, number>;
const CUBIC_INCH = 0.0254 ** 3;
beforeAll(async () => {
    const mitered = { ...house, 'den.coffer': den };
    const room = roomOnPage(await serve(mitered), 'den.coffer');
    content = viewContent(room);
    volumes = new Map(dryFitOf(room.ceiling).solids.map(solid => [solid.piece.id, solidVolume(solid) / CUBIC_INCH]));
});

describe('pieces as a graphics card takes them', () => {
    test('each is a closed surface of its solid\'s volume, with flat normals of length one', () => {
        for (const piece of content.pieces) {
            const { positions, normals, pieceOf, grain } = buffersOf([piece], content);
            const corner = (i: number) => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!] as const;
            const volume = volumeOf(corner, Array.from({ length: positions.length / 3 }, (_, i) => i));
            expect(Math.abs(volume / volumes.get(piece.key)! - 1), piece.key).toBeLessThan(1e-3);
            expect([normals.length, grain.length, pieceOf.length]).toEqual([positions.length, positions.length, positions.length / 9]);
            for (let i = 0; i < normals.length; i += 3) expect(Math.hypot(normals[i]!, normals[i + 1]!, normals[i + 2]!)).toBeCloseTo(1, 5);
        }
    });

    test('a triangle knows its piece', () => {
        const { pieceOf, positions } = buffersOf(content.pieces, content);
        expect(pieceOf.length).toBe(positions.length / 9);
        expect(new Set(pieceOf).size).toBe(content.pieces.length);
        expect([...pieceOf]).toEqual([...pieceOf].sort((a, b) => a - b));
    });
});

describe('where the pieces are cut through', () => {
    const area = (positions: Float32Array): number => {
        let sum = 0;
        for (let i = 0; i < positions.length; i += 9) {
            const spot = (k: number) => new Vector3(positions[i + 3 * k], positions[i + 3 * k + 1], positions[i + 3 * k + 2]);
            sum += spot(1).sub(spot(0)).cross(spot(2).sub(spot(0))).length() / 2;
        }
        return sum;
    };

    test.each([[0, 'width'], [2, 'length']] as const)('all cuts across axis %d, laid side by side, are the wood there is', (axis, side) => {
        const size = content.size[side] / 16256, steps = 2000;
        let volume = 0;
        for (let i = 0; i < steps; i++) volume += area(capsOf(content.pieces, content, axis, (i + 0.5) * size / steps).positions) * size / steps;
        const whole = [...volumes.values()].reduce((sum, each) => sum + each, 0);
        expect(Math.abs(volume / whole - 1)).toBeLessThan(0.01);
    });

    test('outside the room there is nothing to cut', () => {
        expect(capsOf(content.pieces, content, 0, -1).positions).toHaveLength(0);
    });
});

test('keys mean what the page says they mean, and leave the editor its own', () => {
    const press = (key: string, more: object = {}) => keyOf({ key, shiftKey: false, ctrlKey: false, altKey: false, metaKey: false, ...more });
    expect(['n', 'P', '+', '-', 'Home', 'Enter', 'Escape', 'ArrowLeft'].map(key => press(key)?.do)).toEqual(['walk', 'walk', 'zoom', 'zoom', 'fit', 'words', 'nothing', 'turn']);
    expect(press('ArrowLeft', { shiftKey: true })?.do).toBe('move');
    for (const more of [{ ctrlKey: true }, { metaKey: true }, { altKey: true }]) expect(press('p', more)).toBeNull();
    expect(press('Tab')).toBeNull();
});

test('all of the ceiling is in the picture, from wherever it is looked at', () => {
    const bounds = { min: new Vector3(0, -12, 0), max: new Vector3(200, 0, 150) };
    for (const look of ['floor', 'below', 'above'] as const) {
        for (const aspect of [0.5, 1, 2.2]) {
            const { at, target } = standingFor(bounds, directionOf(look), { aspect });
            const ahead = target.clone().sub(at).normalize();
            const aside = ahead.clone().cross(new Vector3(0, 1, 0)).normalize(), up = aside.clone().cross(ahead);
            const half = Math.tan(16 * Math.PI / 180);
            for (const x of [0, 200]) for (const y of [-12, 0]) for (const z of [0, 150]) {
                const from = new Vector3(x, y, z).sub(at);
                const depth = from.dot(ahead);
                expect(Math.abs(from.dot(aside) / depth)).toBeLessThanOrEqual(half * aspect);
                expect(Math.abs(from.dot(up) / depth)).toBeLessThanOrEqual(half);
            }
            expect(at.y < 0).toBe(look !== 'above');
        }
    }
});
