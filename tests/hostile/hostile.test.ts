import { expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { createServerServices } from '../../src/server/services.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { humanFindings, MOST_READ } from '../../src/report/findings/human.ts';
import { noPaint } from '../../src/report/look.ts';
import { files, finding } from '../report/samples.ts';
import { FULL, some } from '../support/full.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { hostileFolders, hostileHouses } from './texts.ts';
import { mustStandWithin } from './within.ts';

// How long each takes, at the size where they are just read, is measured by `npm run bench -- hostile`.
const houses = [...hostileHouses(FULL ? { size: 60_000, words: 12_000 } : { size: 3000, words: 800 }), ...hostileFolders(FULL ? 300 : 20)];

/** In shares: each is a test of its own, with a time of its own. */
const SHARE = 12, tried = some(houses, 8);
const shares = Array.from({ length: Math.ceil(tried.length / SHARE) }, (_, i) => tried.slice(i * SHARE, (i + 1) * SHARE));

test.each(shares.map(share => [share[0]!.name, share] as const))('whatever a text is full of, it is answered, and what is found stands in it, from on: %s', async (_name, share) => {
    const workspace = await TestWorkspace.serve({}, createServerServices), { LangiumDocuments } = workspace.shared.workspace;
    const silent: string[] = [];
    for (const { name, files: texts } of share) {
        await workspace.edit(texts);
        let found = 0;
        for (const path of Object.keys(texts)) {
            const { findings } = inspect(readFile(workspace.document(path)));
            mustStandWithin(findings, LangiumDocuments);
            found += findings.length;
        }
        if (found === 0) silent.push(name);
        await workspace.edit(Object.fromEntries(Object.keys(texts).map(path => [path, undefined])));
    }
    // the rest of them is sound
    expect(silent.filter(name => !SOUND.some(sound => name.startsWith(sound)))).toEqual([]);
});

const SOUND = [
    '";" over and over', '"/" over and over', '"//" over and over', '"\\r" over', '"\\t', '" \\n"', 'comments of', 'spaces', 'lines without', 'returns', 'one name', 'names of many parts', 'one chain',
    'rooms with a name', 'values', 'fixtures with a name', 'a chain of imports and values', 'rates in every', 'a room of one name',
];

test('what is too long or too much is refused, with one error that says how much is read', async () => {
    const workspace = await TestWorkspace.serve({ 'long.coffer': 'é'.repeat(1_000_000), 'much.coffer': ';\n'.repeat(70_000), 'rooms.coffer': 'room a {\n}\n'.repeat(201), 'few.coffer': `${'room a {\n}\n'.repeat(200)}let room-a = 1\n` }, createServerServices);
    expect(workspace.published('long.coffer').map(each => each.message)).toEqual([expect.stringContaining('1 000 000 characters, and 300 000 is the limit')]);
    expect(workspace.published('rooms.coffer').map(each => each.message)).toEqual([expect.stringContaining('too many rooms to be a job: 201, and 200 is the limit')]);
    expect(workspace.published('few.coffer').map(each => each.message).filter(message => message.includes('is the limit'))).toEqual([]);
    expect(workspace.published('much.coffer').map(each => each.message)).toEqual([expect.stringContaining('words and signs, and 60 000 is the limit')]);
});

test('a line that is too long is told where it stands, whatever fills it, and one that is just not is read', async () => {
    const lines = { 'word': 'a-'.repeat(6000), 'text': `room a "${'x'.repeat(11_000)}" {`, 'space': `let a = 1"${' '.repeat(11_000)}`, 'comment': `// allow b: ${' c'.repeat(6000)}`, 'table': `survey { ${'readings “'.repeat(1200)}` };
    const files = Object.entries(lines).flatMap(([name, line]) => ['\n', '\r\n', '\r'].map((end, i) => [`${name}${i}.coffer`, ['edition 1', 'let b = 1"', line, 'let c = 1"'].join(end)]));
    const workspace = await TestWorkspace.serve({ ...Object.fromEntries(files), 'just.coffer': `edition 1\nlet b = 1"${' '.repeat(9990)}` }, createServerServices);
    for (const [path] of files) {
        expect(workspace.published(path!).map(({ message, line }) => [message.replace(/\d\d \d{3} characters/, 'so many characters'), line]), path).toEqual([
            ['This line is too long to be of a job: so many characters, and 10 000 is the limit. Nothing in this file is read.', 2],
        ]);
    }
    expect(workspace.published('just.coffer')).toEqual([]);
});

test('a run of what cannot be read is one mistake', async () => {
    const workspace = await TestWorkspace.serve({ 'a.coffer': `edition 1\n${'é€\u{1f600}'.repeat(500)}\nlet a = 1"\n` }, createServerServices);
    expect(workspace.published('a.coffer')).toHaveLength(1);
});

test('of rates in very many files of a folder the first are read, and the others are told so', async () => {
    const workspace = await TestWorkspace.serve(Object.fromEntries(Array.from({ length: 60 }, (_, i) => [`f${String(i).padStart(2, '0')}.coffer`, 'edition 1\nlabor {\n}\n'])), createServerServices);
    const told = Array.from({ length: 60 }, (_, i) => workspace.rules(`f${String(i).padStart(2, '0')}.coffer`).length);
    expect(told).toEqual([...Array<number>(50).fill(0), ...Array<number>(10).fill(1)]);
    expect(workspace.published('f55.coffer')[0]!.message).toMatch(/more than 50 labor blocks/);
});

test('a long ring of imports is told short', async () => {
    const ring = (length: number) => Object.fromEntries(Array.from({ length }, (_, i) => [`f${i}.coffer`, `edition 1\nfrom "./f${(i + 1) % length}.coffer" use a\nstock b {\n}\n`]));
    const message = async (length: number) => (await TestWorkspace.serve(ring(length), createServerServices)).published('f0.coffer').find(({ rule }) => rule === 'import-cycle')?.message;
    expect(await message(3)).toContain('`./f0.coffer` → `./f1.coffer` → `./f2.coffer` → `./f0.coffer`');
    expect(await message(40)).toContain('`./f3.coffer` → 33 more → `./f37.coffer` →');
    expect(await message(150)).toMatch(/leads back to this file, through more than 99 others/);
});

test('a person is shown the first of very many findings, and told how many more there are', () => {
    const shown = humanFindings(Array<ReturnType<typeof finding>>(MOST_READ + 5).fill(finding()), files, noPaint);
    expect(shown.match(/too wide for the channel/g)).toHaveLength(MOST_READ);
    expect(shown.endsWith('And 5 more: `--format concise` shows all of them.\n')).toBe(true);
});
