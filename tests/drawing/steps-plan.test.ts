import { expect, test } from 'vitest';
import { drawStepsPlan } from '../../src/drawing/index.ts';
import type { Group, Item, TextRun } from '../../src/drawing/display-list.ts';
import { runWidth } from '../../src/drawing/text/measure-text.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';

/** Lines of 7" that stand 10" apart, center to center, in a small picture. */
const DOUBLED = `edition 1
stock board-6 { thickness 3/4"; width 5 1/2"; lengths 8', 16' }
stock wide { thickness 3/4"; width 7 1/4"; lengths 8', 16' }
profile box { blocking { stock board-6 }; sides { stock wide }; bottom { stock board-6 } }
room den {
  wall north 18' 10"
  wall east 14' 5"
  grid { lines-north 4' 6", 5' 4", 13' 6", 14' 4"; lines-east 4' 2", 5', 10' 2"; beams box; through north-south }
}
`;

test('names of lines that stand close together are not on each other, and stay near their lines', async () => {
    const ceiling = (await layoutsOf(DOUBLED))[0]!.ceiling!, plan = drawStepsPlan(ceiling, takeOffOf(ceiling), [], { width: 210, height: 190, letters: 9 });
    const names = (plan.items.find((item): item is Group => item.kind === 'group' && item.id === 'names')!.items as readonly Item[])
        .filter((item): item is TextRun => item.kind === 'text' && item.weight === 600);
    expect(names.map(({ text }) => text).sort()).toEqual(['1', '2', '3', '4', 'A', 'B', 'C']);
    names.forEach((one, i) => {
        for (const other of names.slice(i + 1)) {
            const beside = Math.abs(one.at[0] - other.at[0]) >= (runWidth(one) + runWidth(other)) / 2, below = Math.abs(one.at[1] - other.at[1]) >= 9 * 0.9;
            expect(beside || below, `${one.text} and ${other.text}`).toBe(true);
        }
    });
    // the pair is moved alike to both sides of where it stands
    const at = (name: string): number => names.find(({ text }) => text === name)!.at[0], { pointsPerTick, origin: [left] } = plan.measured!;
    expect((at('1') + at('2')) / 2).toBeCloseTo(left + 59 * 16256 * pointsPerTick, 6);
});
