import Papa from 'papaparse';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PAGES } from '../../src/cli/rule-pages.ts';
import { RULES } from '../../src/rules/index.ts';
import { explainRule } from '../../src/rules/reference.ts';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house, tooWide, yard } from './house.ts';
import { cofferwright } from './world.ts';

interface PieceJson { id: string; room: string; part: string; why: string; back: { ticks: number; cut: number }; source: { file: string } }
interface CutListJson { rooms: { name: string; laidOut: boolean; errors: number }[]; pieces: PieceJson[] }
interface BoardsJson { houses: {
    job: string | null;
    complete: boolean;
    costs: { amount: string }[];
    unpriced: { stock: string }[];
    stocks: { boards: { onHand: boolean; strips: { pieces: { piece: string }[] }[] }[] }[];
}[] }

describe('cut-list', () => {
    test('every piece as its schema says, tied to the text it comes from', async () => {
        const { code, out } = await cofferwright(folderWith(house), ['cut-list', '--format', 'json']);
        const list = JSON.parse(out) as CutListJson;
        const valid = strictSchema('cut-list');
        expect(valid(list), JSON.stringify(valid.errors)).toBe(true);
        expect(code).toBe(0);
        expect(new Set(list.pieces.map(p => p.part))).toEqual(new Set(['blocking', 'spacer', 'side', 'cleat', 'bottom', 'band']));
        expect(new Set(list.pieces.map(p => p.id)).size).toBe(list.pieces.length);
        for (const piece of list.pieces) {
            expect(['box.coffer', 'den.coffer']).toContain(piece.source.file);
            expect(Math.abs(piece.back.cut - piece.back.ticks)).toBeLessThanOrEqual(508);
            expect(piece.why).toMatch(/\d/);
        }
    });

    test('the human list and the CSV hold the same pieces', async () => {
        const cwd = folderWith(house);
        const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as CutListJson;
        const csv = Papa.parse<{ id: string }>((await cofferwright(cwd, ['cut-list', '--format', 'csv'])).out, { header: true, skipEmptyLines: true });
        expect(csv.errors).toEqual([]);
        expect(csv.data.map(row => row.id)).toEqual(list.pieces.map(p => p.id));
        const human = (await cofferwright(cwd, ['cut-list'])).out;
        const counts = [...human.matchAll(/^ {4} *(\d+) x /gm)].map(found => Number(found[1]));
        expect(counts.reduce((sum, n) => sum + n, 0)).toBe(list.pieces.length);
        expect(human).toMatch(/^CUT LIST {2}Plum Street 4\n/);
        expect(human).toContain('Take care');
    });

    test('a house with an error has its list, and is told not to cut from it: 1', async () => {
        const { code, out, err } = await cofferwright(folderWith(tooWide), ['cut-list']);
        expect(out).toContain('room den: 1 error in what it is made from. Do not cut before it is fixed.');
        expect(err).toContain('`cofferwright check`');
        expect(code).toBe(1);
    });

    test('a room that cannot be laid out is named, and the others are listed: 1', async () => {
        const hall = den.replace('room den', 'room hall').replace(/wall east.*\n/, '');
        const { code, out } = await cofferwright(folderWith({ ...house, 'hall.coffer': hall }), ['cut-list', '--format', 'json']);
        const list = JSON.parse(out) as CutListJson;
        expect(list.rooms.map(r => [r.name, r.laidOut])).toEqual([['den', true], ['hall', false]]);
        expect(new Set(list.pieces.map(p => p.room))).toEqual(new Set(['den']));
        expect(code).toBe(1);
    });

    test('a file whose room is lost in its errors is said, also where other rooms are listed: 1', async () => {
        const cwd = folderWith({ ...house, 'hall.coffer': den.replace('room den', 'Room hall') });
        for (const command of ['cut-list', 'boards', 'draw']) {
            const ran = await cofferwright(cwd, [command]);
            expect(ran.err).toContain('hall.coffer: 1 error. A room that is meant in it is missing here');
            expect(ran.code).toBe(1);
            expect((await cofferwright(cwd, [command, '--room', 'den', '.'])).code).toBe(0);
        }
    });

    test('two rooms of one name in a house are said, since their pieces could not be told apart: 1', async () => {
        const ran = await cofferwright(folderWith({ ...house, 'den-2.coffer': den }), ['cut-list', '--format', 'csv']);
        expect(ran.err).toContain('Two rooms of one house are called den');
        expect(ran.code).toBe(1);
    });

    test('rooms by name; an unknown one is said', async () => {
        const cwd = folderWith({ ...house, 'hall.coffer': den.replace('room den', 'room hall') });
        const { out } = await cofferwright(cwd, ['cut-list', '--format', 'json', '--room', 'hall', '.']);
        expect(new Set((JSON.parse(out) as CutListJson).pieces.map(p => p.room))).toEqual(new Set(['hall']));
        expect(await cofferwright(cwd, ['cut-list', '--room', 'attic'])).toEqual({ code: 2, out: '', err: 'cofferwright: There is no room attic in these files; there is den, hall\n' });
    });
});

describe('boards', () => {
    test('as its schema says: every piece of the cut list on one board, with its cost', async () => {
        const cwd = folderWith(house);
        const { code, out } = await cofferwright(cwd, ['boards', '--format', 'json']);
        const { houses } = JSON.parse(out) as BoardsJson;
        const valid = strictSchema('boards');
        expect(valid(JSON.parse(out)), JSON.stringify(valid.errors)).toBe(true);
        const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as CutListJson;
        const placed = houses.flatMap(h => h.stocks).flatMap(s => s.boards).flatMap(b => b.strips).flatMap(s => s.pieces.map(p => p.piece));
        expect(placed.sort()).toEqual(list.pieces.map(p => p.id).sort());
        expect(houses).toMatchObject([{ job: 'Plum Street 4', complete: true }]);
        expect(Number(houses[0]!.costs[0]!.amount)).toBeGreaterThan(100);
        expect(code).toBe(0);
    });

    test('a stock without a price is said, in every form, and the end is 1', async () => {
        const cwd = folderWith({ ...house, 'yard.coffer': yard.replace(/ {2}price {4}3.25.*\n/, '') });
        const human = await cofferwright(cwd, ['boards']);
        expect(human.out).toMatch(/no price for pine-1x8: \d+ x \d+' not in the total/);
        expect(human.out).toContain(', without the boards that have no price');
        expect(human.code).toBe(1);
        expect((JSON.parse((await cofferwright(cwd, ['boards', '--format', 'json'])).out) as BoardsJson).houses[0]).toMatchObject({ complete: false, unpriced: [{ stock: 'pine-1x8', length: { text: "16'" } }, { stock: 'pine-1x8' }] });
        expect((await cofferwright(cwd, ['boards', '--format', 'csv'])).out).toMatch(/pine-1x8,buy,.*,,,,no price said,/);
    });

    test('two houses share a yard: a board on hand is used once', async () => {
        const withBoard = yard.replace('price    2.10 USD per ft', 'price    2.10 USD per ft\n  on-hand  1 x 16\'');
        const inFolder = (folder: string) => ({ [`${folder}/den.coffer`]: den.replace('"yard', '"../yard').replace('"box', '"../box'), [`${folder}/job.coffer`]: `edition 1\njob "${folder}" {}\n` });
        const { out } = await cofferwright(folderWith({ 'yard.coffer': withBoard, 'box.coffer': house['box.coffer'], ...inFolder('one'), ...inFolder('two') }), ['boards', '--format', 'json']);
        const { houses } = JSON.parse(out) as BoardsJson;
        expect(houses.map(h => [h.job, h.stocks.flatMap(s => s.boards).filter(b => b.onHand).length])).toEqual([['one', 1], ['two', 0]]);
    });
});

describe('draw', () => {
    test('a plan for the room and a section for its beam, each a whole SVG', async () => {
        const cwd = folderWith(house);
        const ran = await cofferwright(cwd, ['draw', '--out', 'sheets/today', '--theme', 'print']);
        expect(ran).toEqual({ code: 0, out: ['plan-den', 'section-box', 'section-band-den', 'meetings-den'].map(name => `${join('sheets/today', `${name}.svg`)}\n`).join(''), err: '' });
        for (const name of readdirSync(join(cwd, 'sheets/today')).filter(name => name.endsWith('.svg')))
            expect(readFileSync(join(cwd, 'sheets/today', name), 'utf8')).toMatch(/^<svg [\s\S]*<\/svg>\n$/);
    });

    test('the same sheets as DXF, which do not overwrite the SVG', async () => {
        const cwd = folderWith(house);
        await cofferwright(cwd, ['draw']);
        const ran = await cofferwright(cwd, ['draw', '--format', 'dxf']);
        expect(ran).toEqual({ code: 0, out: ['plan-den', 'section-box', 'section-band-den', 'meetings-den'].map(name => `${join('drawings', `${name}.dxf`)}\n`).join(''), err: '' });
        expect(readdirSync(join(cwd, 'drawings')).sort()).toEqual(['.cofferwright.sha256', ...['meetings-den', 'plan-den', 'section-band-den', 'section-box'].flatMap(name => [`${name}.dxf`, `${name}.svg`])]);
        expect(readFileSync(join(cwd, 'drawings/plan-den.dxf'), 'utf8')).toMatch(/^0\nSECTION\n[\s\S]*\n0\nEOF\n$/);
        expect((await cofferwright(cwd, ['draw', '--format', 'dwg'])).code).toBe(2);
    });

    test('rooms that share a name or a beam overwrite nothing', async () => {
        const cwd = folderWith({ ...house, 'other/den.coffer': den.replace('"yard', '"../yard').replace('"box', '"../box') });
        const { out } = await cofferwright(cwd, ['draw']);
        expect(out.trim().split('\n').map(path => path.replace(/^drawings./, ''))).toEqual([
            'plan-den.svg', 'section-box.svg', 'section-band-den.svg', 'meetings-den.svg', 'plan-den-2.svg', 'section-box-den.svg', 'section-band-north-den.svg', 'meetings-den-2.svg',
        ]);
    });

    test('a room that cannot be laid out is said: 1; a folder that cannot be made: 2', async () => {
        const cwd = folderWith({ ...house, 'den.coffer': den.replace(/wall east.*\n/, ''), 'taken': '' });
        const ran = await cofferwright(cwd, ['draw']);
        expect(ran).toMatchObject({ code: 1, out: '', err: expect.stringMatching(/den\.coffer:5:6: How long is `den`[^]*room den cannot be laid out; `cofferwright check` shows why\n$/) as string });
        expect((await cofferwright(folderWith({ ...house, taken: '' }), ['draw', '--out', 'taken'])).code).toBe(2);
        expect((await cofferwright(cwd, ['draw', '--room', 'attic'])).code).toBe(2);
    });
});

describe('explain', () => {
    test('the page of every rule', async () => {
        for (const rule of RULES) {
            const { code, out } = await cofferwright(folderWith({}), ['explain', rule.name]);
            expect(code).toBe(0);
            expect(out).toBe(explainRule(rule));
        }
    });

    test('what the language itself finds has a line each, every one of them', async () => {
        const { out } = await cofferwright(folderWith({}), ['explain', 'not-computed-yet']);
        expect(out).toBe('not-computed-yet (hint)\nUnderstood, and not computed yet.\n');
        const folder = new URL('../../src/language/', import.meta.url);
        const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(name => name.endsWith('.ts') && !name.includes('generated'))
            .map(name => readFileSync(new URL(name.replaceAll('\\', '/'), folder), 'utf8'));
        const names = new Set(sources.flatMap(text => [...text.matchAll(/(?:finding\(|this\.say\(|rule: )'([a-z-]+)'/g)].map(found => found[1]!)));
        expect(names.size).toBeGreaterThan(20);
        expect([...names].filter(name => !PAGES.some(page => page.name === name))).toEqual([]);
    });

    test('all of them, by name', async () => {
        const { out } = await cofferwright(folderWith({}), ['explain']);
        expect(out.split('\n').filter(line => line !== '')).toHaveLength(PAGES.length);
        expect(new Set(PAGES.map(p => p.name)).size).toBe(PAGES.length);
    });
});

describe('format', () => {
    const untidy = 'edition 1\nstock pine-1x6 {\nsize 1x6\n      lengths 8\',   12\'\n}\n';

    test('rewrites what is untidy, leaves what is tidy, and says how many', async () => {
        const cwd = folderWith({ 'a.coffer': untidy });
        expect(await cofferwright(cwd, ['format', '--check'])).toMatchObject({ code: 1, out: 'a.coffer\n' });
        expect(readFileSync(join(cwd, 'a.coffer'), 'utf8')).toBe(untidy);
        expect(await cofferwright(cwd, ['format'])).toEqual({ code: 0, out: '', err: '1 of 1 files changed\n' });
        const tidy = readFileSync(join(cwd, 'a.coffer'), 'utf8');
        expect(tidy).toMatch(/\n {2}size/);
        expect(await cofferwright(cwd, ['format', '--check'])).toEqual({ code: 0, out: '', err: '0 of 1 files would change\n' });
        expect((await cofferwright(cwd, ['format', '-'], { stdin: untidy })).out).toBe(tidy);
    });

    test('keeps a byte order mark and the line ends', async () => {
        const cwd = folderWith({ 'a.coffer': `\ufeff${untidy.replaceAll('\n', '\r\n')}` });
        expect((await cofferwright(cwd, ['format'])).code).toBe(0);
        const text = readFileSync(join(cwd, 'a.coffer'), 'utf8');
        expect(text.startsWith('\ufeffedition 1\r\n')).toBe(true);
        expect(text.replaceAll('\r\n', '').includes('\n')).toBe(false);
    });

    test('leaves a text that cannot be read as it is: 1', async () => {
        const text = 'edition 1\nstock { size 1x6 "\n';
        const cwd = folderWith({ 'a.coffer': text });
        const ran = await cofferwright(cwd, ['format']);
        expect(ran.err).toContain('a.coffer has errors that keep it from being formatted');
        expect(ran.code).toBe(1);
        expect(readFileSync(join(cwd, 'a.coffer'), 'utf8')).toBe(text);
        expect((await cofferwright(cwd, ['format', '-'], { stdin: text })).out).toBe(text);
    });

    test.each([
        ['too long', `edition 1\n${`// ${'a'.repeat(5997)}\n`.repeat(50)}`, /^a\.coffer is left as it is\. This file is too long to be a job: 300 060 characters, and 300 000 is the limit\./],
        ['too much', `edition 1\n${'let a = 1"\n'.repeat(13_000)}`, /^a\.coffer is left as it is\. This file is too long to be a job: .* 60 000 is the limit\./],
        ['longer than is read once it is laid out', `edition 1\n${`// ${'a'.repeat(6997)}\n`.repeat(40)}${'let a=1\n'.repeat(2_400)}`, /laid out it could not be read any more\. This file is too long/],
    ])('says the reason where a text is not read: %s', async (_what, text, reason) => {
        const cwd = folderWith({ 'a.coffer': text });
        expect(await cofferwright(cwd, ['format'])).toMatchObject({ code: 1, err: expect.stringMatching(reason) });
        expect(readFileSync(join(cwd, 'a.coffer'), 'utf8')).toBe(text);
        expect(await cofferwright(cwd, ['format', '-'], { stdin: text })).toMatchObject({ code: 1, out: text });
    });
});

test('the same files give the same bytes', async () => {
    const cwd = folderWith(house);
    for (const argv of [['cut-list'], ['boards'], ['cut-list', '--format', 'csv'], ['boards', '--format', 'json'], ['check', '--format', 'sarif']])
        expect((await cofferwright(cwd, argv)).out).toBe((await cofferwright(cwd, argv)).out);
    writeFileSync(join(cwd, 'job.coffer'), 'edition 1\njob "Elsewhere" {}\n');
    expect((await cofferwright(cwd, ['cut-list'])).out).toContain('Elsewhere');
});

describe('model', () => {
    test('a binary glTF for the room, or an IFC file', async () => {
        const cwd = folderWith(house);
        expect(await cofferwright(cwd, ['model'])).toEqual({ code: 0, out: `${join('models', 'den.glb')}\n`, err: '' });
        expect(readFileSync(join(cwd, 'models/den.glb')).subarray(0, 8)).toEqual(Buffer.from([0x67, 0x6c, 0x54, 0x46, 2, 0, 0, 0]));
        expect(await cofferwright(cwd, ['model', '--format', 'ifc', '--out', 'bim'])).toEqual({ code: 0, out: `${join('bim', 'den.ifc')}\n`, err: '' });
        expect(readFileSync(join(cwd, 'bim/den.ifc'), 'utf8')).toMatch(/^ISO-10303-21;\n[\s\S]*\nEND-ISO-10303-21;\n$/);
        expect((await cofferwright(cwd, ['model', '--format', 'obj'])).code).toBe(2);
    });

    test('every piece of the cut list is in it by its name', async () => {
        const cwd = folderWith(house);
        const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as CutListJson;
        await cofferwright(cwd, ['model', '--format', 'ifc']);
        const text = readFileSync(join(cwd, 'models/den.ifc'), 'utf8');
        expect([...text.matchAll(/IFCMEMBER\('[^']*',\$,'([^']*)'/g)].map(found => found[1]!).sort()).toEqual(list.pieces.map(({ id }) => id).sort());
    });

    test('a room that cannot be laid out is said: 1', async () => {
        const cwd = folderWith({ ...house, 'den.coffer': den.replace(/wall east.*\n/, '') });
        expect(await cofferwright(cwd, ['model'])).toMatchObject({ code: 1, out: '', err: expect.stringMatching(/den\.coffer:5:6: How long is `den`[^]*room den cannot be laid out; `cofferwright check` shows why\n$/) as string });
    });
});
