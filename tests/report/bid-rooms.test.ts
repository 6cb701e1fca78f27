import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { layoutOf } from '../../src/pipeline/inspect.ts';
import { readFile } from '../../src/language/read-file.ts';
import { roomText } from '../../src/report/bid/scope.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { TestWorkspace } from '../support/workspace.ts';

const FILES = ['yard', 'details/plain-box', 'details/groove-box', 'quince-lane/library', 'quince-lane/parlor', 'quince-lane/study'].map(name => `${name}.coffer`);

/** A client is told no width and length that a room has not got, and no count each way where not every line runs from wall to wall. */
test.each([
    ['library', /^Library, with 10 walls, at most 18' 6" by 15' 2": a coffered ceiling of 10 coffers, in box beams/],
    ['parlor', /^Back parlor, walls of 13' 2 1⁄4", 11' 7 1⁄2", 13' 4" and 11' 6 3⁄8": a coffered ceiling of 9 coffers, 3 by 3, in box beams/],
    ['study', /^Study, 11' 6" by 9' 11 1⁄2": a coffered ceiling of 12 coffers, 4 by 3, in box beams/],
])('a bid says of the %s how large it is', async (name, words) => {
    const text = (path: string): string => readFileSync(fileURLToPath(new URL(`../../examples/${path}`, import.meta.url)), 'utf8');
    const workspace = await TestWorkspace.open(Object.fromEntries(FILES.map(path => [path, text(path)])));
    const [room] = readFile(workspace.document(`quince-lane/${name}.coffer`)).rooms;
    expect(roomText(layoutOf(room!).ceiling!)).toMatch(words);
});

test('beams of several sizes are all told, each with its lines', async () => {
    const [layout] = await layoutsOf(`edition 1
stock six { size 1x6; species yellow-poplar }
stock eight { size 1x8; species yellow-poplar }
profile box { blocking { stock six }; sides { stock eight }; bottom { stock six } }
profile low like box { sides.stock six }
room hall {
  wall north  17' 4"
  wall east   12' 6"
  grid { coffers-north 3; coffers-east 3; beams box; through north-south }
  line A { beams low }
  line B { beams low }
}
`);
    expect(roomText(layout!.ceiling!)).toContain(', in box beams of 2 sizes: 7" wide and 7 1⁄2" deep (lines 1 and 2), 7" wide and 5 3⁄4" deep (lines A and B) of yellow poplar');
});
