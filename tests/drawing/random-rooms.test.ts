import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawSheets, toSvg } from '../../src/drawing/index.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { outside, touching } from './support/checks.ts';
import { groups } from './support/walk.ts';
import { laidOut, type RoomWishes } from './support/rooms.ts';
import { all, readXml } from './support/xml.ts';
import { runs } from '../support/full.ts';

function inchesOf(least: number, most: number): fc.Arbitrary<number> {
    return fc.integer({ min: least, max: most }).map(n => n * TICKS_PER_INCH);
}
const shared = {
    across: fc.integer({ min: 1, max: 10 }), down: fc.integer({ min: 1, max: 8 }),
    through: fc.constantFrom('north-south' as const, 'east-west' as const), band: fc.boolean(), trim: fc.boolean(),
    corners: fc.constantFrom('mitered' as const, 'butted' as const),
    residue: fc.constantFrom('outer-coffers' as const, 'band' as const, 'spread' as const),
};
const fixtures = fc.array(fc.record({
    name: fc.string({ maxLength: 30 }), kind: fc.constantFrom('light', 'sprinkler', 'smoke-alarm', 'speaker', 'fan', 'register', 'junction-box', 'access-panel', 'soffit'),
    x: inchesOf(0, 400), y: inchesOf(0, 400), diameter: fc.option(inchesOf(0, 60), { nil: undefined }),
    keepClear: fc.option(inchesOf(0, 900), { nil: undefined }),
}), { maxLength: 12 }).map(all => all.map((each, i) => ({ ...each, name: `${each.name}-${i}` })));
const sixteenths = fc.integer({ min: 5 * 12 * 16, max: 45 * 12 * 16 }).map(n => n * TICKS_PER_INCH / 16);
const millimeters = fc.integer({ min: 1500, max: 14000 }).map(n => n * TICKS_PER_MM);
const rooms: fc.Arbitrary<RoomWishes> = fc.oneof(
    fc.record({ ...shared, fixtures, metric: fc.constant(false), width: sixteenths, length: sixteenths }),
    fc.record({ ...shared, metric: fc.constant(true), width: millimeters, length: millimeters }),
);

test('any room that can be laid out is drawn: all pieces once, nothing on anything else, all inside the border', () => {
    let drawn = 0;
    fc.assert(fc.property(rooms, wishes => {
        const room = laidOut(wishes);
        if (room === null) return;
        drawn++;
        const sheets = drawSheets(room.ceiling, room.pieces);
        const ids = groups(sheets[0]!.items).flatMap(group => group.piece ?? []);
        expect(ids.sort()).toEqual(room.pieces.pieces.map(piece => piece.id).sort());
        for (const sheet of sheets) {
            expect(touching(sheet)).toEqual([]);
            expect(outside(sheet)).toEqual([]);
        }
    }), { seed: 20, numRuns: runs(100) });
    expect(drawn).toBeGreaterThan(runs(60));
});

test('the same room gives the same bytes, and they are XML', () => {
    fc.assert(fc.property(rooms, wishes => {
        const [once, again] = [laidOut(wishes), laidOut(wishes)];
        if (once === null || again === null) return;
        const first = drawSheets(once.ceiling, once.pieces).map(sheet => toSvg(sheet, { fonts: 'named' }));
        expect(drawSheets(again.ceiling, again.pieces).map(sheet => toSvg(sheet, { fonts: 'named' }))).toEqual(first);
        for (const svg of first) {
            const ids = all(readXml(svg)).flatMap(element => element.attributes['id'] ?? []);
            expect(new Set(ids).size).toBe(ids.length);
        }
    }), { seed: 21, numRuns: runs(15) });
});
