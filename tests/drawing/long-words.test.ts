import { expect, test } from 'vitest';
import { drawPlan, drawSheets, toSvg, type Sheet } from '../../src/drawing/index.ts';
import { itemExtent, overlap } from '../../src/drawing/extent.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';
import { outside, touching } from './support/checks.ts';
import { groupOf, leaves, texts } from './support/walk.ts';

/** A room round a chimney breast and a bay of many walls, all with half a beam along them, and a room with panels in several. */
const TEXT = `${PLAIN_BEAM}
stock small { sheet 30" x 60" grain none; thickness 1/4" }
profile lined like plain { back { stock small; seams across-coffers } }
profile whole like plain { back { thickness 1/4" } }
room hall {
  ceiling { height 9' }
  wall north-of-stair 20'
  wall east-by-door 12'
  wall south-east 8' heading west
  wall nook-east 2' heading north
  wall nook 4' heading west
  wall nook-west 2' heading south
  wall south-west heading west
  wall chimney-south 5' heading north
  wall chimney 1' 6" heading east
  wall chimney-face 3' heading north
  wall chimney-back 1' 6" heading west
  wall west-by-window heading north
  grid { coffers-north 3; coffers-east 2; beams plain; through north-south; perimeter { kind half-beam; width 3" } }
}
room parlor { wall north 11' 11"; wall east 8'; grid { coffers-north 3; coffers-east 2; beams lined; through north-south }; fixture lamp light at 6', 2' diameter 5" }
room study { wall north 11' 11"; wall east 8'; grid { coffers-north 3; coffers-east 2; beams whole; through north-south } }
`;
const layouts = await layoutsOf(TEXT);
const ceilingOf = (name: string) => layouts.find(({ room }) => room.name === name)!.ceiling!;
const planOf = (name: string): Sheet => drawPlan(ceilingOf(name), takeOff(ceilingOf(name)));

test('the caption of a section, and the walls that it runs along, are told whole, in as many lines as they take', () => {
    const sheet = drawSheets(ceilingOf('hall'), takeOff(ceilingOf('hall'))).find(({ title }) => title.startsWith('Section through a half beam'))!;
    const caption = texts(groupOf(sheet, 'view-title').items).map(run => run.text), block = texts(groupOf(sheet, 'frame').items).map(run => run.text);
    expect(caption.join(' ')).toContain('Measure the bar to check that the print is to scale.');
    expect(block.join(' ')).toContain('chimney-face, chimney-back and west-by-window walls');
    expect([...caption, ...block].join('')).not.toContain('…');
    expect(outside(sheet)).toEqual([]);
    expect(touching(sheet)).toEqual([]);
});

test('seams of panels stop short of the numbers of coffers and of what hangs there, and are in the key', () => {
    const plan = planOf('parlor'), panels = leaves(groupOf(plan, 'pieces.panel').items), drawn = leaves(plan.items);
    const words = [1, 2, 3, 4, 5, 6].flatMap(number => texts(groupOf(plan, `coffer.${number}`).items)).concat(texts(groupOf(plan, 'fixture-name.lamp').items));
    // every word lies on a panel, and has a ground of its own under it, drawn after the panels
    expect(panels.length).toBeGreaterThan(6);
    for (const run of words) {
        const ground = drawn[drawn.indexOf(run) - 1]!;
        expect(ground).toMatchObject({ kind: 'polyline', closed: true, pen: null, fill: 'paper' });
        expect(overlap(itemExtent(ground), itemExtent(run))).toBe(true);
        expect(drawn.indexOf(ground)).toBeGreaterThan(Math.max(...panels.map(panel => drawn.indexOf(panel))));
    }
    expect(toSvg(plan)).toContain('seam of panels');
    expect(toSvg(planOf('study'))).not.toContain('seam of panels');
});
