import { describe, expect, test } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import { spliceAnywhere } from '../../src/ceiling/splices.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';
import { TestWorkspace } from '../support/workspace.ts';

/** By hand. Boards of 10' give pieces of 9' 11" = 119". Where joints are put is common practice, no source. */
const room = (name: string, beams: string, lines: string, { north = 1, grid = '' } = {}): string => `
room ${name} {
  wall north 18'
  wall east 9'
  wall south 18'
  wall west 9'
  grid { coffers-north ${north}; coffers-east 2; beams ${beams}; through east-west; perimeter { kind band; stock wide }; ${grid} }
  ${lines}
}`;
const TEXT = (...rooms: string[]): string => `${PLAIN_BEAM.replaceAll('lengths 8\', 12\', 16\'', 'lengths 10\'')}
stock flat { thickness 3/4"; width 5 1/2"; lengths 20' }
stock wide { thickness 3/4"; width 7 1/4"; lengths 20' }
stock nine { thickness 3/4"; width 8 1/4"; lengths 10' }
stock bead { thickness 1/2"; width 1 1/2"; lengths 10' }
profile shallow like plain { blocking.stock flat; bottom.stock flat; cleats { rip 3/4" x 3/4" from flat } }
profile beaded like shallow { sides.stock wide; trim { stock bead } }
profile under-beaded like shallow { sides.stock wide; under { stock bead; place under-beam } }
profile low like shallow { sides.stock flat }
profile strips like shallow { sides.stock wide; cleats { rip 3/4" x 3/4" from six } }
${rooms.join('')}`;
const layouts = await layoutsOf(TEXT(
    room('alone', 'shallow', 'line A { splice 7\' 6" }'), room('trimmed', 'beaded', ''), room('molded', 'under-beaded', 'line A { splice 7\' 6" }'),
    room('dying', 'low', 'line A { beams shallow }', { north: 4 }), room('cleated', 'strips', ''),
));

function of(name: string, part: Piece['part'], where: RegExp): string[] {
    const { ceiling } = layouts.find(layout => layout.room.name === name) as Required<Layout>, off = takeOffOf(ceiling);
    expect(dryFit(ceiling, off).faults).toEqual([]);
    for (const { id, why, back } of off.pieces) expect(`${id} ${sumOf(why)}`).toBe(`${id} ${back}`);
    return off.pieces.filter(piece => piece.part === part && where.test(piece.id))
        .map(({ id, cutBack, cutFace, ends }) => [id.slice(name.length + 1), printInches(cutBack), ...cutFace === cutBack ? [] : [printInches(cutFace)], ...ends.flatMap(({ how }) => how ?? [])].join(' '));
}

describe('sides of lines that are longer than their boards', () => {
    test('are spliced away from the joint of their bottom, and from each other\'s', () => {
        // 216 - 1 1/2 = 214 1/2 in two pieces; the bottom's joint is at 90, 89 1/4 from the band. North: 24" from it, the longest piece shortest: places 6"
        // apart and the middle, 107 1/4, which is too near: 114 is. South: nothing from 95 1/2 to 119 is 24" from 89 1/4 and from 114; 102 is 12" from either
        expect(of('alone', 'side', /-north/)).toEqual(['side-A-1-north-a 114" dies splice', 'side-A-1-north-b 100 1/2" splice dies']);
        expect(of('alone', 'side', /-south/)).toEqual(['side-A-1-south-a 102" dies splice', 'side-A-1-south-b 112 1/2" splice dies']);
        expect(of('alone', 'cleat', /-north/)).toEqual(['cleat-A-1-north-a 113 1/2" square square', 'cleat-A-1-north-b 100" square square']);
        const { ceiling } = layouts.find(layout => layout.room.name === 'alone') as Required<Layout>;
        expect(takeOffOf(ceiling).joints.filter(({ kind }) => kind === 'side-splice').map(({ at, pieces }) => [at, ...pieces.map(id => id.slice(6))])).toEqual([
            ['line A, north side, in bay 1', 'side-A-1-north-a', 'side-A-1-north-b'], ['line A, south side, in bay 1', 'side-A-1-south-a', 'side-A-1-south-b'],
        ]);
    });
    test.each([['never', ''], ['where-said', 'splice 7\' 6"'], ['on-crossings', 'splices never']])('are left in one piece with splices %s, which is told', async (splices, splice) => {
        const house = await TestWorkspace.open({ 'house.coffer': TEXT(room('den', 'shallow', `line A { ${splice} }`, { grid: `splices ${splices}` })) });
        const { findings, layouts: [layout] } = inspect(readFile(house.document('house.coffer')));
        expect(takeOffOf(layout!.ceiling!).pieces.filter(({ part, line }) => part === 'side' && line === 'A').map(({ cutBack }) => printInches(cutBack))).toEqual(['214 1/2"', '214 1/2"']);
        expect(findings.filter(({ rule }) => rule === 'longer-than-the-board').map(({ message }) => message)).toEqual([
            'The side (line A, bay 1) is 7\' 11 1/2" too long to come in one piece: it is 17\' 10 1/2", and 9\' 11" is the longest you can get. '
                + 'Let it be spliced, as it is with `splices on-crossings`, or buy longer boards.',
        ]);
    });
    test('are spliced behind lines that die into them', () => {
        // coffers of (214 1/2 - 21) / 4 = 48 3/8: centers of 1, 2, 3 at 51 7/8, 107 1/4, 162 5/8 from the band. its sides are spliced
        // behind them: in two only at 2
        expect(of('dying', 'side', /-A-/)).toEqual([
            'side-A-1-north-a 107 1/4" dies splice', 'side-A-1-north-b 107 1/4" splice dies', 'side-A-1-south-a 107 1/4" dies splice', 'side-A-1-south-b 107 1/4" splice dies',
        ]);
    });
    test('are spliced where their moldings are too long, which are scarfed', () => {
        expect(of('molded', 'side', /-north/)).toEqual(['side-A-1-north-a 114" dies splice', 'side-A-1-north-b 100 1/2" splice dies']);
        // under the beam, flush with its faces: 1 1/2" wide, so its back is so much behind the face; it ends along the bands there. Somebody who looks at it,
        // to the south, has the east on the left: that piece is the longer one at its back
        expect(of('molded', 'molding', /-north/)).toEqual(['molding-A-1-north-a 114" 115 1/2" dies splice', 'molding-A-1-north-b 100 1/2" 99" splice dies']);
    });
    test('whose cleats are too long have them in pieces of one length', () => {
        // 214 1/2 less 1/4 at either end, of 119: two of 107
        expect(of('cleated', 'cleat', /-north/)).toEqual(['cleat-A-1-north-a 107" square splice', 'cleat-A-1-north-b 107" splice square']);
        expect(of('cleated', 'side', /-north/)).toEqual(['side-A-1-north 214 1/2" dies dies']);
    });
});

test('trim that is longer than its boards is scarfed', () => {
    // 214 1/2 of 119 less the scarf's 1/2: along the band in the middle, 107 1/4; the first has its miter and the scarf off its face, the second neither
    expect(of('trimmed', 'trim', /-1-north/)).toEqual(['trim-1-north-a 107 1/4" 106 1/4" miter splice', 'trim-1-north-b 107 1/4" splice miter']);
    const { ceiling } = layouts.find(layout => layout.room.name === 'trimmed') as Required<Layout>, { joints, pieces } = takeOffOf(ceiling);
    expect(joints.filter(({ kind }) => kind === 'trim-splice')).toHaveLength(4);
    expect(joints.filter(({ kind }) => kind === 'trim-corner')).toHaveLength(8);
    const [a, b] = pieces.filter(({ id }) => id.includes('trim-1-north')).map(({ ends }) => ends.map(({ degrees }) => Math.round(degrees!)));
    expect([a, b]).toEqual([[45, 45], [-45, 45]]);
});

describe('a splice anywhere', () => {
    const STEP = inches('1/32'), run = (most: number, neighbor: readonly number[] = [], isClear = (_: number): boolean => true): number[] | undefined =>
        spliceAnywhere({ from: 0, to: inches(200), most: inches(most), neighbor: neighbor.map(at => ({ at: inches(at), place: '' })), step: STEP, isClear, place: () => '' })?.map(({ at }) => at / inches(1));
    test('is in the middle, unless something is too near', () => {
        expect(run(200)).toEqual([]);
        expect(run(120)).toEqual([100]);
        expect(run(120, [76])).toEqual([100]);
        expect(run(120, [77])).toEqual([102]);
        expect(run(120, [100])).toEqual([120]);
    });
    test('comes as often as boards are short, and never where it may not be', () => {
        expect(run(70)).toHaveLength(2);
        expect(run(120, [], at => at > inches(101))).toEqual([102]);
        expect(run(99, [], at => at > inches(101))).toBeUndefined();
        expect(run(0)).toBeUndefined();
        expect(run(-1)).toBeUndefined();
    });
});
