import { expect, test } from 'vitest';
import type { Profile, Room } from '../../../src/job/model.ts';
import { readFile } from '../../../src/language/read-file.ts';
import { inches } from '../../../src/quantity/rational.ts';
import { TestWorkspace } from '../../support/workspace.ts';

/** What is said and cannot be known is unknown: no default steps in, and no width of the stock for a rip that is lost. */
const STOCKS = 'stock wood { size 1x6 }\nstock strip { size 1x2 }\n';

async function profileWith(part: string, text: string): Promise<Profile> {
    const parts = { blocking: 'stock wood', spacers: 'stock wood; height 3"', sides: 'stock wood', cleats: 'rip 3/4" x 3/4" from strip', bottom: 'stock wood', trim: 'stock strip', [part]: text };
    const blocks = Object.entries(parts).map(([name, said]) => `  ${name} {\n    ${said.split('; ').join('\n    ')}\n  }`);
    const workspace = await TestWorkspace.open({ 'main.coffer': `${STOCKS}profile box {\n${blocks.join('\n')}\n}` });
    return readFile(workspace.document('main.coffer')).profiles[0]!;
}
async function roomWith(text: string): Promise<Room> {
    const workspace = await TestWorkspace.open({ 'main.coffer': `${STOCKS}profile box { blocking { stock wood }; sides { stock wood }; bottom { stock wood } }\nroom den {\n  ${text.split('; ').join('\n  ')}\n}` });
    return readFile(workspace.document('main.coffer')).rooms[0]!;
}

test.each([
    ['sides', 'stock wood; held-down 5/', 'a line with a syntax error'],
    ['sides', 'stock wood; held-dwn 1/2"', 'a word one slip away'],
    ['sides', 'stock wood; held 1/2"', 'a word half typed'],
    ['sides', 'stock wood; held-down 5', 'a value of another kind'],
    ['sides', 'stock wood; rabbet 1/4" x 1/0" on lower-back', 'a value that has none'],
    ['sides', 'stock wood; corners mitred', 'a word that is not in the list'],
    ['blocking', 'stock wood; rip lost - 1"', 'a name that leads nowhere'],
    ['blocking', 'stock wood; rip 2000\'', 'a size that no job has'],
    ['bottom', 'stock wood; rip', 'a value that is missing'],
    ['bottom', 'stock wood; gap 1/32" to 0"', 'a range upside down'],
    ['cleats', 'rip 3/4" x from strip', 'half of a pair'],
    ['spacers', 'stock wood; height 3"; every 24" +', 'half of a sum'],
    ['trim', 'stock strip; rip "two"', 'a text'],
] as [keyof Profile, string, string][])('%s with %s is unknown as a whole: %s', async (part, text) => {
    expect(await profileWith(part, text)).toHaveProperty(part, undefined);
});

test.each([
    ['rabbet 1/4" x 1/0" on lower-back', 'a value that has none'], ['rip lost - 1"', 'a name that leads nowhere'], ['rip 5" +', 'half of a sum'], ['rab 1/4" x 1/4" on lower-back', 'a word half typed'],
])('with an other side of %s neither of the sides is known: %s', async text => {
    const profile = await profileWith('other-side', text);
    expect([profile.sides, profile.otherSide]).toEqual([undefined, undefined]);
});

test('an other side has what it says, and all else from the sides', async () => {
    const profile = await profileWith('other-side', 'rip 5"; nails 16 ga x 2" every 6"');
    expect(profile.otherSide).toMatchObject({ rip: { value: { ticks: inches('5') } }, nails: { value: { gauge: 16 } }, heldDown: { said: false }, corners: { value: 'mitered' } });
    expect(profile.otherSide!.stock!.value).toBe(profile.sides!.stock!.value);
    expect(profile.sides).toMatchObject({ rip: undefined, nails: undefined });
    expect(await profileWith('other-side', 'stock lost')).toMatchObject({ otherSide: { stock: undefined } });
    expect(await profileWith('other-side', 'nails 16 ga x')).toMatchObject({ otherSide: { nails: undefined } });
});

test.each([
    ['sides', 'stock wood; nails 16 ga x', 'nails'],
    ['bottom', 'stock wood; biscuits 2 x 20', 'biscuits'],
    ['bottom', 'stock wood; ease 1 1/2', 'ease'],
    ['blocking', 'stock lost', 'stock'],
] as [keyof Profile, string, string][])('%s with %s is known but for its %s', async (part, text, missing) => {
    const profile = await profileWith(part, text);
    expect(profile[part]).toBeDefined();
    expect(profile[part]).toHaveProperty(missing, undefined);
});

test('what is not said stands at its default', async () => {
    expect((await profileWith('sides', 'stock wood')).sides).toMatchObject({ heldDown: { value: { ticks: inches('1/4') }, said: false }, rip: undefined, rabbet: undefined });
});

test('a wall that cannot be read is not taken from the one across, and the room says that it is incomplete', async () => {
    const room = await roomWith('wall north 12\'; wall south 12\' 3; wall east 9\'');
    expect(room.walls.filter(wall => wall.length).map(wall => wall.name).sort()).toEqual(['east', 'north', 'west']);
    expect(room.broken).toBe(true);
});

test.each([
    ['grid { coffers-north 3; coffers-east 2; beams lost; through north-south }', { beams: undefined, through: { value: 'north-south' } }, true],
    ['grid { coffers-north 3; coffers-east two; beams box; through north-south }', { east: undefined }, true],
    ['grid { coffers-north 3"; coffers-east 2; beams box; through north-south }', { north: undefined }, false],
    ['grid { lines-north 3\', lost; coffers-east 2; beams box; through north-south }', { north: undefined, east: { by: 'number' } }, true],
] as const)('%s', async (text, expected, broken) => {
    const room = await roomWith(text);
    expect(room.grid).toMatchObject(expected);
    expect(room.broken).toBe(broken);
});

test.each([
    'grid { coffers-north 3; coffers-east 2; beams box; through north-south; perimeter { kind bnd; stock wood } }',
    'grid { coffers-north 3; coffers-east 2; beams box; through north-south; perimeter { kind band; stock wood; below-beams 1/ } }',
    'grid { coffers-north 3; coffers-east 2; beams box; through north-south; residue bnd }',
    'grid { coffers-north 3; coffers-east 2; beams box; through north-south; centered-on lost }',
])('no grid where every layout would be a guess: %s', async text => {
    expect((await roomWith(text.replace(/\{ /g, '{\n').replace(/ \}/g, '\n}'))).grid).toBeUndefined();
});
