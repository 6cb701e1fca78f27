import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as WebIfc from 'web-ifc';
import { guidOf } from '../../src/exports/ifc/guid.ts';
import { toIfc } from '../../src/exports/ifc/ifc.ts';
import { real, text } from '../../src/exports/ifc/step.ts';
import { extentOf, MODELS, solidVolume } from './support/models.ts';
import { volumeOf } from './support/volume.ts';

const api = new WebIfc.IfcAPI();
beforeAll(() => api.Init());
afterAll(() => api.Dispose());

interface Value { readonly value: string | number }
interface Member { readonly Name: Value; readonly Tag: Value; readonly ObjectType: Value; readonly GlobalId: Value; readonly Description: Value }
interface Body { volume: number; corners: (readonly [number, number, number])[] }

/** Every element's body as the reader builds it, in meters; its y is up and its z south, as in most viewers. */
function bodiesOf(model: number): ReadonlyMap<string, Body> {
    const bodies = new Map<string, Body>();
    api.StreamAllMeshes(model, mesh => {
        const { Tag } = api.GetLine(model, mesh.expressID) as Member;
        const body = bodies.get(String(Tag.value)) ?? { volume: 0, corners: [] };
        bodies.set(String(Tag.value), body);
        for (let i = 0; i < mesh.geometries.size(); i++) {
            const { geometryExpressID, flatTransformation: T } = mesh.geometries.get(i);
            const geometry = api.GetGeometry(model, geometryExpressID);
            const numbers = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
            const triangles = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
            const placed = (k: number): readonly [number, number, number] => {
                const [x, y, z] = [numbers[6 * k]!, numbers[6 * k + 1]!, numbers[6 * k + 2]!];
                return [0, 1, 2].map(row => T[row]! * x + T[4 + row]! * y + T[8 + row]! * z + T[12 + row]!) as unknown as [number, number, number];
            };
            const corners = Array.from({ length: numbers.length / 6 }, (_, k) => placed(k));
            const [x, y, z] = corners[0]!;
            body.volume += volumeOf(k => [corners[k]![0] - x, corners[k]![1] - y, corners[k]![2] - z], [...triangles]);
            body.corners.push(...corners);
        }
    });
    return bodies;
}

describe.each(MODELS.map(model => [model.name, model] as const))('%s', (_name, { ceiling, solids, pieces }) => {
    const file = toIfc(ceiling, solids);
    const open = <Result>(read: (model: number) => Result): Result => {
        const model = api.OpenModel(new TextEncoder().encode(file));
        try { return read(model); } finally { api.CloseModel(model); }
    };

    test('is plain ASCII, the same every time, and knows no day', () => {
        expect(toIfc(ceiling, solids)).toBe(file);
        expect(file).toMatch(/^[\n\x20-\x7e]*$/);
        expect(/FILE_NAME\('[^']*','([^']*)'/.exec(file)![1]).toBe('1970-01-01T00:00:00');
    });

    test('every reference leads to an instance, and every GlobalId is there once', () => {
        const defined = new Set([...file.matchAll(/^(#\d+)=/gm)].map(found => found[1]));
        const used = [...file.matchAll(/#\d+/g)].map(found => found[0]);
        expect(used.filter(reference => !defined.has(reference))).toEqual([]);
        const ids = [...file.matchAll(/=IFC[A-Z0-9]+\('([0-9A-Za-z_$]{22})',\$/g)].map(found => found[1]!);
        expect(ids.length).toBeGreaterThan(3 * solids.length);
        expect(new Set(ids).size).toBe(ids.length);
        expect(ids.filter(id => !'0123'.includes(id[0]!))).toEqual([]);
    });

    test('a project, a site, a building, a storey, and a member for every piece of the cut list', () => {
        open(model => {
            expect(api.GetModelSchema(model)).toBe('IFC4');
            for (const type of [
                WebIfc.IFCPROJECT, WebIfc.IFCSITE, WebIfc.IFCBUILDING, WebIfc.IFCBUILDINGSTOREY,
            ]) expect(api.GetLineIDsWithType(model, type).size()).toBe(1);
            const ids = api.GetLineIDsWithType(model, WebIfc.IFCMEMBER);
            const members = Array.from({ length: ids.size() }, (_, i) => api.GetLine(model, ids.get(i)) as Member);
            expect(members.map(member => String(member.Tag.value)).sort()).toEqual(pieces.pieces.map(piece => piece.id).sort());
            for (const { Tag, ObjectType, Description } of members) {
                const piece = pieces.pieces.find(({ id }) => id === Tag.value)!;
                expect([ObjectType.value, Description.value]).toEqual([piece.part, piece.where]);
            }
        });
    });

    test('the reader builds each as large as its solid, where it stands', () => {
        open(model => {
            const bodies = bodiesOf(model);
            expect(bodies.size).toBe(solids.length);
            const height = (ceiling.room.height?.value ?? 96 * 16256) / 640_000;
            const length = ceiling.length / 640_000;
            for (const solid of solids) {
                const { volume, corners } = bodies.get(solid.piece.id)!;
                expect(Math.abs(volume / solidVolume(solid) - 1), solid.piece.id).toBeLessThan(1e-6);
                const [west, east, north, south, top, foot] = extentOf(solid) as [number, number, number, number, number, number];
                const span = (axis: 0 | 1 | 2) => [Math.min(...corners.map(c => c[axis])), Math.max(...corners.map(c => c[axis]))];
                [
                    west, east, height - foot, height - top, north - length, south - length,
                ].forEach((wanted, i) => expect([...span(0), ...span(1), ...span(2)][i], solid.piece.id).toBeCloseTo(wanted, 5));
            }
        });
    });

    test('every instance has as many attributes as its entity in the schema', () => {
        open(model => {
            const ids = api.GetAllLines(model);
            expect(ids.size()).toBeGreaterThan(30);
            const derived = new Map([...file.matchAll(/^#(\d+)=\w+\((.*)\);$/gm)].map(([, id, given]) => [Number(id), given!.split(',').filter(each => each === '*').length]));
            const off: string[] = [];
            for (let i = 0; i < ids.size(); i++) {
                const id = ids.get(i);
                const line = api.GetLine(model, id) as object;
                const wanted = Object.keys(line).filter(name => name !== 'expressID' && name !== 'type').length;
                // the reader leaves out what is derived (*)
                const given = (api.GetRawLineData(model, id).arguments as unknown[]).length + (derived.get(id) ?? 0);
                if (given !== wanted) off.push(`${line.constructor.name}: ${given} given, ${wanted} wanted`);
            }
            expect(off).toEqual([]);
        });
    });

    test('quantities are those of the piece: its length in the job\'s unit, its volume in cubic meters', () => {
        open(model => {
            const ids = api.GetLineIDsWithType(model, WebIfc.IFCELEMENTQUANTITY);
            expect(ids.size()).toBe(solids.length);
            const unit = ceiling.room.job.show.value === 'millimeters' ? 640 : 16256;
            for (const [i, solid] of solids.entries()) {
                const { Name, Quantities } = api.GetLine(
                    model, ids.get(i), true,
                ) as { Name: Value; Quantities: { Name: Value; LengthValue?: Value; VolumeValue?: Value }[] };
                expect(Name.value).toBe('Qto_MemberBaseQuantities');
                expect(Number(Quantities[0]!.LengthValue!.value)).toBeCloseTo(solid.piece.back / unit, 6);
                expect(Number(Quantities[1]!.VolumeValue!.value)).toBeCloseTo(solidVolume(solid), 8);
            }
        });
    });
});

describe('names', () => {
    test('letters of any script come back from the reader as they went', () => {
        const hostile = MODELS.find(({ name }) => name === 'hostile')!;
        const model = api.OpenModel(new TextEncoder().encode(toIfc(hostile.ceiling, hostile.solids)));
        const project = api.GetLine(model, api.GetLineIDsWithType(model, WebIfc.IFCPROJECT).get(0)) as Member;
        expect(project.Name.value).toBe(hostile.ceiling.room.job.title!.value);
        api.CloseModel(model);
    });

    test.each([
        ['plain', '\'plain\''], ['12\' 3 1/2"', '\'12\'\' 3 1/2"\''], ['a\\b', '\'a\\\\b\''], ['Söhne', '\'S\\X2\\00F6\\X0\\hne\''], ['\u{1F3DA}', '\'\\X4\\0001F3DA\\X0\\\''], ['a\nb', '\'a\\X2\\000A\\X0\\b\''],
    ])('%j', (words, coded) => {
        expect(text(words)).toBe(coded);
    });

    test.each([[0, '0.'], [-0, '0.'], [1, '1.'], [0.75, '0.75'], [-2.5, '-2.5'], [1e-12, '0.'], [1 / 3, '0.333333333']])('%d', (value, digits) => {
        expect(real(value)).toBe(digits);
    });

    test('a GlobalId comes from the name alone', () => {
        expect(guidOf('parlor.side-B-3-north')).toBe(guidOf('parlor.side-B-3-north'));
        // the empty text's is the function's own starting value, as published with it: 6c62272e07bb014262b821756295c58d
        let number = 0n;
        for (const letter of guidOf('')) number = number * 64n + BigInt('0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$'.indexOf(letter));
        expect(number.toString(16)).toBe('6c62272e07bb014262b821756295c58d');
    });
});

