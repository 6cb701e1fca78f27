import { expect, test } from 'vitest';
import { lShape } from '../bench/l-shape.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { wrongIn } from './look-at-ceiling.ts';

/** An L out of square with beams of two depths, its band, bottoms and blocking spliced: cut to sixty-fourths, all of it goes together. */
test.each([[8, 7, 47], [12, 9, 88]])('an L out of square of %s by %s coffers covers its room, goes together and adds up', async (across, down, coffers) => {
    const house = await TestWorkspace.open({ 'refectory.coffer': lShape(across, down) });
    const { ceiling } = inspect(readFile(house.document('refectory.coffer'))).layouts[0]!, off = takeOffOf(ceiling!);
    expect(ceiling!.coffers.length).toBe(coffers);
    expect(ceiling!.lines.some(({ splices }) => splices.length > 0)).toBe(true);
    expect(off.pieces.filter(({ part }) => part === 'band').length).toBeGreaterThan(ceiling!.walls.length);
    expect(wrongIn(ceiling!, off)).toBeUndefined();
    expect(dryFit(ceiling!, off).faults).toEqual([]);
});
