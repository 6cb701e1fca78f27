import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dryFit, examined } from '../../src/dryfit/dry-fit.ts';
import type { DryFit, Misfit, Solid } from '../../src/dryfit/model.ts';
import { planOf } from '../../src/dryfit/places.ts';
import { solidsOf } from '../../src/dryfit/solids.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';
import { ceilings, type Built } from './ceilings.ts';
import { told } from './told.ts';
import { runs } from '../support/full.ts';

/** Faults of one piece, planted in the lists of random ceilings that go together. Each is found, and found at that piece. */
const RUNS = { seed: 7, numRuns: runs(40, 10) };
const POOL = fc.sample(ceilings, { seed: 17, numRuns: runs(110, 55) }).filter(built => built !== undefined)
    .filter(({ ceiling, off }) => dryFit(ceiling, off).faults.length === 0);
const SIXTEENTH = inches('1/16');

interface Planted { readonly built: Built; readonly piece: Piece }

/** Plants a fault in one piece of each ceiling that has one to plant it in, and counts that there were enough. */
function forEvery(suits: (piece: Piece, built: Built) => boolean, check: (planted: Planted) => void): void {
    let planted = 0;
    fc.assert(fc.property(fc.constantFrom(...POOL), fc.nat(), (built, nth) => {
        const suiting = built.off.pieces.filter(piece => suits(piece, built));
        const piece = suiting[nth % suiting.length];
        if (!piece) return;
        planted++;
        check({ built, piece });
    }), RUNS);
    expect(planted).toBeGreaterThan(runs(6));
}

function fitWith({ built: { ceiling, off }, piece }: Planted, changed: Partial<Piece>): DryFit {
    return dryFit(ceiling, { ...off, pieces: off.pieces.map(one => one === piece ? { ...one, ...changed } : one) });
}

/** The one fault is the piece's, for this cause; what else is told follows from it at its neighbors' undersides or openings. */
function expectMisfit({ faults }: DryFit, { piece }: Planted, ...whats: string[]): Misfit {
    const misfits = faults.filter(fault => fault.kind === 'misfit');
    expect(misfits.map(told).length, misfits.map(told).join('\n')).toBe(1);
    expect(misfits[0]!.piece.id).toBe(piece.id);
    expect(misfits[0]!.causes.map(cause => cause.what)).toEqual(whats);
    expect(misfits[0]!.clashes.length).toBeGreaterThan(0);
    return misfits[0]!;
}

const mitered = (piece: Piece): number => piece.ends.filter(end => end.cut === 'miter').length;
const rabbeted = (piece: Piece): boolean => piece.work.some(one => one.kind === 'rabbet');

describe('a piece that is off by itself', () => {
    test('a side cut 1/16" long bites at both ends, and by how much', () => {
        forEvery(piece => piece.part === 'side', planted => {
            const { piece } = planted;
            const misfit = expectMisfit(fitWith(planted, { cutBack: piece.cutBack + SIXTEENTH, cutFace: piece.cutFace + SIXTEENTH }), planted, 'length');
            expect(misfit.causes).toEqual([{ what: 'length', is: piece.cutBack + SIXTEENTH, wanted: piece.cutBack }]);
            // where the run is short of the room by plan, it has that room at the band
            const deep = misfit.clashes.filter(clash => clash.kind === 'overlap');
            if (mitered(piece) === 2) expect(deep.length).toBeGreaterThanOrEqual(2);
        });
    });

    test('a side cut 1/16" short leaves its corners open', () => {
        forEvery(piece => piece.part === 'side', planted => {
            const { piece } = planted;
            const misfit = expectMisfit(fitWith(planted, { cutBack: piece.cutBack - SIXTEENTH, cutFace: piece.cutFace - SIXTEENTH }), planted, 'length');
            expect(misfit.clashes.every(clash => clash.kind !== 'overlap')).toBe(true);
        });
    });

    test('a side of the wrong hand', () => {
        forEvery(piece => piece.part === 'side' && piece.hand !== null, planted => {
            expectMisfit(fitWith(planted, { hand: planted.piece.hand === 'left' ? 'right' : 'left' }), planted, 'hand');
        });
    });

    test('a side of which it is not said which end is mitered, and which cannot be turned round', () => {
        forEvery(piece => piece.part === 'side' && piece.hand !== null, planted => {
            const { faults } = fitWith(planted, { hand: null });
            expect(faults.map(fault => fault.kind === 'misfit' && [fault.piece.id, fault.causes])).toEqual([[planted.piece.id, [{ what: 'hand', is: null }]]]);
        });
    });

    test('a bottom 1/16" wide, and one 1/16" thick', () => {
        // beside a bottom that lies under its sides there is nothing that it could be in the way of
        const isUnder = (piece: Piece, { ceiling }: Pick<Built, 'ceiling'>): boolean => ceiling.lines.some(({ name, section }) => name === piece.line && section.profile.bottom!.place.value === 'under-sides');
        forEvery((piece, { ceiling }) => piece.part === 'bottom' && ceiling.lines.some(line => line.name === piece.line && line.section.profile.sides?.stock), planted => {
            if (!isUnder(planted.piece, planted.built)) expectMisfit(fitWith(planted, { width: planted.piece.width + SIXTEENTH }), planted, 'width');
            const thick = fitWith(planted, { thickness: planted.piece.thickness + SIXTEENTH });
            expect(thick.faults.some(fault => fault.kind === 'underside' && fault.piece.id === planted.piece.id)).toBe(true);
        });
    });

    test('a miter at 44 degrees: bites where its long point is kept, and touches along an edge alone where its face is', () => {
        forEvery(piece => mitered(piece) > 0 && piece.ends.every(end => end.cut !== 'miter' || Math.abs(end.degrees! - 45) < 1e-6), planted => {
            const { piece } = planted;
            const end = piece.ends[1].cut === 'miter' ? 1 : 0;
            const off: EndCut = { cut: 'miter', degrees: 44 };
            const ends: Piece['ends'] = end === 1 ? [piece.ends[0], off] : [off, piece.ends[1]];
            const bites = expectMisfit(fitWith(planted, { ends }), planted, 'miter');
            expect(bites.clashes.some(clash => clash.kind === 'overlap')).toBe(true);
            expect(bites.causes[0]).toMatchObject({ is: 44, wanted: expect.closeTo(45, 2) as number });

            const take = piece.thickness - Math.round(piece.thickness * Math.tan(44 * Math.PI / 180));
            const touches = expectMisfit(fitWith(planted, { ends, cutBack: piece.cutBack - take, cutFace: piece.cutFace }), planted, 'length', 'miter');
            expect(touches.clashes.some(clash => (clash.touches ?? Infinity) < 0.9 * clash.wanted!)).toBe(true);
        });
    });

    test('a spacer 1/16" tall, a cleat 1/16" high, blocking 1/16" wide, a band 1/16" thin', () => {
        const cases = [['spacer', 'cutBack', SIXTEENTH, 'length'], ['cleat', 'width', SIXTEENTH, 'width'], ['blocking', 'width', SIXTEENTH, 'width'], ['band', 'thickness', -SIXTEENTH, 'thickness']] as const;
        for (const [part, key, by, what] of cases) {
            forEvery((piece, { ceiling }) => piece.part === part && (part !== 'spacer' || ceiling.lines.length > 0), planted => {
                expectMisfit(fitWith(planted, { [key]: planted.piece[key] + by }), planted, what);
            });
        }
    });

    test('a rabbet that is forgotten, along another edge, or 1/16" off', () => {
        forEvery(piece => rabbeted(piece) && mitered(piece) !== 1, planted => {
            const { work } = planted.piece;
            const rabbet = work.find(one => one.kind === 'rabbet')!;
            const without = work.filter(one => one !== rabbet);
            expectMisfit(fitWith(planted, { work: without }), planted, 'rabbet');
            expectMisfit(fitWith(planted, { work: [...without, { ...rabbet, width: rabbet.width + SIXTEENTH }] }), planted, 'rabbet width');
        });
    });
});

describe('pieces by their number', () => {
    test('one missing', () => {
        forEvery(() => true, ({ built: { ceiling, off }, piece }) => {
            const { faults } = dryFit(ceiling, { ...off, pieces: off.pieces.filter(one => one !== piece) });
            // of spacers it is known that there are too few in a bay, not which of them is missing
            const bayOf = (id: string): string => id.replace(/(spacer-.*)-\d+$/, '$1');
            expect(faults.flatMap(fault => fault.kind === 'missing' ? [bayOf(fault.id), ...fault.alike] : [])).toEqual([bayOf(piece.id)]);
        });
    });

    test('one doubled', () => {
        forEvery(() => true, ({ built: { ceiling, off }, piece }) => {
            const { faults } = dryFit(ceiling, { ...off, pieces: [...off.pieces, piece] });
            expect(faults.map(fault => fault.kind === 'doubled' && fault.id)).toEqual([piece.id]);
        });
    });

    test('one that belongs nowhere', () => {
        forEvery(piece => piece.part !== 'spacer', ({ built: { ceiling, off }, piece }) => {
            const { faults } = dryFit(ceiling, { ...off, pieces: [...off.pieces, { ...piece, id: `${piece.id}-9` }] });
            expect(faults.map(fault => fault.kind === 'no-place' && fault.id)).toEqual([`${piece.id}-9`]);
        });
    });

    test('two swapped', () => {
        let planted = 0;
        forEvery(piece => piece.part === 'side' || piece.part === 'trim', ({ built: { ceiling, off }, piece }) => {
            const other = off.pieces.find(one => one.part === piece.part && Math.abs(one.cutBack - piece.cutBack) > 20);
            if (!other) return;
            planted++;
            const named = (one: Piece): Piece => one === piece ? { ...other, id: piece.id } : one === other ? { ...piece, id: other.id } : one;
            const { faults } = dryFit(ceiling, { ...off, pieces: off.pieces.map(named) });
            const blamed = faults.flatMap(fault => fault.kind === 'misfit' ? [fault.piece.id, ...fault.alike.map(one => one.id)] : []);
            expect(blamed.sort()).toEqual([piece.id, other.id].sort());
        });
        expect(planted).toBeGreaterThan(runs(6));
    });
});

describe('a piece in its right form, set wrong', () => {
    test.each([['cleat', 'down'], ['cleat', 'up'], ['side', 'down'], ['bottom', 'down'], ['spacer', 'down']] as const)('a %s 1/16" too far %s', (part, way) => {
        forEvery(piece => piece.part === part, ({ built: { ceiling, off }, piece }) => {
            const by = way === 'down' ? SIXTEENTH : -SIXTEENTH;
            const moved = ({ prisms, ...solid }: Solid): Solid => (
                { ...solid, prisms: prisms.map(one => ({ ...one, top: one.top + by, foot: one.foot + by })) }
            );
            const solids = solidsOf(ceiling, off).map(solid => solid.piece === piece ? moved(solid) : solid);
            const { faults } = examined(planOf(ceiling, off), off, solids);
            const misfit = faults.find(fault => fault.kind === 'misfit');
            const under = faults.find(fault => fault.kind === 'underside');
            // without cleats a bottom that hangs lower has nothing over it; its underside tells
            expect((misfit?.piece ?? under?.piece)?.id, faults.map(told).join('\n')).toBe(piece.id);
            if (part === 'side' || part === 'bottom') expect(under).toMatchObject({ ticks: -SIXTEENTH });
        });
    });
});

describe('a mistake in all pieces of one kind becomes few faults', () => {
    const everySide = (change: (piece: Piece) => Partial<Piece>) => (pieces: readonly Piece[]): Piece[] => pieces.map(piece => piece.part === 'side' ? { ...piece, ...change(piece) } : piece);
    test.each([
        ['no miter is counted in the back', everySide(piece => ({ cutBack: piece.cutFace }))],
        ['left is taken for right', everySide(piece => ({ hand: piece.hand === 'left' ? 'right' : piece.hand && 'left' }))],
        ['all are 1/16" thick', everySide(piece => ({ thickness: piece.thickness + SIXTEENTH }))],
    ] as const)('%s', (_, change) => {
        let most = 0, seen = 0;
        forEvery(piece => piece.part === 'side' && mitered(piece) > 0, ({ built: { ceiling, off } }) => {
            const pieces = change(off.pieces);
            if (pieces.every((piece, i) => JSON.stringify(formIn(piece)) === JSON.stringify(formIn(off.pieces[i]!)))) return;
            const { faults } = dryFit(ceiling, { ...off, pieces });
            expect(faults.length).toBeGreaterThan(0);
            expect(faults.filter(fault => fault.kind === 'misfit').every(fault => fault.piece.part === 'side')).toBe(true);
            seen++;
            most = Math.max(most, faults.length);
        });
        expect(seen).toBeGreaterThan(runs(4));
        expect(most).toBeLessThan(20);
    });
    const formIn = ({ cutBack, hand, thickness }: Piece): unknown => [cutBack, hand, thickness];
});

test('a fault of one tick is seen, from the tolerance on', () => {
    forEvery(piece => piece.part === 'side', planted => {
        const { faults } = fitWith(planted, { thickness: planted.piece.thickness + 5 });
        expect(faults.length).toBeGreaterThan(0);
    });
});
