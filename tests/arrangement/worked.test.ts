import { describe, expect, test } from 'vitest';
import { arrange } from '../../src/arrangement/arrange.ts';
import type { Piece } from '../../src/arrangement/model.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { number, planOf, workedRooms, type WorkedPiece, type WorkedRoom } from './worked.ts';

/** Ticks. At most one a corner is promised, two a length; where lines lie askew the rounding is in fact below this. */
const LENGTH = 1 / 8;
/** In a room whose walls and lines run along the axes nothing is rounded: a thousandth of a tick, for plain numbers. */
const EXACT = 0.001;
const DEGREES = 0.001;

interface Expected { readonly piece: WorkedPiece; readonly place: string }

describe.each(workedRooms)('$name', room => {
    const arrangement = arrange(planOf(room));
    const square = isSquare(room), tolerance = square ? EXACT : LENGTH;
    const near = (got: number, inches: string): boolean => Math.abs(got - number(inches)) <= tolerance;

    test('it can be built', () => {
        expect(arrangement.troubles).toEqual([]);
    });

    test('every coffer has its size and its corners', () => {
        expect(arrangement.coffers.map(coffer => coffer.number)).toEqual(room.coffers.map((_, i) => i + 1));
        room.coffers.forEach(({ edges, angles, area }, i) => {
            const coffer = arrangement.coffers[i]!;
            const told = coffer.edges.map(({ on, length, angle }) => `${on} ${length / TICKS_PER_INCH} at ${angle}`).join(', ');
            // where two corners lie equally far to the north-west either may be the first
            const fits = coffer.edges.some((_, first) => edges.every(([on, length], k) => {
                const edge = coffer.edges[(first + k) % coffer.edges.length]!;
                return edge.on === on && near(edge.length, length) && Math.abs(edge.angle - angles[k]!) <= DEGREES;
            }));
            expect(coffer.edges).toHaveLength(edges.length);
            expect(fits, `coffer ${i + 1}: ${told} for ${JSON.stringify(edges)}`).toBe(true);
            // as far off as its edges may be
            const round = coffer.edges.reduce((sum, edge) => sum + edge.length, 0);
            expect(Math.abs(coffer.area - new Rational(area).mul(TICKS_PER_INCH ** 2).valueOf())).toBeLessThanOrEqual(round * tolerance);
        });
    });

    test('piece for piece', () => {
        const expected = grouped(room.pieces.flatMap(piece => piece.at.map((at): Expected => ({ piece, place: placeOf(piece, at) }))), ({ place }) => place);
        const made = grouped(arrangement.pieces, placeMade);
        expect([...made.keys()].sort()).toEqual([...expected.keys()].sort());
        for (const [place, pieces] of made) {
            // two edges of one coffer may look the same way: whichever of them fits
            const left = expected.get(place)!.map(({ piece }) => piece);
            for (const piece of pieces) {
                const fit = left.findIndex(each => agrees(piece, each, near));
                expect(fit, `${place}: ${told(piece)} for ${JSON.stringify(left)}`).toBeGreaterThanOrEqual(0);
                left.splice(fit, 1);
            }
            expect(left, place).toEqual([]);
        }
    });
});

test('the comparison sees a piece that is wrong', () => {
    const [room] = workedRooms as [WorkedRoom];
    const side = arrange(planOf(room)).pieces.find(piece => piece.part === 'side')!;
    const right = room.pieces.find(piece => piece.at.some(at => placeOf(piece, at) === placeMade(side)))!;
    const near = (got: number, inches: string): boolean => Math.abs(got - number(inches)) <= LENGTH;
    expect(agrees(side, right, near)).toBe(true);
    const wrong: Partial<Piece>[] = [
        { edges: [side.edges[0], { ...side.edges[1], length: side.edges[1].length + 1 }] }, { overall: side.overall - 1 }, { hand: side.hand === 'left' ? 'right' : 'left' },
        { ends: [{ ...side.ends[0], cut: 'past' }, side.ends[1]] }, { ends: [side.ends[0], { ...side.ends[1], angle: side.ends[1].angle + 0.01 }] },
    ];
    expect(wrong.map(change => agrees({ ...side, ...change }, right, near))).toEqual(wrong.map(() => false));
});

test('eight of the rooms must agree exactly', () => {
    expect(workedRooms.filter(isSquare).map(({ name }) => name)).toHaveLength(8);
});

function grouped<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
    const groups = new Map<string, T[]>();
    for (const item of items) groups.set(keyOf(item), [...groups.get(keyOf(item)) ?? [], item]);
    return groups;
}

function isSquare({ walls, lines }: WorkedRoom): boolean {
    return [...walls.map(([, from]) => from), ...lines.map(line => line[4])].flat().every(at => !at.includes('.'));
}

function agrees(piece: Piece, { part, edges, cuts, angles, hand, width, overall }: WorkedPiece, near: (got: number, inches: string) => boolean): boolean {
    const longest = number(edges[0]) > number(edges[1]) ? edges[0] : edges[1];
    return edges.every((length, i) => near(piece.edges[i]!.length, length) || part === 'cleat' && i === 0)
        && (cuts ?? []).every((cut, i) => piece.ends[i]!.cut === cut)
        && angles.every((angle, i) => Math.abs(piece.ends[i]!.angle - angle) <= DEGREES)
        && (hand === undefined || piece.hand === hand) && (width === undefined || near(piece.width, width)) && near(piece.overall, overall ?? longest);
}

function placeOf({ part, of }: WorkedPiece, at: readonly (string | number)[]): string {
    if (part !== 'side' && part !== 'cleat') return [part, of ?? '', ...at].join(', ');
    const [on, ...between] = at;
    return [part, of, on, ...between.map(String).sort()].join(', ');
}

function placeMade({ part, of, on, ends, coffers }: Piece): string {
    const between = ends.map(end => end.meets);
    switch (part) {
        case 'trim': case 'panel': return [part, '', ...coffers, on].join(', ');
        case 'side': case 'cleat': case 'molding': return [part, of, on, ...between.sort()].join(', ');
        case 'band': case 'wall-cleat': return [part, of].join(', ');
        case 'bottom': case 'blocking': case 'beam': return on === null ? [part, of, ...between].join(', ') : [part, of].join(', ');
    }
}

function told({ edges, ends, overall, hand }: Piece): string {
    return JSON.stringify({ edges: edges.map(edge => edge.length / TICKS_PER_INCH), ends, overall: overall / TICKS_PER_INCH, hand });
}
