import { describe, expect, test } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';
import { TestWorkspace } from '../support/workspace.ts';

/**
 * Splices along walls by hand. Boards of 12' give pieces of 11' 11". Half beams are 2 1/2" to the back of their side; with sides of 3/4" mitered in
 * both corners a side along a wall of 20' is 240 - 2 x 2 1/2 = 235" at its back. Common practice, no source.
 */
const room = (name: string, walls: string, grid: string): string => `
room ${name} {
  ${walls}
  grid { ${grid} }
}`;
const LINES = 'coffers-north 5; coffers-east 3; beams shallow; through north-south';
const TEXT = (rooms: string): string => `${PLAIN_BEAM.replaceAll('lengths 8\', 12\', 16\'', 'lengths 8\', 12\'')}
stock nine { thickness 3/4"; width 8 1/4"; lengths 8', 12' }
profile shallow like plain { bottom.biscuits 2 x #10 }
profile deep like plain { sides.stock nine }
${rooms}`;
const layouts = await layoutsOf(TEXT([
    room('dying', 'wall north 20\'\n  wall east 9\'', 'coffers-north 5; coffers-east 2; beams shallow; through north-south; perimeter { kind half-beam; width 2 1/2"; beams deep }'),
    room('said', 'wall north 20\' { splice 9\' from east }\n  wall east 9\'\n  wall south 20\' { splice 5", 10\' from west }\n  wall west 9\'',
        'coffers-north 1; coffers-east 1; beams shallow; through east-west; perimeter { kind half-beam; width 2 1/2" }'),
    room('banded', 'wall north 20\' { splice 8\' 6" from east; splice 5\' }\n  wall east 9\'\n  wall south 20\' { splice 3" from 2 }\n  wall west 9\'',
        'coffers-north 4; coffers-east 2; beams shallow; through north-south; perimeter { kind band; stock eight }'),
].join('')));

function of(name: string, part: Piece['part'], on: string): string[] {
    const { ceiling } = layouts.find(layout => layout.room.name === name) as Required<Layout>, off = takeOffOf(ceiling);
    expect(dryFit(ceiling, off).faults).toEqual([]);
    for (const { id, why, back } of off.pieces) expect(`${id} ${sumOf(why)}`).toBe(`${id} ${back}`);
    return off.pieces.filter(piece => piece.part === part && piece.line === null && piece.on === on)
        .map(({ id, cutBack, ends }) => [id.slice(name.length + 1), printInches(cutBack), ...ends.flatMap(({ how }) => how ?? [])].join(' '));
}

describe('what runs along a wall', () => {
    test('sides of half beams that are too long are spliced behind lines that die into them', () => {
        // deep is 8 1/2", lines 7 1/2": coffers of (240 - 6 1/2 - 28) / 5 = 41.1; centers at 47.85, 95.95, 144.05, 192.15 from the west; backs begin at 2 1/2.
        // the bottom, 240" of 143", is spliced twice, at 95.95 and 144.05; the side once, as far from these as can be of what leaves both under 143":
        // at 95.95 or 144.05 it would be over the bottom's; no other leaves two, so the longest piece shortest: 93.45 and 141.55
        expect(of('dying', 'side', 'north')).toEqual(['side-north-1 93 7/16" miter splice', 'side-north-2 141 9/16" splice miter']);
        expect(of('dying', 'cleat', 'north').slice(0, 2)).toEqual(['cleat-north-1 92 15/16"', 'cleat-north-2 141 1/16"']);
        expect(of('dying', 'side', 'west')).toEqual(['side-west-1 103" miter miter']);
    });
    test('splices stand where the wall says', () => {
        // from the west 240 - 108 = 132; the side from 2 1/2" on
        expect(of('said', 'bottom', 'north')).toEqual(['bottom-north-a 132" dies splice', 'bottom-north-b 108" splice dies']);
        expect(of('said', 'side', 'north')).toEqual(['side-north-1 129 1/2" miter splice', 'side-north-2 105 1/2" splice miter']);
        expect(of('said', 'bottom', 'south')).toEqual(['bottom-south-a 5" dies splice', 'bottom-south-b 115" splice splice', 'bottom-south-c 120" splice dies']);
        expect(of('banded', 'band', 'north')).toEqual(['band-north-a 60" dies splice', 'band-north-b 78" splice splice', 'band-north-c 102" splice dies']);
        // coffers (240 - 1 1/2 - 21) / 4 = 54 3/8: line 2 at 3/4 + 2 x 61 3/8 - 3 1/2 = 120
        expect(of('banded', 'band', 'south')).toEqual(['band-south-a 123" dies splice', 'band-south-b 117" splice dies']);
    });
    test('splices of sides are joints', () => {
        const { ceiling } = layouts.find(layout => layout.room.name === 'said') as Required<Layout>;
        expect(takeOffOf(ceiling).joints.filter(({ kind }) => kind === 'side-splice').map(({ pieces }) => pieces.map(id => id.slice(5)))).toEqual([
            ['side-north-1', 'side-north-2'], ['side-south-1', 'side-south-2'], ['side-south-2', 'side-south-3'],
        ]);
    });
    test.each([
        ['beyond the end', 'wall north 20\' { splice 20\' }', 'perimeter { kind band; stock eight }', 'a splice at 20\' along the north wall, since nothing is joined there. What can be: a place between its ends, less than 20\''],
        ['from another wall\'s end', 'wall north 20\' { splice 2\' from south }', 'perimeter { kind band; stock eight }', 'the splices along the north wall to be measured from'],
        ['where nothing runs', 'wall north 20\' { splice 2\' }', 'perimeter { kind none }', 'a splice along the north wall, along which nothing runs'],
        ['too long, and nothing said', 'wall north 20\'', 'perimeter { kind half-beam; width 2 1/2" }', 'Say where it is spliced, in the block of its wall: `wall north … { splice 10\' }`.'],
    ])('is refused in words: %s', async (_, north, perimeter, message) => {
        const text = TEXT(room('den', `${north}\n  wall east 9'\n  wall south 20'\n  wall west 9'`, `${LINES.replace('coffers-north 5', 'coffers-north 1')}; ${perimeter}`));
        const house = await TestWorkspace.open({ 'house.coffer': text }), { findings } = inspect(readFile(house.document('house.coffer')));
        expect(findings.map(finding => finding.message).join('\n')).toContain(message);
    });
});
