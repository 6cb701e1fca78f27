import DxfParser, { type ILwpolylineEntity, type ITextEntity, type ILineEntity, type ILayer } from 'dxf-parser';
import { Helper } from 'dxf';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Sheet } from '../../src/drawing/index.ts';
import { toDxf } from '../../src/exports/dxf/dxf.ts';
import { readLength } from '../../src/quantity/read-length.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { drawn, laid, ROOMS, type LaidRoom } from '../drawing/support/rooms.ts';
import { pythonWithEzdxf, readByEzdxf } from './support/ezdxf.ts';

interface Written { readonly room: LaidRoom; readonly sheet: Sheet; readonly metric: boolean; readonly text: string }
const written = new Map<string, Written>();
const rooms = Object.entries(ROOMS).filter(([name]) => name !== 'many small').map(([name, wishes]) => [name, laid(wishes), drawn(wishes)] as const);
for (const [name, room, sheets] of rooms) {
    const show = room.ceiling.room.job.show.value;
    for (const sheet of sheets) written.set(`${name} ${sheet.id}`, { room, sheet, metric: show === 'millimeters', text: toDxf(sheet, show) });
}
const plans = [...written].filter(([name]) => name.endsWith('C-1'));

type Read = ReturnType<typeof readAnew>;
const known = new Map<string, Read>();
/** Read once for all tests of a sheet. */
function read(text: string): Read {
    const before = known.get(text) ?? readAnew(text);
    known.set(text, before);
    return before;
}
function readAnew(text: string) {
    const parsed = new DxfParser().parseSync(text)!;
    const on = <E>(type: string, layer: string): E[] => parsed.entities.filter(entity => entity.type === type && entity.layer === layer) as unknown as E[];
    return { parsed, on, layers: (parsed.tables as { layer: { layers: Record<string, ILayer> } }).layer.layers };
}

describe.each([...written])('%s', (_name, { text, metric, sheet, room }) => {
    test('is the same text every time', () => {
        expect(toDxf(sheet, room.ceiling.room.job.show.value)).toBe(text);
    });

    test('says its units, and is in model space', () => {
        const { parsed } = read(text);
        expect(parsed.header.$INSUNITS).toBe(metric ? 4 : 1);
        expect(parsed.header.$MEASUREMENT).toBe(metric ? 1 : 0);
        expect(parsed.entities.length).toBeGreaterThan(100);
        expect(parsed.entities.filter(entity => entity.inPaperSpace)).toEqual([]);
    });

    test('every layer is named by what is drawn and by its pen, and every entity lies on one', () => {
        const { parsed, layers } = read(text);
        expect(Object.keys(layers).filter(name => name !== '0' && !/^[A-Z_]+-[A-Z]+$/.test(name))).toEqual([]);
        expect(parsed.entities.filter(entity => entity.layer === '0' || layers[entity.layer] === undefined)).toEqual([]);
    });

    test('no letter that a drawing program has not got stands where a fraction does', () => {
        expect(text).not.toContain('\u2044');
        const { parsed } = read(text);
        const words = (parsed.entities.filter(entity => entity.type === 'TEXT') as unknown as ITextEntity[]).map(entity => entity.text);
        expect(words.some(line => (metric ? /^\d+$/ : /\d+\/\d+"/).test(line))).toBe(true);
    });

    test('a second reader finds the same entities and draws them', () => {
        const { parsed } = read(text);
        const counts = (entities: readonly { readonly type: string }[]) => Object.fromEntries(['LINE', 'LWPOLYLINE', 'CIRCLE', 'TEXT'].map(type => [type, entities.filter(entity => entity.type === type).length]));
        const helper = new Helper(text);
        expect(counts(helper.parsed.entities)).toEqual(counts(parsed.entities));
        expect(helper.toSVG()).toMatch(/^<\?xml[\s\S]*<path/);
    });
});

describe.each(plans)('%s is at true size', (_name, { text, metric, room: { ceiling, pieces } }) => {
    const unit = metric ? TICKS_PER_MM : TICKS_PER_INCH;
    const { on } = read(text);

    test('the walls stand as far apart as in the room, from zero', () => {
        const [walls] = on<ILwpolylineEntity>('LWPOLYLINE', 'WALLS-CUT');
        const xs = walls!.vertices.map(v => v.x);
        const ys = walls!.vertices.map(v => v.y);
        expect([Math.min(...xs), Math.min(...ys)].map(v => Math.abs(v) < 1e-6)).toEqual([true, true]);
        expect(Math.max(...xs)).toBeCloseTo(ceiling.width / unit, 5);
        expect(Math.max(...ys)).toBeCloseTo(ceiling.length / unit, 5);
    });

    test('every side\'s face is a line as long as the piece, where it stands', () => {
        const faces = on<ILineEntity>('LINE', 'SIDES-EDGE').map(({ vertices: [a, b] }) => [Math.min(a!.x, b!.x), Math.min(a!.y, b!.y), Math.hypot(a!.x - b!.x, a!.y - b!.y)]);
        const sides = pieces.pieces.filter(piece => piece.part === 'side');
        expect(faces.length).toBeGreaterThanOrEqual(sides.length);
        for (const piece of sides) {
            const length = piece.face / unit;
            const { box } = piece;
            const inBox = ([x, y]: readonly number[]) => x! > box.west / unit - 1e-4 && x! < box.east / unit + 1e-4
                && y! > (ceiling.length - box.south) / unit - 1e-4 && y! < (ceiling.length - box.north) / unit + 1e-4;
            // a pendant or a mark may hide a stretch of it; what is left lies in the piece and is no longer than it
            const own = faces.filter(face => inBox(face) && face[2]! <= length + 1e-4);
            expect(own.length, piece.id).toBeGreaterThan(0);
        }
        const whole = faces.filter(([, , length]) => sides.some(piece => Math.abs(piece.face / unit - length!) < 1e-4));
        expect(whole.length).toBeGreaterThanOrEqual(sides.length * 0.9);
    });

    test('the figure of the whole room is the distance between its outermost ticks', () => {
        const figures = on<ITextEntity>('TEXT', 'DIMENSIONS-TEXT').map(entity => entity.text);
        const ticks = figures.map(words => (metric ? Number(words) * TICKS_PER_MM : Number(readLength(words)?.valueOf() ?? NaN)));
        // a figure of a length that no fraction says is marked with ~ and read as no length
        const said = (length: number) => ticks.includes(length) || figures.some(words => words.startsWith('~'));
        expect([ceiling.width, ceiling.length].filter(length => !said(length))).toEqual([]);
    });
});

describe('ezdxf', () => {
    const folder = mkdtempSync(join(tmpdir(), 'cofferwright-dxf-'));
    const python = pythonWithEzdxf();
    const paths = [...written.keys()].map(name => join(folder, `${name.replace(/\W+/g, '-')}.dxf`));
    beforeAll(() => [...written.values()].forEach(({ text }, i) => writeFileSync(paths[i]!, text)));
    afterAll(() => rmSync(folder, { recursive: true, force: true }));

    test('reads every sheet without a complaint, and finds what the others find', ({ skip }) => {
        skip(python === null, 'ezdxf, one of the three readers of DXF files, is not installed: apt-get install python3-ezdxf');
        const found = readByEzdxf(python!, paths);
        expect(found).toHaveLength(written.size);
        let dimensioned = 0;
        for (const [i, { text, metric }] of [...written.values()].entries()) {
            const { version, units, troubles, counts, layers, texts, weights } = found[i]!;
            const { parsed, layers: own } = read(text);
            expect({ version, units, troubles }).toEqual({ version: 'AC1021', units: metric ? 4 : 1, troubles: [] });
            for (const type of ['LINE', 'LWPOLYLINE', 'CIRCLE', 'TEXT']) expect(counts[type] ?? 0).toBe(parsed.entities.filter(entity => entity.type === type).length);
            expect(counts.HATCH ?? 0).toBe(text.split('\n').filter(line => line === 'HATCH').length);
            expect(layers).toEqual(expect.arrayContaining(Object.keys(own)));
            expect(texts.length).toBe(counts.TEXT);
            // a sheet of meetings has no dimensions
            const wanted = Object.entries({ 'DIMENSIONS-DIMENSION': 13, 'DIMENSIONS-TICK': 35, 'SHEET-BORDER': 50 }).filter(([layer]) => layer in own || layer === 'SHEET-BORDER');
            expect(wanted.map(([layer]) => [layer, weights[layer]])).toEqual(wanted);
            dimensioned += wanted.length === 3 ? 1 : 0;
        }
        expect(dimensioned).toBeGreaterThan(written.size / 2);
        const plan = found[[...written.keys()].indexOf('three by two C-1')]!;
        expect(plan.texts).toEqual(expect.arrayContaining([`14' 3 1/2"`, `11' 2"`, 'lamp-1', 'for the Harrows']));
        const hostile = found[[...written.keys()].indexOf('hostile C-1')]!;
        expect(hostile.texts).toEqual(expect.arrayContaining([expect.stringContaining('<script>alert("x")</script> & Söhne') as unknown, expect.stringContaining('Łódź') as unknown]));
    });
});
