import { describe, expect, test } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import { spliceAnywhere } from '../../src/ceiling/splices.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';

/** By hand. Boards of 10' give pieces of 9' 11" = 119". Where joints are put is common practice, no source. */
const room = (name: string, grid: string, lines = ''): string => `
room ${name} {
  wall north 18' { splice 9' }
  wall east 9'
  wall south 18' { splice 9' }
  wall west 9'
  grid { coffers-north 1; coffers-east 2; beams shallow; through east-west; perimeter { kind band; stock eight }; ${grid} }
  ${lines}
}`;
const layouts = await layoutsOf(`${PLAIN_BEAM.replaceAll('lengths 8\', 12\', 16\'', 'lengths 10\'')}
stock nine { thickness 3/4"; width 8 1/4"; lengths 10' }
stock long { thickness 3/4"; width 7 1/4"; lengths 20' }
stock bead { thickness 1/2"; width 1 1/2"; lengths 10' }
profile shallow like plain { bottom.biscuits 2 x #10 }
profile trimmed like plain { trim { stock bead } }
profile molded like plain { sides.stock long; under { stock bead; place under-beam } }
profile deep like plain { sides.stock nine }
${room('alone', '', 'line A { splice 7\' 6" }')}
${room('never', 'splices never', 'line A { splice 7\' 6" }')}
${room('said', '', 'line A { splice 7\' 6"; splices where-said }')}
${room('trimmed', 'beams trimmed', 'line A { splice 7\' 6" }')}
${room('molded', 'beams molded', 'line A { splice 7\' 6" }')}
${room('dying', 'coffers-north 4', 'line A { beams deep }')}
`);

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
        expect(of('alone', 'cleat', /-north/)).toEqual(['cleat-A-1-north-a 113 1/2"', 'cleat-A-1-north-b 100"']);
        const { ceiling } = layouts.find(layout => layout.room.name === 'alone') as Required<Layout>;
        expect(takeOffOf(ceiling).joints.filter(({ kind }) => kind === 'side-splice').map(({ at, pieces }) => [at, ...pieces.map(id => id.slice(6))])).toEqual([
            ['line A, north side, in bay 1', 'side-A-1-north-a', 'side-A-1-north-b'], ['line A, south side, in bay 1', 'side-A-1-south-a', 'side-A-1-south-b'],
        ]);
    });
    test('are left in one piece where nobody wants splices, or only those that are said', () => {
        expect(of('never', 'side', /-A-/)).toEqual(['side-A-1-north 214 1/2" dies dies', 'side-A-1-south 214 1/2" dies dies']);
        expect(of('said', 'side', /-A-/)).toEqual(['side-A-1-north 214 1/2" dies dies', 'side-A-1-south 214 1/2" dies dies']);
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
        const molding = of('molded', 'molding', /-north/);
        expect(molding.map(each => each.split(' ')[0])).toEqual(['molding-A-1-north-a', 'molding-A-1-north-b']);
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
        expect(run(-Infinity)).toBeUndefined();
    });
});
