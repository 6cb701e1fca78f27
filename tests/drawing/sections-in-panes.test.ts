import { expect, test } from 'vitest';
import { allSectionsOf, drawAnyPaneSection } from '../../src/drawing/section/all-sections.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import { exampleRoom } from '../support/example-room.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';
import { linesThroughWords, touching } from './support/checks.ts';
import { groups, groupOf } from './support/walk.ts';

/** In points: from the narrowest pane, which has no column of notes, to a screen of its own. */
const WIDTHS = [250, 300, 430, 560, 600, 675, 760, 900, 1200];
const HEIGHTS = [230, 330, 450, 600, 800];

const half = await layoutsOf(`${PLAIN_BEAM}
profile grooved like plain { sides { rabbet 1/8" x 1/4" on lower-back }; trim { stock bed } }
room hall { wall north 11' 11"; wall east 8'; grid { coffers-north 3; coffers-east 2; beams grooved; through north-south; perimeter { kind half-beam; width 3" } } }
`);
const ceilings = [layOut(exampleRoom()).ceiling!, ...half.map(({ ceiling }) => ceiling!)];

test('in a pane of any size no leader and no line of a dimension runs through a figure, and no two figures touch', () => {
    let notes = 0;
    for (const ceiling of ceilings) for (const each of allSectionsOf(ceiling)) for (const width of WIDTHS) for (const height of HEIGHTS) {
        const drawn = drawAnyPaneSection(ceiling, each, { width, height }), at = `${each.of} ${width} ${height}`;
        expect(linesThroughWords(drawn), at).toEqual([]);
        expect(touching(drawn), at).toEqual([]);
        notes += groups(drawn.items).filter(({ id }) => id.startsWith('note.')).length;
    }
    expect(notes).toBeGreaterThan(100);
});

test('the zigzag of a break line stays clear of the figures beside it', () => {
    const [ceiling] = ceilings, drawn = drawAnyPaneSection(ceiling!, allSectionsOf(ceiling!)[0]!, { width: 675, height: 450 });
    const zigzag = Math.max(...groupOf(drawn, 'break-lines').items.flatMap(item => (item.kind === 'polyline' ? item.points.map(([x]) => x) : [])));
    const figures = groupOf(drawn, 'dimensions.trim').items.flatMap(item => (item.kind === 'text' ? [item.at[0] - item.size] : []));
    expect(Math.min(...figures) - zigzag).toBeGreaterThan(2);
});
