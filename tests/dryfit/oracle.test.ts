import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { areaOf, blockOf, facesOf, facing, separation, sharedPlan } from '../../src/dryfit/block.ts';
import { bodyOf, pairsWithin } from '../../src/dryfit/body.ts';
import type { Prism, Solid } from '../../src/dryfit/model.ts';
import { planOf } from '../../src/dryfit/places.ts';
import { solidsOf } from '../../src/dryfit/solids.ts';
import { inches } from '../../src/quantity/rational.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { exampleRoom } from '../support/example-room.ts';
import { ceilings } from './ceilings.ts';
import { asManifold, broughtTo, cutAndHung, ready } from './oracle.ts';
import { runs } from '../support/full.ts';

/** Held to the manifold library, which computes solids of any shape by meshes, in floating point. */
const RUNS = { seed: 3, numRuns: runs(12, 4) };
const cubic = TICKS_PER_INCH ** 3;

beforeAll(ready);

function volumeOf(prisms: readonly Prism[]): number {
    return prisms.reduce((sum, { outline, top, foot }) => sum + areaOf(outline) * (foot - top), 0) / cubic;
}

/** What two solids have in common, in cubic inches, by the dry fit's own measures. */
function shared(a: readonly Prism[], b: readonly Prism[]): number {
    let volume = 0;
    for (const one of a.map(blockOf)) for (const other of b.map(blockOf)) {
        if (separation(one, other) >= 0) continue;
        volume += sharedPlan(one, other).area * (Math.min(one.foot, other.foot) - Math.max(one.top, other.top)) / cubic;
    }
    return volume;
}

describe('against another library', () => {
    test('every solid is the piece as it is sawn and routed: its volume, and nothing of one outside of the other', () => {
        let pieces = 0;
        fc.assert(fc.property(ceilings, built => {
            if (!built) return;
            const different = new Set<string>();
            for (const { piece, prisms } of solidsOf(built.ceiling, built.off)) {
                // pieces of one form and one direction need looking at once
                const key = [piece.part, piece.cutBack, piece.on, piece.hand, piece.width, piece.thickness, JSON.stringify(piece.ends)].join();
                if (different.has(key)) continue;
                different.add(key);
                pieces++;
                const solid = asManifold(prisms), sawn = broughtTo(cutAndHung(piece), solid);
                expect(Math.abs(solid.volume() / volumeOf(prisms) - 1), piece.id).toBeLessThan(1e-7);
                expect(Math.abs(sawn.volume() - solid.volume()), piece.id).toBeLessThan(1e-3);
                // two corners may be a tick off, over the height of the board
                expect(sawn.subtract(solid).volume() + solid.subtract(sawn).volume(), `${piece.id} ${piece.hand}`).toBeLessThan(5e-3);
            }
        }), RUNS);
        expect(pieces).toBeGreaterThan(runs(100));
    });

    test('of pairs in a ceiling that was shaken, the same are in each other, by the same volume', () => {
        let apart = 0, within = 0;
        fc.assert(fc.property(ceilings, fc.infiniteStream(fc.integer({ min: -400, max: 400 })), (built, shifts) => {
            if (!built) return;
            const shake = (): number => shifts.next().value as number;
            const shaken = solidsOf(built.ceiling, built.off).slice(0, 60).map(({ piece, prisms }): Solid => {
                const [x, y, z] = [shake(), shake(), shake()];
                return {
                    piece,
                    prisms: prisms.map(one => ({ outline: one.outline.map(([px, py]) => [px + x, py + y] as const), top: one.top + z, foot: one.foot + z })),
                };
            });
            const places = new Map(planOf(built.ceiling, built.off).places.map(place => [place.id, place]));
            const solidOf = new Map(shaken.map(solid => [solid.piece, solid.prisms]));
            const others = new Map(shaken.map(({ piece, prisms }) => [piece, asManifold(prisms)]));
            for (const [a, b] of pairsWithin(shaken.map(({ piece, prisms }) => bodyOf(piece, places.get(piece.id)!, prisms)), 0).slice(0, 120)) {
                const [one, other] = [a.is as Piece, b.is as Piece];
                const ours = shared(solidOf.get(one)!, solidOf.get(other)!);
                const theirs = others.get(one)!.intersect(others.get(other)!).volume();
                expect(Math.abs(ours - theirs), `${one.id} ${other.id}`).toBeLessThan(2e-6 + 2e-6 * ours);
                if (ours > 0) within++; else apart++;
            }
        }), RUNS);
        expect(within).toBeGreaterThan(runs(100));
        expect(apart).toBeGreaterThan(runs(100));
    });

    test('faces touch over the area by which one goes into the other when it is pushed a little', () => {
        const push = 32;                                    // ticks
        let joints = 0, slanted = 0;
        fc.assert(fc.property(ceilings, built => {
            if (!built) return;
            const places = new Map(planOf(built.ceiling, built.off).places.map(place => [place.id, place]));
            const bodies = solidsOf(built.ceiling, built.off).map(({ piece, prisms }) => bodyOf(piece, places.get(piece.id)!, prisms));
            const looked = new Map<string, number>();
            for (const [a, b] of pairsWithin(bodies, 0)) {
                const kind = `${(a.is as Piece).part} ${(b.is as Piece).part}`;
                if ((looked.get(kind) ?? 0) > 5) continue;                      // some of every kind
                for (const one of a.blocks) for (const other of b.blocks) for (let i = 0; i < facesOf(one); i++) for (let j = 0; j < facesOf(other); j++) {
                    const faces = facing(one, i, other, j);
                    if (!faces || Math.abs(faces.near) > 2 || Math.abs(faces.far) > 2 || faces.area < (TICKS_PER_INCH / 4) ** 2) continue;
                    looked.set(kind, (looked.get(kind) ?? 0) + 1);
                    const edge = one.edges[i];
                    const out = edge ? [edge.dy / edge.unit, -edge.dx / edge.unit, 0] : [0, 0, i === one.edges.length ? -1 : 1];
                    const by = (push + faces.near) / TICKS_PER_INCH;
                    const pushed = asManifold([other.prism]).translate([-out[0]! * by, out[1]! * by, out[2]! * by]);
                    const area = asManifold([one.prism]).intersect(pushed).volume() / (push / TICKS_PER_INCH);
                    const ours = faces.area / TICKS_PER_INCH ** 2;
                    // what is pushed along a slant, or past the edge of the other, differs by the push along the way around
                    expect(Math.abs(area - ours), `${(a.is as Piece).id} ${(b.is as Piece).id}`).toBeLessThan(2 * push / TICKS_PER_INCH ** 2 * faces.girth);
                    joints++;
                    if (edge && edge.dx !== 0 && edge.dy !== 0) slanted++;
                }
            }
        }), RUNS);
        expect(joints).toBeGreaterThan(runs(200));
        expect(slanted).toBeGreaterThan(runs(15));
    });

    test('how deep two prisms are in each other is how far one must be moved to be out of the other', () => {
        const corner = fc.tuple(fc.integer({ min: -14, max: 14 }), fc.integer({ min: -14, max: 14 }));
        const prism = fc.record({
            at: corner, wide: fc.integer({ min: 8, max: 40 }), long: fc.integer({ min: 8, max: 40 }),
            off: fc.tuple(fc.integer({ min: -7, max: 7 }), fc.integer({ min: -7, max: 7 })), top: fc.integer({ min: -10, max: 10 }),
            high: fc.integer({ min: 4, max: 30 }),
        })
            .map(({ at: [x, y], wide, long, off: [a, b], top, high }): Prism => {
                const s = 1000;
                return {
                    outline: [[x, y], [x + wide, y], [x + wide + b, y + long], [x + a, y + long]].map(([px, py]) => [px! * s, py! * s] as const),
                    top: top * s, foot: (top + high) * s,
                };
            }).filter(({ outline }) => areaOf(outline) > 0 && outline[2]![0] > outline[3]![0]);
        let deep = 0;
        fc.assert(fc.property(prism, prism, (a, b) => {
            const distance = separation(blockOf(a), blockOf(b));
            const [one, other] = [asManifold([a]), asManifold([b])];
            const common = one.intersect(other).volume();
            expect(distance < 0).toBe(common > 1e-9);
            if (distance >= 0) return;
            deep++;
            // moved out along the best of many directions it is just free; a little less, and it is not
            const free = (by: number): boolean => [...Array(360).keys()].some(k => {
                const angle = k * Math.PI / 180;
                return other.translate([Math.cos(angle) * by, Math.sin(angle) * by, 0]).intersect(one).volume() < 1e-9;
            }) || [1, -1].some(up => other.translate([0, 0, up * by]).intersect(one).volume() < 1e-9);
            const depth = -distance / TICKS_PER_INCH;
            expect(free(depth * 1.001 + 1e-5), `free at ${depth}`).toBe(true);
            expect(free(depth * 0.99), `not free before ${depth}`).toBe(false);
        }), { seed: 5, numRuns: runs(30) });
        expect(deep).toBeGreaterThan(runs(5, 0));
    });
});

describe('against arithmetic', () => {
    const board = (wide: string, thick: string): number => inches(wide) * inches(thick) / TICKS_PER_INCH ** 2;

    test('the wood in the worked example: section by length, less the rabbets', () => {
        const room = exampleRoom(), ceiling = layOut(room).ceiling!;
        const volume = volumeOf(solidsOf(ceiling, takeOff(ceiling)).flatMap(solid => solid.prisms));
        const six = board('5 1/2', '3/4'), eight = board('7 1/4', '3/4'), rabbet = 1 / 16, cleat = board('3/4', '3/4'), strip = board('1 1/2', '1/2');
        const lying = 3 * 180.5 + 4 * 50.875 + 4 * 50.125;                       // through, and cut between
        // a mitered side is as long as the middle between face and back; the rabbet is 1/8" from the back, so 1/8" off each miter
        const sides = [[8, 50.875, 2], [8, 50.125, 1], [6, 57, 2], [12, 56.25, 1]] as const;
        const side = (back: number, miters: number): number => eight * (back - miters * 0.75 / 2) - rabbet * (back - miters * 0.125);
        const cleats = sides.reduce((sum, [count, back]) => sum + count * (back - 0.5), 0);
        const band = 2 * 220 + 2 * 180.5;
        const trim = 24 * (49.375 - 0.5) + 24 * (55.5 - 0.5);
        const relief = 8 / 16;                                                      // of blocking that is cut between, 1/16" each
        const wood = six * (2 * lying - relief) + 51 * six * 5 + sides.reduce((sum, [count, back, miters]) => sum + count * side(back, miters), 0)
            + cleat * cleats + eight * band + strip * trim;
        expect(volume).toBeCloseTo(wood, 9);
    });

    test('every piece of random ceilings: its section along the middle of its length, less the rabbet along the middle of the rabbet', () => {
        fc.assert(fc.property(ceilings, built => {
            for (const { piece, prisms } of built ? solidsOf(built.ceiling, built.off) : []) {
                const { cutBack, width, thickness, ends, work } = piece;
                const lean = ends.reduce((sum, end) => sum + (end.cut === 'miter' ? Math.tan(end.degrees! * Math.PI / 180) : 0), 0);
                const rabbet = work.find(one => one.kind === 'rabbet');
                let volume = width * thickness * (cutBack - lean * thickness / 2);
                if (rabbet?.kind === 'rabbet') {
                    const middle = rabbet.face === 'back' ? rabbet.width / 2 : thickness - rabbet.width / 2;
                    volume -= rabbet.width * rabbet.height * (cutBack - lean * middle);
                }
                expect(Math.abs(volumeOf(prisms) - volume / cubic), piece.id).toBeLessThan(1e-3);
            }
        }), { seed: 9, numRuns: runs(60) });
    });
});
