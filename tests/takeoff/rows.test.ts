import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches, millimeters } from '../../src/quantity/rational.ts';
import { rowsOf, rowsOff } from '../../src/takeoff/rows.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { cutTo } from '../dryfit/ceilings.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { runs } from '../support/full.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';

/** Rooms of every kind, with residue of every kind, with and without band and press, at the steps that tapes have. */
const STEPS = { '1/16"': inches('1/16'), '1/32"': inches('1/32'), '1 mm': millimeters(1), '0.5 mm': millimeters('0.5') };

test.each(Object.entries(STEPS))('cut to %s, no row is longer than the room but for its press, nor shorter than the text allows', (_, step) => {
    let rows = 0;
    fc.assert(fc.property(cutTo(step), all => {
        if (!all) return;
        rows += rowsOf(all.ceiling, all.off.pieces).length;
        expect(rowsOff(all.ceiling, all.off.pieces).map(({ part, pieces, sum, room }) => `${part} ${pieces[0]!.id} ${sum - room}`)).toEqual([]);
        for (const run of [all.ceiling.across, all.ceiling.down]) expect(run.residue.rest).toBeGreaterThanOrEqual(0);
    }), { seed: 5, numRuns: runs(60, 15) });
    expect(rows).toBeGreaterThan(400);
});

test('a row is found where each of its pieces is a step too long, or all of them are two steps too short', () => {
    const step = inches('1/32');
    let planted = 0;
    fc.assert(fc.property(cutTo(step), fc.boolean(), (all, long) => {
        if (!all) return;
        const row = rowsOf(all.ceiling, all.off.pieces).find(one => one.pieces.length > 2);
        if (!row) return;
        // past whatever the text allows this row
        const by = long ? Math.ceil((row.room + row.longer - row.sum) / row.pieces.length) + step
            : -Math.ceil((row.sum - row.room + row.shorter) / row.pieces.length) - step;
        const pieces = all.off.pieces.map(piece => row.pieces.includes(piece) ? { ...piece, cutBack: piece.cutBack + by } : piece);
        const off = rowsOff(all.ceiling, pieces);
        expect(off.map(one => [one.part, one.pieces.map(piece => piece.id), one.sum > one.room]))
            .toEqual([[row.part, row.pieces.map(piece => piece.id), long]]);
        planted++;
    }), { seed: 6, numRuns: runs(60, 15) });
    expect(planted).toBeGreaterThan(runs(15, 4));
});

// 18' 4" by 15' 2" with a band of 3/4": lines A and B have 218 1/2" between the bands, in four bays; 1, 2 and 3 run 180 1/2" through
describe('the rows of the example', () => {
    const ceiling = layOut(exampleRoom()).ceiling!, { pieces } = takeOff(ceiling), rows = rowsOf(ceiling, pieces);
    test('a blocking, a bottom, and on either side sides and cleats to each of five lines; and four bands', () => {
        const count = (part: string): number => rows.filter(row => row.part === part).length;
        expect(['blocking', 'bottom', 'side', 'cleat', 'band', 'trim', 'spacer'].map(count)).toEqual([5, 5, 10, 10, 4, 0, 0]);
        expect(rows.flatMap(row => row.pieces)).toHaveLength(pieces.filter(({ part }) => part !== 'trim' && part !== 'spacer').length);
    });
    test('come to the room just so; blocking that is cut between is short by its relief, 1/16" in each of four bays', () => {
        const told = rows.map(({ part, pieces: [first], sum, room }) => `${part} ${first!.line ?? first!.on} ${printInches(room)}${sum === room ? '' : ` ${printInches(sum - room)}`}`);
        expect([...new Set(told)].filter(row => /blocking|band/.test(row)).sort()).toEqual([
            'band east 180 1/2"', 'band north 220"', 'band south 220"', 'band west 180 1/2"',
            'blocking 1 180 1/2"', 'blocking 2 180 1/2"', 'blocking 3 180 1/2"', 'blocking A 218 1/2" -1/4"', 'blocking B 218 1/2" -1/4"',
        ]);
        for (const row of told.filter(each => /side|cleat|bottom/.test(each))) expect(row).toMatch(/ [123] 180 1\/2"$| [AB] 218 1\/2"$/);
    });
    test('one that lacks a piece is none', () => {
        const without = pieces.filter(({ id }) => id !== 'parlor.side-A-2-north');
        expect(rowsOf(ceiling, without).map(({ pieces: [first] }) => first!.id)).toEqual(rows.map(({ pieces: [first] }) => first!.id).filter(id => id !== 'parlor.side-A-1-north'));
    });
    test('there are none in a room of other walls, where the dry fit looks at them', () => {
        const wallList = [{ name: 'north', length: `18' 4"`, bearing: 90 }, { name: 'east', length: `15' 2"`, bearing: 181 }, { name: 'south', bearing: 270 }, { name: 'west', bearing: 0 }];
        const askew = layOut(exampleRoom({ wallList }, { spacers: null })).ceiling!;
        expect(rowsOf(askew, takeOff(askew).pieces)).toEqual([]);
    });
});

describe('what hangs in a beam or under it, and timbers, are in no row', () => {
    const { stock } = jobBuilder(), six = stock('spacer', { thickness: '3/4"', width: '5 1/2"', lengths: ["16'"] }), fir = stock('fir', { thickness: '5 1/2"', width: '7 1/2"', lengths: ["16'"] });
    const partsOf = (...words: Parameters<typeof exampleRoom>): { readonly inRows: string[]; readonly listed: string[] } => {
        const ceiling = layOut(exampleRoom(...words)).ceiling!, { pieces } = takeOff(ceiling);
        const of = (all: typeof pieces): string[] => [...new Set(all.map(({ part }) => part))].sort();
        return { inRows: of(rowsOf(ceiling, pieces).flatMap(row => row.pieces)), listed: of(pieces) };
    };
    // each bay of a line has one of each, so that they would be as many as its bottoms
    test('one spacer in each bay, one molding on each of its sides', () => {
        const strip = stock('strip', { thickness: '3/4"', width: '1 1/2"', lengths: ["16'"] });
        const { inRows, listed } = partsOf({}, { spacers: { stock: six, height: '5"', fromEnd: '30"' }, under: { stock: strip } });
        expect(listed).toEqual(['band', 'blocking', 'bottom', 'cleat', 'molding', 'side', 'spacer', 'trim']);
        expect(inRows).toEqual(['band', 'blocking', 'bottom', 'cleat', 'side']);
    });
    test('timbers that run through or are cut between', () => {
        expect(partsOf({}, { blocking: null, spacers: null, sides: undefined, cleats: null, bottom: undefined, trim: null, solid: { stock: fir } })).toEqual({ inRows: ['band'], listed: ['band', 'timber'] });
    });
});

describe('lines that end at other lines, or die into a half beam at one end', async () => {
    const layouts = await layoutsOf(`${PLAIN_BEAM}
profile low like plain { sides { stock six } }
room tees {
  wall north 12'
  wall east 13' 3"
  grid { lines-north 4', 8'; lines-east 4', 9'; beams plain; through north-south; perimeter { kind none } }
  line A { until 2 }
}
room one-wall {
  wall north 12'
  wall east 9' { perimeter { kind half-beam; width 3" } }
  wall south 12'
  wall west 9'
  grid { coffers-north 1; coffers-east 2; beams plain; through east-west; perimeter { kind none } }
  line A { beams low }
}
`);
    const rowsNamed = (name: string) => {
        const { ceiling } = layouts.find(({ room }) => room.name === name)!, { pieces } = takeOff(ceiling!);
        expect(rowsOff(ceiling!, pieces)).toEqual([]);
        return rowsOf(ceiling!, pieces).filter(row => row.pieces[0]!.line === 'A').map(({ part, pieces: own, ...rest }) =>
            `${part} of ${own.length}: ${[rest.sum, rest.room, rest.longer, rest.shorter].map(ticks => printInches(ticks)).join(' ')}`);
    };
    test('line A in two bays, up to the edge of line 2: 96" less 2 3/4"', () => {
        // line 2 may stand half a mark off for each of three coffers, 3/64"; each of two may be cut a mark short, and a mark is left over that no coffer
        // takes; blocking stays 1/8" clear at both ends of either
        expect(rowsNamed('tees')).toEqual(['blocking of 2: 93 1/4" 93 1/4" 3/64" 41/64"', 'bottom of 2: 93 1/4" 93 1/4" 3/64" 9/64"']);
    });
    test('line A runs to the half beam of 3 3/4" along the east wall, and its blocking stays 1/8" clear of both ends', () => {
        expect(rowsNamed('one-wall')).toEqual(['blocking of 1: 140" 140 1/4" 0" 9/32"', 'bottom of 1: 140 1/4" 140 1/4" 0" 1/32"']);
    });
});
