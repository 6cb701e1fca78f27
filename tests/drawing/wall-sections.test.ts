import { describe, expect, test } from 'vitest';
import { drawSheets, toSvg, type Sheet } from '../../src/drawing/index.ts';
import { allSectionsOf, drawAnyPaneSection } from '../../src/drawing/section/all-sections.ts';
import { alongWalls, wallShape } from '../../src/drawing/section/wall-shape.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';
import { outside, touching } from './support/checks.ts';
import { groupOf, groups, texts } from './support/walk.ts';

/** What runs along the walls, in section: bands, half beams of every kind, and a beam that hangs under a panel. */
const TEXT = `${PLAIN_BEAM}profile grooved like plain { sides { rabbet 1/8" x 1/4" on lower-back } }
profile paneled like plain { back { thickness 1/4" } }
profile crowned like plain { trim { stock bed; spring 38 deg } }

room library {
  wall north 16'
  wall east 12'
  wall south 16' { perimeter { kind half-beam; width 5"; scribe 1/4" } }
  wall west 12' { perimeter { kind none } }
  ceiling { height 9'; covering gypsum thickness 5/8" }
  grid { coffers-north 3; coffers-east 3; beams grooved; through north-south; perimeter { kind half-beam; width 2 1/2" } }
}
room pantry {
  wall north 16'
  wall east 12'
  grid { coffers-north 3; coffers-east 3; beams capped; through north-south; perimeter { kind half-beam; width 2 1/2" } }
}
room landing {
  wall north 16'
  wall east 12'
  grid { coffers-north 3; coffers-east 3; beams crowned; through north-south; perimeter { kind band; stock eight; below-beams 1/4" } }
}
room nook {
  wall north 16'
  wall east 12'
  grid { coffers-north 3; coffers-east 3; beams paneled; through north-south }
}
`;
const layouts = await layoutsOf(TEXT);
const ceilingOf = (name: string) => layouts.find(({ room }) => room.name === name)!.ceiling!;
const sheetsOf = (name: string) => drawSheets(ceilingOf(name), takeOff(ceilingOf(name)));
const words = (sheet: Sheet) => texts(sheet.items).map(run => run.text).join('\n');

describe.each(['library', 'pantry', 'landing', 'nook'])('%s', name => {
    test.each(sheetsOf(name).slice(1).map(sheet => [sheet.title, sheet] as const))('%s', async (_title, sheet) => {
        expect(touching(sheet)).toEqual([]);
        expect(outside(sheet)).toEqual([]);
        const ids = groups(sheet.items).map(group => group.id);
        expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
        await expect(toSvg(sheet, { theme: 'light', fonts: 'named', as: 'part of a page' })).toMatchFileSnapshot(`./snapshots/${name}-${sheet.id}.svg`);
    });

    test('in panes of any width no two texts touch', () => {
        for (const width of [240, 480, 700, 1200]) {
            for (const each of allSectionsOf(ceilingOf(name))) expect(touching(drawAnyPaneSection(ceilingOf(name), each, { width, height: 500 }))).toEqual([]);
        }
    });
});

test('walls along which the same runs share one section, in the order of the walls', () => {
    expect(alongWalls(ceilingOf('library')).map(({ own, walls }) => [own.kind, ...walls])).toEqual([['half-beam', 'north', 'east'], ['half-beam', 'south']]);
    expect(sheetsOf('library').map(({ id }) => id)).toEqual(['C-1', 'C-2', 'C-3', 'C-4', 'C-5', 'C-6']);
});

test('a half beam by hand: 5" and a side of 3/4", its cleats one bottom up, what is scribed beyond the wall', () => {
    const ceiling = ceilingOf('library'), inch = (ticks: number) => ticks / TICKS_PER_INCH;
    const { parts, face, depth, scribe } = wallShape(alongWalls(ceiling)[1]!, ceiling.beams);
    expect([face, depth, scribe!.width].map(inch)).toEqual([5.75, 7.5, 0.25]);
    expect(Object.fromEntries(parts.map(({ id, x, y }) => [id, [...x, ...y].map(inch)]))).toEqual({
        'blocking': [0, 5, 0, 0.75], 'cleat': [4.25, 5, 6, 6.75], 'wall-cleat': [0, 0.75, 6, 6.75], 'side': [5, 5.75, 0.25, 7.5], 'bottom': [0, 5, 6.75, 7.5],
    });
    const [, , , sheet] = sheetsOf('library');
    expect(words(sheet!)).toContain('ripped 1⁄4" wider, its edge at the wall scribed');
    expect(groupOf(sheet!, 'scribe').items).toHaveLength(1);
});

test('a band hangs below the beams by what is said, and the crown lies against it', () => {
    const [, , sheet] = sheetsOf('landing');
    expect(words(sheet!)).toContain('its lower edge 1⁄4" below the beams’ undersides');
    expect(words(sheet!)).toContain('crown, spring 38°');
});

test('a panel lies between the ceiling and the beam', () => {
    const [, sheet] = sheetsOf('nook');
    expect(words(sheet!)).toContain('Panel over the coffers');
    expect(groupOf(sheet!, 'panel').title).toBe('Panel over the coffers');
});
