import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bodyOf, pairsWithin, roomBodies } from '../../src/dryfit/body.ts';
import { meetingOf, REACH } from '../../src/dryfit/meetings.ts';
import { planOf } from '../../src/dryfit/places.ts';
import { solidsOf } from '../../src/dryfit/solids.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { ceilings, type Built } from './ceilings.ts';
import { runs } from '../support/full.ts';

/** Which pieces the dry fit holds to touch, by the trade's own words for how a beam goes together. */
function jointsOf({ ceiling, off }: Built): Set<string> {
    const places = new Map(planOf(ceiling, off).places.map(place => [place.id, place]));
    const bodies = [...solidsOf(ceiling, off).map(({ piece, prisms }) => bodyOf(piece, places.get(piece.id)!, prisms)), ...roomBodies(ceiling)];
    const named = (is: Piece | string): string => (typeof is === 'string' ? is : is.id);
    return new Set(pairsWithin(bodies, REACH).filter(([a, b]) => meetingOf(a, b).joint).flatMap(([a, b]) => [`${named(a.is)} ${named(b.is)}`, `${named(b.is)} ${named(a.is)}`]));
}

test('all that has to touch is held to touch: every joint of the list, sides and blocking, cleats, bottoms, spacers, trim, band', () => {
    const counts = new Map<string, number>();
    fc.assert(fc.property(ceilings, built => {
        if (!built) return;
        const { ceiling: { lines }, off: { pieces, joints } } = built;
        const held = jointsOf(built);
        const expectJoint = (kind: string, a: string, b: string): void => {
            expect(held.has(`${a} ${b}`), `${kind}: ${a} and ${b}`).toBe(true);
            counts.set(kind, (counts.get(kind) ?? 0) + 1);
        };
        for (const { kind, pieces: [a, b] } of joints) expectJoint(kind, a, b);
        const alongside = (a: Piece, b: Piece): boolean => a.line === b.line && (b.bay === null || a.bay === b.bay)
            && Math.min(a.box.east, b.box.east) - Math.max(a.box.west, b.box.west) > -9
            && Math.min(a.box.south, b.box.south) - Math.max(a.box.north, b.box.north) > -9
            // over the length of a spliced piece it touches, if only by a hand's breadth
            && Math.max(
                Math.min(a.box.east, b.box.east) - Math.max(a.box.west, b.box.west),
                Math.min(a.box.south, b.box.south) - Math.max(a.box.north, b.box.north),
            ) > inches(1);
        const of = (part: Piece['part']): Piece[] => pieces.filter(piece => piece.part === part);
        const sectionOf = (piece: Piece) => lines.find(line => line.name === piece.line)!.section;
        for (const side of of('side')) {
            const { profile: { sides, cleats, bottom: board }, blockingThickness, blockingWidth, innerWidth, heldDown, fit, bottomThickness } = sectionOf(side);
            const isBox = innerWidth.ticks > blockingWidth.ticks, place = board!.place.value;
            const rabbet = sides!.rabbet?.value;
            const off = (edge: 'lower' | 'upper'): number => (rabbet?.edge === edge && rabbet.face === 'back' ? rabbet.height.ticks : 0);
            if (!isBox && blockingThickness.ticks - heldDown.value.ticks - off('upper') > inches('1/8')) for (const blocking of of('blocking').filter(one => alongside(side, one))) expectJoint('side on blocking', side.id, blocking.id);
            if (place === 'under-sides' || place === 'in-rabbets' && fit!.ticks <= 2) for (const bottom of of('bottom').filter(one => alongside(side, one))) expectJoint('bottom under or in side', side.id, bottom.id);
            if (place === 'between-sides' && fit!.ticks <= 2 && bottomThickness.ticks - off('lower') > inches('1/8')) for (const bottom of of('bottom').filter(one => alongside(side, one))) expectJoint('bottom in side', side.id, bottom.id);
            const cleat = of('cleat').find(one => one.id.endsWith(side.id.slice(side.id.indexOf('.side-') + 6)));
            if (cleats && cleat) {
                expectJoint('cleat on side', side.id, cleat.id);
                for (const bottom of of('bottom').filter(one => alongside(cleat, one))) expectJoint('bottom under cleat', cleat.id, bottom.id);
            }
        }
        for (const spacer of of('spacer')) {
            const over = of('blocking').filter(one => one.line === spacer.line && (one.bay === null || one.bay === spacer.bay));
            expect(over.some(one => held.has(`${spacer.id} ${one.id}`)), spacer.id).toBe(true);
            counts.set('spacer', (counts.get('spacer') ?? 0) + 1);
        }
        for (const piece of [...of('blocking'), ...of('trim')]) expectJoint('on the ceiling', piece.id, 'the ceiling');
        for (const band of of('band')) expectJoint('on the wall', band.id, `the ${band.on} wall`);
    }), { seed: 23, numRuns: runs(60, 15) });
    for (const [kind, count] of counts) expect(count, kind).toBeGreaterThan(runs(20));
    expect([...counts.keys()].sort()).toEqual(['band-corner', 'band-splice', 'bottom in side', 'bottom under or in side', 'bottom under cleat', 'butt', 'cleat on side', 'corner', 'on the ceiling', 'on the wall', 'side on blocking', 'side-splice', 'spacer', 'splice', 'trim-corner', 'trim-splice'].sort());
});
