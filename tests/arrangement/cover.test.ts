import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outlineOf } from '../../src/arrangement/piece.ts';
import { arrange } from '../../src/arrangement/arrange.ts';
import type { Arrangement } from '../../src/arrangement/model.ts';
import { gapInCover, shoelace, type Cover } from './cover.ts';
import { randomPlans } from './random-plans.ts';

/** What is seen from below without the bottoms: sides, bands, coffers; channels are reckoned apart. */
function seen({ pieces, coffers }: Arrangement): Cover[] {
    return [
        ...pieces.filter(({ part }) => part === 'side' || part === 'band' || part === 'beam').map(piece => ({ name: `${piece.part} ${piece.of} ${piece.nth}`, corners: outlineOf(piece) })),
        ...coffers.map(({ number, outline }) => ({ name: `coffer ${number}`, corners: outline })),
    ];
}

describe('sides, channels, bands and coffers cover the room', () => {
    test('rectangles, L\'s and T\'s: all of it, nothing twice, nothing outside', () => {
        const met = { lines: 0, stems: 0, rooms: new Set<number>(), perimeters: new Set<string>() };
        fc.assert(fc.property(randomPlans, ({ plan, room, channels }) => {
            const arrangement = arrange(plan);
            expect(arrangement.troubles).toEqual([]);
            expect(gapInCover(room, seen(arrangement), channels)).toBeUndefined();
            // joints name pieces that are there, and two different ones
            for (const { pieces: [a, b] } of arrangement.joints) expect(a !== b && arrangement.pieces[a] !== undefined && arrangement.pieces[b] !== undefined)
                .toBe(true);
            // a coffer's own area is that of its outline
            for (const { area, outline } of arrangement.coffers) expect(2 * area).toBeCloseTo(shoelace(outline), 0);
            met.lines += plan.lines.length;
            met.stems += plan.lines.filter(line => line.to.startsWith('across')).length;
            met.rooms.add(room.length);
            for (const { perimeter } of plan.walls) met.perimeters.add(perimeter.kind);
        }), { seed: 31, numRuns: 300 });
        expect(met.lines).toBeGreaterThan(300);
        expect(met.stems).toBeGreaterThan(20);
        expect([...met.rooms].sort((a, b) => a - b)).toEqual([4, 6, 8]);
        expect([...met.perimeters].sort()).toEqual(['band', 'bare', 'half-beam', 'half-timber']);
    });

    test('the proof sees a part that is missing, doubled, or a tick off', () => {
        const { plan, room, channels } = fc.sample(randomPlans.filter(made => made.plan.lines.length > 3), { seed: 32, numRuns: 1 })[0]!;
        const parts = seen(arrange(plan));
        expect(gapInCover(room, parts, channels)).toBeUndefined();
        parts.forEach((part, i) => {
            const others = parts.filter(each => each !== part);
            expect(gapInCover(room, others, channels), part.name).toBeDefined();
            expect(gapInCover(room, [...parts, part], channels), part.name).toBeDefined();
            const moved = { ...part, corners: part.corners.map(({ x, y }) => ({ x: x + 1, y: y + (i % 2) })) };
            expect(gapInCover(room, [...others, moved], channels), part.name).toBeDefined();
        });
        expect(gapInCover(room, parts, channels.slice(1))).toBeDefined();
    });
});
