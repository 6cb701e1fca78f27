import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { wrongIn } from './look-at-ceiling.ts';

/**
 * A bay whose sides stand at 45 degrees, with a band, half beams as deep and deeper, bottoms under their sides, crown; and coped crown where corners are
 * narrower than square.
 */
const INCH = 16256, ceilings = new Map<string, Ceiling>();
beforeAll(async () => {
    for (const { room, ceiling } of await layoutsOf(readFileSync(new URL('turned-bays.coffer', import.meta.url), 'utf8'))) ceilings.set(room.name, ceiling!);
});
const piecesOf = (room: string): readonly Piece[] => takeOff(ceilings.get(room)!).pieces;
const leans = ({ ends }: Piece): number[] => ends.map(({ degrees = 0 }) => Math.round(degrees * 1000) / 1000);

test.each(['band', 'half', 'coped', 'dies', 'tapered', 'falling'])('%s: all of it goes together', room => {
    const ceiling = ceilings.get(room)!;
    expect(dryFit(ceiling, takeOff(ceiling)).faults.filter(fault => fault.kind !== 'misfit' || fault.clashes.some(({ kind }) => kind !== 'rounded'))).toEqual([]);
});
test.each(['band', 'half', 'dies'])('%s: sides, bottoms, band and coffers cover the room', room => { expect(wrongIn(ceilings.get(room)!)).toBeUndefined(); });

describe('round the bay', () => {
    const of = (room: string, name: string): Piece => piecesOf(room).find(({ id }) => id === `${room}.${name}`)!;
    test('a band of 3/4" is mitered in all four corners at half of their angle: 22.5 degrees from square', () => {
        // 30" along the wall; round the mouth the room edge is longer by 3/4" x tan 22.5, in the bay shorter by as much
        const side = of('band', 'band-w2');
        expect([side.back / INCH, side.face / INCH]).toEqual([30, expect.closeTo(30, 3)]);
        expect(leans(side).map(Math.abs)).toEqual([22.5, 22.5]);
        expect(of('band', 'band-w3').back / INCH - of('band', 'band-w3').face / INCH).toBeCloseTo(1.5 * Math.tan(Math.PI / 8), 3);
        expect(of('band', 'band-w3').back / INCH).toBe(48);
    });
    test('sides of the half beams are mitered with each other, outside and inside', () => {
        const side = piecesOf('half').find(({ part, on, line }) => part === 'side' && line === null && on === 'w2')!;
        expect(new Set(side.ends.map(({ how }) => how))).toEqual(new Set(['miter', 'outside-miter']));
        expect(leans(side).map(Math.abs)).toEqual([22.5, 22.5]);
        // from wall to back 3": 30" + 3 tan 22.5 at the mouth, less as much in the bay
        expect(side.back / INCH).toBeCloseTo(30, 3);
    });
});

test('a coped piece that is too long is that and no more: its angle at the saw is not the one at which it stands', () => {
    const ceiling = ceilings.get('falling')!, off = takeOff(ceiling), coped = off.pieces.filter(({ part, ends }) => part === 'trim' && ends.some(({ cut }) => cut === 'coped'));
    expect(coped.length).toBeGreaterThan(3);
    for (const piece of coped) {
        const long = { ...piece, cutBack: piece.cutBack + INCH / 4, cutFace: piece.cutFace + INCH / 4 };
        const faults = dryFit(ceiling, { ...off, pieces: off.pieces.map(one => (one === piece ? long : one)) }).faults.filter(fault => fault.kind === 'misfit' && fault.piece.id === piece.id);
        expect(faults.map(fault => fault.kind === 'misfit' && fault.causes.map(({ what }) => what))).toEqual([['length']]);
    }
});

test('in a corner narrower than square the trim that is not coped is cut along what the other stands against', () => {
    const own = piecesOf('falling').filter(({ part, ends }) => part === 'trim' && ends.some(({ how }) => how === 'dies'));
    expect(own.length).toBeGreaterThan(0);
    for (const { ends } of own) for (const { how, degrees, flat } of ends) if (how === 'dies') {
        expect(degrees).toBeCloseTo(45, 3);
        // the miter and bevel of a square corner at 38 degrees
        expect([flat!.miter, flat!.bevel]).toEqual([expect.closeTo(31.62, 2), expect.closeTo(33.86, 2)]);
    }
    // at a right angle all is as it was
    const square = piecesOf('falling').flatMap(({ part, ends }) => (part === 'trim' ? ends.filter(({ how }) => how === 'coped') : []));
    expect(square.some(({ degrees }) => Math.abs(degrees! - 45) < 0.001)).toBe(true);
});
