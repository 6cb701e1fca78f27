import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { layoutOf } from '../../src/pipeline/inspect.ts';
import { readFile } from '../../src/language/read-file.ts';
import { roomText } from '../../src/report/bid/scope.ts';
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
