import Papa from 'papaparse';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { house, tooWide, yard } from './house.ts';
import { cofferwright } from './world.ts';

interface SawJson { houses: {
    steps: { do: string; takes?: { pieces: string[] }[] }[]; boards: { name: string; strips: { pieces: { piece: string }[] }[] }[];
}[] }
interface CutListJson { pieces: { id: string }[] }
interface BoardsJson { houses: { stocks: { stock: string; boards: { number: number; strips: { pieces: { piece: string }[] }[] }[] }[] }[] }

describe('saw', () => {
    test('as its schema says; every piece of the cut list at one stop, on the board that `boards` names', async () => {
        const cwd = folderWith(house);
        const { code, out } = await cofferwright(cwd, ['saw', '--format', 'json']);
        const saw = JSON.parse(out) as SawJson;
        const valid = strictSchema('saw');
        expect(valid(saw), JSON.stringify(valid.errors)).toBe(true);
        expect(code).toBe(0);
        const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as CutListJson;
        expect(saw.houses[0]!.steps.flatMap(s => s.takes ?? []).flatMap(t => t.pieces).sort()).toEqual(list.pieces.map(p => p.id).sort());
        const boards = JSON.parse((await cofferwright(cwd, ['boards', '--format', 'json'])).out) as BoardsJson;
        const named = (name: string, pieces: string[]): string => `${name}: ${[...pieces].sort().join(' ')}`;
        expect(saw.houses[0]!.boards.map(b => named(b.name, b.strips.flatMap(s => s.pieces).map(p => p.piece))))
            .toEqual(boards.houses[0]!.stocks.flatMap(s => s.boards.map(b => named(`${s.stock} #${b.number}`, b.strips.flatMap(x => x.pieces).map(p => p.piece)))));
    });

    test('the list says which way is meant, and the CSV holds every cut', async () => {
        const cwd = folderWith(house);
        const human = (await cofferwright(cwd, ['saw'])).out;
        expect(human).toMatch(/^AT THE SAW {2}Plum Street 4\n/);
        expect(human).toContain('Work setting by setting');
        const csv = Papa.parse<{ piece: string }>((await cofferwright(cwd, ['saw', '--format', 'csv'])).out, { header: true, skipEmptyLines: true });
        const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as CutListJson;
        expect(csv.data.map(row => row.piece).sort()).toEqual(list.pieces.map(p => p.id).sort());
    });

    test('sheets: an SVG each, and one HTML that prints them all and fetches nothing', async () => {
        const cwd = folderWith(house);
        const { code, out } = await cofferwright(cwd, ['saw', '--sheets', 'paper']);
        const files = readdirSync(join(cwd, 'paper')).filter(name => !name.startsWith('.')).sort();
        expect(code).toBe(0);
        expect(out.trim().split('\n').map(line => line.split('/').at(-1)).sort((a, b) => (a! < b! ? -1 : 1))).toEqual(files);
        expect(files).toContain('boards-plum-street-4.html');
        const html = readFileSync(join(cwd, 'paper', 'boards-plum-street-4.html'), 'utf8');
        expect(html.match(/<div class="page">/g)).toHaveLength(files.length - 1);
        expect(html).toContain(`default-src 'none'`);
        expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org\/2000\/svg")/);
        expect(html).toContain('@page{size:17in 11in;margin:0}');
    });

    test('sheets go where --out says, or else into sheets; an option is no folder, and two folders or --out alone are refused', async () => {
        const cwd = folderWith(house), drawn = (folder: string): boolean => existsSync(join(cwd, folder, 'boards-plum-street-4.html'));
        expect((await cofferwright(cwd, ['saw', '--quick', '--sheets', '--out', 'paper'])).code).toBe(0);
        expect([drawn('paper'), readdirSync(cwd).filter(name => name.startsWith('-'))]).toEqual([true, []]);
        expect((await cofferwright(cwd, ['saw', '--quick', '--sheets'])).code).toBe(0);
        expect(drawn('sheets')).toBe(true);
        for (const [args, words] of [
            [['saw', '--out', 'paper'], 'Write --sheets --out paper'], [['saw', '--sheets', 'a', '--out', 'b'], 'Two folders to draw into: --sheets a and --out b'],
            [['labels', '--out', '--quick'], 'It is an option, and no folder.'], [['survey', '--out', 'paper'], 'Write --templates --out paper'],
        ] as const) {
            const { code, err } = await cofferwright(cwd, [...args]);
            expect([code, err]).toEqual([2, expect.stringContaining(words)]);
        }
        expect(readdirSync(cwd).filter(name => name === 'a' || name === 'b' || name.startsWith('-'))).toEqual([]);
    });

    test('from a house with an error nothing should be cut: it is said, 1', async () => {
        const { code, out } = await cofferwright(folderWith(tooWide), ['saw']);
        expect(out).toContain('Do not cut before it is fixed.');
        expect(code).toBe(1);
    });

    test('a piece that no board holds makes it incomplete: 1', async () => {
        const short = yard.replace(`lengths  8', 12'\n  price    0.80`, `lengths  11"\n  price    0.80`);
        const { code, out } = await cofferwright(folderWith({ ...house, 'yard.coffer': short }), ['saw']);
        expect(out).not.toContain('cleat-');
        expect(code).toBe(1);
    });
});

describe('labels', () => {
    test('one for every piece and one for the bundle of spacers, on the paper that was asked for', async () => {
        const cwd = folderWith(house);
        const { code } = await cofferwright(cwd, ['labels', '--out', 'stickers', '--paper', 'A4']);
        expect(code).toBe(0);
        const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as CutListJson;
        const html = readFileSync(join(cwd, 'stickers', 'labels-plum-street-4.html'), 'utf8');
        const pieces = [...html.matchAll(/<g id="[^"]*label\.[^"]*" data-piece="([^"]*)"/g)].map(found => found[1]!);
        const isSpacer = (id: string): boolean => id.includes('.spacer-');
        expect(pieces.filter(id => !isSpacer(id)).sort()).toEqual(list.pieces.map(p => p.id).filter(id => !isSpacer(id)).sort());
        const spacers = list.pieces.filter(p => isSpacer(p.id));
        expect(pieces.filter(isSpacer)).toHaveLength(1);
        expect(html).toContain(`${spacers.length} alike`);
        expect(html).toContain('@page{size:210mm 297mm;margin:0}');
    });

    test('an empty house has none, and that is said', async () => {
        const { out, err } = await cofferwright(folderWith({ 'yard.coffer': house['yard.coffer'] }), ['labels']);
        expect(out).toBe('');
        expect(err).toContain('There is nothing to cut.');
    });
});
