import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrangedOf } from '../../src/ceiling/plan.ts';
import type { Layout } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { extentOf } from '../../src/plane/polygon.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { runs } from '../support/full.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { CeilingHouse } from './look-at-ceiling.ts';
import { randomCeilings, YARD } from './random-ceilings.ts';

/**
 * Panels by hand. Beams of 7" (5 1/2" inside, sides 3/4"), no band: in a room of W x L coffers are (W - 7 lines) / (lines + 1); a panel reaches from
 * the middle of a line to the middle of the next, less the gap, and from a wall less all of the gap. That panels of sheets stand 1/8" apart is what makers
 * of plywood recommend of panels in general (APA, from memory).
 */
const room = (name: string, grid: string, back: string, walls = 'wall north 11\' 11"\n  wall east 8\''): string => `
profile beam-${name} like plain { back { thickness 1/4"; ${back} } }
room ${name} {
  ${walls}
  grid { ${grid}; beams beam-${name}; through north-south }
}`;
const BY_TWO = 'coffers-north 3; coffers-east 2';
const TEXT = `${PLAIN_BEAM}
stock smooth { sheet 48" x 96" grain none; thickness 1/4" }
stock wide { sheet 60" x 96" grain none; thickness 1/4" }
stock veneered { sheet 48" x 96"; thickness 1/4" }
stock wide-veneered { sheet 60" x 96"; thickness 1/4" }
stock small { sheet 30" x 60" grain none; thickness 1/4" }
profile boxed like plain { wraps 5" x 6" clearance 1/4" }
${room('usual', BY_TWO, 'stock smooth')}
${room('tight', BY_TWO, 'stock smooth; gap 0"')}
${room('grained', BY_TWO, 'stock veneered')}
${room('long-grained', BY_TWO, 'stock wide-veneered')}
${room('single', 'coffers-north 1; coffers-east 1', 'stock smooth', 'wall north 7\'\n  wall east 3\' 6"')}
${room('turned', 'coffers-north 3; coffers-east 3', 'stock veneered; running east-west')}
${room('seamed', BY_TWO, 'stock small; seams across-coffers')}
${room('askew', BY_TWO, 'stock wide', `wall north 12'
  wall east 8'
  wall south 12'
  wall west 8' 3"
  diagonal north-west to south-east measures 14' 5"`)}
`;
const layouts = await layoutsOf(TEXT);

function of(name: string): readonly Piece[] {
    const { ceiling } = layouts.find(layout => layout.room.name === name) as Required<Layout>, off = takeOffOf(ceiling);
    const faults = dryFit(ceiling, off).faults.filter(fault => fault.kind !== 'misfit' || fault.piece.part === 'panel');
    expect(faults).toEqual([]);
    for (const { id, why, back } of off.pieces) expect(`${id} ${sumOf(why)}`).toBe(`${id} ${back}`);
    return off.pieces.filter(({ part }) => part === 'panel');
}
const told = ({ id, cutBack, width }: Piece): string => `${id.slice(id.indexOf('.') + 1)} ${printInches(cutBack)} x ${printInches(width)}`;

describe('panels over the coffers', () => {
    test('lie without a line from wall to wall, less what is left open', () => {
        expect(of('single').map(told)).toEqual(['panel-1 83 3/4" x 41 3/4"']);
    });
    test('are named by their coffers, and where they come in several by their letters', () => {
        expect(of('usual').map(({ where }) => where).slice(0, 2)).toEqual(['over coffer 1', 'over coffer 2']);
        expect(of('seamed').map(({ where }) => where).slice(0, 2)).toEqual(['over coffer 1, piece a', 'over coffer 1, piece b']);
    });
    test('reach from middle to middle of the beams, less what is left open', () => {
        // (143 - 14) / 3 = 43: middles at 46 1/2 and 96 1/2; 48" is the middle of 96". 46 1/2 - 3/16 = 46 5/16; between: 50 - 1/8
        expect(of('usual').map(told)).toEqual([
            'panel-1 47 13/16" x 46 5/16"', 'panel-2 49 7/8" x 47 13/16"', 'panel-3 47 13/16" x 46 5/16"',
            'panel-4 47 13/16" x 46 5/16"', 'panel-5 49 7/8" x 47 13/16"', 'panel-6 47 13/16" x 46 5/16"',
        ]);
        const [first] = of('usual');
        expect([first!.box.top, first!.box.foot, first!.thickness].map(printInches)).toEqual(['-1/4"', '0"', '1/4"']);
        expect(first!.why.terms.map(({ what, times, ticks }) => `${times} ${printInches(ticks)} ${what}`)).toEqual([
            '1 48" from the north wall to the middle of line A', '-1 1/8" left open at the north wall', '-1 1/16" left open at line A',
        ]);
    });
    test('without a gap they fill the room', () => {
        expect(of('tight').map(told).slice(0, 2)).toEqual(['panel-1 48" x 46 1/2"', 'panel-2 50" x 48"']);
    });
    test('with grain all lie one way, that in which they are longer together; or as it is said', () => {
        // together they are longer north-south, but 49 7/8 is wider than a sheet
        expect(of('grained').map(told).slice(0, 2)).toEqual(['panel-1 46 5/16" x 47 13/16"', 'panel-2 49 7/8" x 47 13/16"']);
        // 6 x 47.81 is more than 2 x (46.31 + 49.88 + 46.31)
        expect(of('long-grained').map(told).slice(0, 2)).toEqual(['panel-1 47 13/16" x 46 5/16"', 'panel-2 47 13/16" x 49 7/8"']);
        // (96 - 14) / 3 = 27 1/3: middle at 30 5/6, less 3/16
        expect(told(of('turned')[0]!)).toBe('panel-1 46 5/16" x 30 5/8"');
    });
    test('what is larger than its sheet comes in several, seams in the coffer', () => {
        // 47 13/16 goes out of 59"; 46 5/16 is two of 23 5/32, 47 13/16 across two of 23 29/32
        expect(of('seamed').slice(0, 4).map(told)).toEqual(['panel-1-a 47 13/16" x 23 5/32"', 'panel-1-b 47 13/16" x 23 5/32"', 'panel-2-a 49 7/8" x 23 29/32"', 'panel-2-b 49 7/8" x 23 29/32"']);
    });
    test('in a room out of square they are cut to shape from a rectangle', () => {
        const panels = of('askew'), shaped = panels.filter(({ work }) => work.some(({ kind }) => kind === 'shape'));
        expect(shaped.length).toBeGreaterThan(2);
        for (const { work, cutBack, width } of shaped) {
            const shape = work.find(one => one.kind === 'shape') as Extract<Piece['work'][number], { kind: 'shape' }>;
            // its rectangle is as small as can be
            for (const [places, length] of [[shape.corners.map(([along]) => along), cutBack], [shape.corners.map(([, across]) => across), width]] as const) {
                expect(Math.min(...places)).toBe(0);
                expect([0, TICKS_PER_INCH / 32]).toContain(length - Math.max(...places));
            }
        }
    });
    test('each is of a coffer, and its joints are behind beams: no corner of it lies in another coffer', () => {
        for (const { ceiling } of layouts) for (const { number, outline } of arrangedOf(ceiling!).exact.coffers) {
            const own = takeOffOf(ceiling!).pieces.filter(({ part, coffer }) => part === 'panel' && coffer === number), corners = own.flatMap(piece => piece.outline ?? piece.corners);
            // a coffer at a bare wall reaches farther by what is left open, and where the wall is askew by a little more
            const [panel, over] = [extentOf(corners), extentOf(outline)], OPEN = 3 * TICKS_PER_INCH / 16;
            expect([over.west - panel.west, over.north - panel.north, panel.east - over.east, panel.south - over.south].every(by => by >= -OPEN), `${ceiling!.room.name} ${number}`).toBe(true);
        }
    });
});

test('over ceilings of all kinds they go together, and without a gap cover the room', async () => {
    const lined = YARD.replace(/profile (low|low-solid|deep-solid) \{/g, '$& back { thickness 1/4"; stock lining; gap 0"; seams across-coffers };').replace('\nprofile low ', '\nstock lining { sheet 144" x 144" grain none; thickness 1/4" }\n\nprofile low ');
    const house = await CeilingHouse.open(lined);
    let built = 0, panels = 0, shaped = 0;
    await fc.assert(fc.asyncProperty(randomCeilings, async made => {
        const { ceiling } = await house.look(made);
        if (!ceiling) return;
        built++;
        for (const { part, outline } of takeOffOf(ceiling).pieces) if (part === 'panel') { panels++; if (outline) shaped++; }
    }), { seed: 67, numRuns: runs(600, 40) });
    expect([built > 10, panels > 100, shaped > 10]).toEqual([true, true, true]);
});

describe('the thickness', () => {
    const said = room('usual', BY_TWO, 'stock smooth'), text = (back: string): string => `${PLAIN_BEAM}\nstock smooth { sheet 48" x 96" grain none; thickness 1/4" }${said.replace('thickness 1/4"; stock smooth', back)}`;

    test('is that of the sheets, where nothing is said', async () => {
        const panels = async (back: string) => takeOffOf((await layoutsOf(text(back)))[0]!.ceiling!).pieces.filter(({ part }) => part === 'panel');
        expect(await panels('stock smooth')).toHaveLength(6);
        expect((await panels('stock smooth')).map(({ thickness, overall }) => [thickness, overall])).toEqual((await panels('thickness 1/4"; stock smooth')).map(({ thickness, overall }) => [thickness, overall]));
        expect((await panels('stock smooth')).map(({ thickness }) => thickness / TICKS_PER_INCH)).toEqual(Array.from({ length: 6 }, () => 0.25));
    });
    test('is asked for, where no sheets are said either', async () => {
        const house = await TestWorkspace.open({ 'house.coffer': text('gap 1/8"') });
        expect(inspect(readFile(house.document('house.coffer'))).findings.filter(({ rule }) => rule === 'not-said').map(({ message }) => message)).toEqual([
            '`back` does not say how thick the panels are: give their `thickness`, or a `stock` that has one.',
        ]);
    });
});
