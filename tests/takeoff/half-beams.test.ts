import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { SIDES, type Side } from '../../src/job/model.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { whyText } from '../../src/provenance/why-text.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import type { Piece, TakeOff } from '../../src/takeoff/model.ts';
import { rowsOff } from '../../src/takeoff/rows.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { told } from '../dryfit/told.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { exampleRoom } from '../support/example-room.ts';
import { runs } from '../support/full.ts';
import { jobBuilder, type PerimeterWords, type ProfileWords, type RoomWords } from '../support/job-builder.ts';

const INCHES = { show: 'feet-inches', step: TICKS_PER_INCH / 32 } as const;

const { stock } = jobBuilder('file:///yard.coffer');
const eight = stock('eight', { thickness: '3/4"', width: '7 1/4"', lengths: ["16'"] });
const band: PerimeterWords = { stock: eight, belowBeams: '1/4"' }, half = (width: string): PerimeterWords => ({ kind: 'half-beam', width });

function off(words: RoomWords, beam: ProfileWords = {}): TakeOff & { ceiling: Ceiling; find(name: string): Piece; cut(...names: string[]): string[] } {
    const { ceiling, troubles } = layOut(exampleRoom(words, beam));
    expect(ceiling, JSON.stringify(troubles)).toBeDefined();
    const taken = takeOff(ceiling!);
    const find = (name: string): Piece => taken.pieces.find(piece => piece.id === `parlor.${name}`)!;
    return { ...taken, ceiling: ceiling!, find, cut: (...names) => names.map(name => `${printInches(find(name).cutFace)} ${printInches(find(name).cutBack)}`) };
}

// 220" x 182", half beams 2 1/2" + 3/4" all round, beams 7": coffers (213 1/2" - 21") / 4 = 48 1/8" and (175 1/2" - 14") / 3 = 53 5/6"
describe('half beams all round', () => {
    const all = off({ band: half('2 1/2"'), length: `15' 2 1/2"` });          // 176" - 14" = 162": 54"
    test('every corner of a coffer is mitered: sides are the coffer, and 3/4" longer at the back at both ends', () => {
        const sides = all.pieces.filter(piece => piece.part === 'side');
        expect([...new Set(sides.map(piece => `${printInches(piece.face)} ${printInches(piece.back)}`))].sort()).toEqual(['48 1/8" 49 5/8"', '54" 55 1/2"']);
        expect(sides.every(({ ends, hand }) => hand === null && ends.every(end => end.cut === 'miter' && end.degrees === 45))).toBe(true);
        // 2 along each of 3 lines in 3 bays and of 2 lines in 4, and one along every coffer at a wall
        expect(sides).toHaveLength(2 * (3 * 3 + 2 * 4) + 2 * (4 + 3));
    });
    test('bottoms through run from bottom to bottom of the half beams, those cut between too', () => {
        expect(all.cut('bottom-2', 'blocking-2', 'bottom-A-1', 'bottom-A-2')).toEqual(['177 1/2" 177 1/2"', '177 1/2" 177 1/2"', '49 5/8" 49 5/8"', '49 5/8" 49 5/8"']);
        expect(whyText(all.find('bottom-2').why, all.find('bottom-2').back, INCHES)).toBe(`room 15' 2 1/2" - 2 x half beam 2 1/2" = 14' 9 1/2"`);
    });
    test('what lies in them is ripped to their width: north and south from wall to wall, west and east between', () => {
        const found = ['bottom-north-a', 'bottom-west', 'blocking-east', 'cleat-west-wall'].map(all.find);
        expect(found.map(({ width, stock: { name } }) => `${name} ${printInches(width)}`)).toEqual(['poplar-1x6 2 1/2"', 'poplar-1x6 2 1/2"', 'poplar-1x6 2 1/2"', 'poplar-1x8 3/4"']);
        expect(found.map(({ back }) => printInches(back)).slice(1)).toEqual(['177 1/2"', '177 1/2"', '181"']);
        const north = all.pieces.filter(piece => /bottom-north/.test(piece.id));
        expect(printInches(north.reduce((sum, piece) => sum + piece.back, 0))).toBe('220"');
    });
    test('the joints: a corner in every corner of every coffer, a butt where a bottom meets a half beam', () => {
        const count = (kind: string): number => all.joints.filter(joint => joint.kind === kind).length;
        expect([count('corner'), count('trim-corner'), count('band-corner')]).toEqual([4 * 12, 4 * 12, 0]);
        // 6 crossings twice, 3 lines at two walls and 2 at two, two bottoms of half beams between the others at both ends
        expect(count('butt')).toBe(2 * 6 + 2 * (3 + 2) + 4);
        expect(all.joints.filter(({ at }) => /wall|half/.test(at)).map(({ at }) => at).slice(0, 3)).toEqual(['line 1 at the north wall', 'line 2 at the north wall', 'line 3 at the north wall']);
    });
});

test('each wall has its own: a half beam in the north, nothing in the west, a band else', () => {
    const mixed = off({ around: { north: half('3 1/4"'), west: null, east: band, south: band } });
    // the side of the half beam dies into the band in the east and ends at the wall in the west
    expect(mixed.find('side-north-4').ends.map(end => end.cut)).toEqual(['miter', 'square']);
    expect([mixed.find('side-north-4').hand, mixed.find('side-north-1').hand]).toEqual(['left', 'right']);
    expect([mixed.find('side-north-4').meets, mixed.find('bottom-1').meets, mixed.find('trim-1-north').meets]).toEqual([['3', 'east'], ['north', 'south'], ['west', '1']]);
    expect(mixed.find('side-A-1-north').ends.map(end => end.cut)).toEqual(['square', 'miter']);
    expect(mixed.cut('bottom-1')).toEqual(['178" 178"']);
    expect(whyText(mixed.find('bottom-1').why, mixed.find('bottom-1').back, INCHES)).toBe(`room 15' 2" - band 3/4" - half beam 3 1/4" = 14' 10"`);
    expect(mixed.pieces.some(piece => /band-(north|west)/.test(piece.id))).toBe(false);
    // the band in the east runs on to the wall in the north, where none stands
    expect(printInches(mixed.find('band-east').back)).toBe('181 1/4"');
});

test('a half beam that hangs deeper: lines die into it, and their blocking stands 1/8" clear of it', () => {
    const { profile } = jobBuilder('file:///deep.coffer');
    const own = exampleRoom().grid!.beams!.value, ten = stock('ten', { thickness: '3/4"', width: '9 1/4"', lengths: ["16'"] });
    const deep = { ...profile('deep-box', {}), ...own, key: 'deep', name: 'deep-box', label: 'deep-box', sides: { ...own.sides!, stock: { ...own.sides!.stock!, value: ten } } };
    const all = off({ band: { ...half('2 1/2"'), beams: deep } });
    expect(all.cut('bottom-2', 'blocking-2')).toEqual(['175 1/2" 175 1/2"', '175 1/4" 175 1/4"']);
    expect(all.find('side-1-1-west').ends.map(end => end.cut)).toEqual(['square', 'miter']);
    // its own sides run unbroken from corner to corner
    expect(all.pieces.filter(piece => /side-(north|south|east|west)/.test(piece.id)).map(({ id, back }) => `${id.slice(7)} ${printInches(back)}`)).toEqual(
        // but for those that are longer than a board of 16': they are spliced behind the middle of the three lines
        ['side-north-1 107 1/2"', 'side-north-2 107 1/2"', 'side-east-1 177"', 'side-south-1 107 1/2"', 'side-south-2 107 1/2"', 'side-west-1 177"']);
    expect(dryFit(all.ceiling, all).faults.map(told)).toEqual([]);
});

describe('any of them, round any room', () => {
    const perimeter = fc.oneof(fc.constant(null), fc.constant(band), fc.constantFrom('1 1/2"', '2 1/2"', '3 3/8"').map(half));
    const rooms = fc.record({
        around: fc.tuple(perimeter, perimeter, perimeter, perimeter), across: fc.integer({ min: 1, max: 5 }), down: fc.integer({ min: 1, max: 4 }),
        width: fc.integer({ min: 150 * 32, max: 260 * 32 }), length: fc.integer({ min: 120 * 32, max: 190 * 32 }),
        through: fc.constantFrom('north-south' as const, 'east-west' as const), corners: fc.constantFrom('mitered' as const, 'butted' as const),
    });
    const inches = (units: number): string => `${Math.floor(units / 32)} ${units % 32}/32"`;
    const built = ({ around, across, down, width, length, through, corners }: Parameters<Parameters<typeof rooms.map>[0]>[0]): ReturnType<typeof off> => off({
        width: inches(width), length: inches(length), north: { coffers: across }, east: { coffers: down }, through,
        around: Object.fromEntries(SIDES.map((side, i) => [side, around[i]!])) as Record<Side, PerimeterWords | null>,
    }, corners === 'butted' ? { sides: { stock: eight, corners } } : {});

    test('the pieces go together, each has its name, and whys add up', () => {
        let halves = 0;
        fc.assert(fc.property(rooms, words => {
            const all = built(words);
            expect(dryFit(all.ceiling, all).faults.map(told)).toEqual([]);
            expect(rowsOff(all.ceiling, all.pieces)).toEqual([]);
            expect(new Set(all.pieces.map(piece => piece.id)).size).toBe(all.pieces.length);
            for (const piece of all.pieces) expect(`${piece.id} ${sumOf(piece.why)}`).toBe(`${piece.id} ${piece.back}`);
            halves += words.around.filter(each => each?.kind === 'half-beam').length;
        }), { seed: 12, numRuns: runs(60, 12) });
        expect(halves).toBeGreaterThan(runs(40, 8));
    });

    test('bands, sides, bottoms and coffers cover the room exactly', () => {
        fc.assert(fc.property(rooms, words => {
            const { pieces, ceiling } = built(words);
            const shoelace = (points: readonly { x: number; y: number }[]): number =>
                Math.abs(points.reduce((sum, { x, y }, i) => sum + x * points[(i + 1) % points.length]!.y - points[(i + 1) % points.length]!.x * y, 0)) / 2;
            const seen = pieces.filter(({ part }) => part === 'band' || part === 'side' || part === 'bottom').reduce((sum, { corners }) => sum + shoelace(corners), 0);
            const open = ceiling.coffers.reduce((sum, { west, east, north, south }) => sum + (east - west) * (south - north), 0);
            expect(seen + open).toBe(ceiling.width * ceiling.length);
        }), { seed: 13, numRuns: runs(60, 12) });
    });
});
