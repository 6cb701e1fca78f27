import { expect, test } from 'vitest';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import type { WallsJson } from '../../src/report/walls/shape.ts';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house } from './house.ts';
import { cofferwright } from './world.ts';

const bowed = { ...house, 'den.coffer': den.replace(/( {2}wall north .*)\n/, '$1 {\n    hump  1/4" at 5\'\n    hollow  1/8" at 9\'\n  }\n') };

test('walls: a table, what stands at the head of the cut list, JSON as its schema says, CSV, a page; a room that says nothing of them says so', async () => {
    const cwd = folderWith(bowed), { out, code } = await cofferwright(cwd, ['walls']);
    expect(out).toMatch(/^ALONG THE WALLS/);
    expect(out).toMatch(/north +measured +band, 3\/4" thick +1\/4" at 5', from 0" to [\d' /"]+ +1\/8" at 9'/);
    expect(code).toBe(0);
    expect((await cofferwright(cwd, ['cut-list'])).out).toContain('Before anything is cut:\n  den.coffer:');
    const told = JSON.parse((await cofferwright(cwd, ['walls', '--format', 'json'])).out) as WallsJson, valid = strictSchema('walls');
    expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
    const [wall] = told.rooms[0]!.walls;
    expect([wall!.name, wall!.runs, wall!.scribes.length, wall!.gaps.length]).toEqual(['north', 'band', 1, 1]);
    const rows = (await cofferwright(cwd, ['walls', '--format', 'csv'])).out.trim().split('\r\n');
    expect(rows.filter(row => row.startsWith('den,north,stands-in,')).length).toBe(wall!.profile.length);
    expect(rows.some(row => row.startsWith('den,north,scribe,,in,0.25,60,0,'))).toBe(true);
    expect((await cofferwright(cwd, ['print', '--page', 'walls', '--out', 'pages'])).code).toBe(0);
    expect(readFileSync(join(cwd, 'pages', 'walls-den.html'), 'utf8')).toContain('gap behind it');
    expect((await cofferwright(folderWith(house), ['walls'])).out).toContain('Nothing is said of how straight and how plumb its walls are');
});

test('walls: how each reading is known, when and by whom, in the table, JSON and CSV; what follows goes by the least of them', async () => {
    const words = `hump 1/4" at 5' as verified on 2026-03-04 by "Ines"; hollow 1/8" at 9' as told by "the owner"; leans-in 1/16" as measured on 2026-03-02 by "Ana"`;
    const cwd = folderWith({ ...bowed, 'den.coffer': den.replace(/( {2}wall north .*)\n/, `$1 { ${words} }\n`) });
    expect((await cofferwright(cwd, ['walls'])).out).toContain('verified 2026-03-04 by Ines; told by the owner; measured 2026-03-02 by Ana');
    const told = JSON.parse((await cofferwright(cwd, ['walls', '--format', 'json'])).out) as WallsJson, valid = strictSchema('walls'), [wall] = told.rooms[0]!.walls;
    expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
    expect(wall!.profile.map(({ reading }) => reading)).toEqual([
        undefined, { known: 'verified', on: '2026-03-04', by: 'Ines' }, { known: 'told', on: null, by: 'the owner' }, undefined,
    ]);
    expect([wall!.leans?.standsIn.text, wall!.leans?.reading, wall!.least]).toEqual(['1/16"', { known: 'measured', on: '2026-03-02', by: 'Ana' }, { known: 'told', on: null, by: 'the owner' }]);
    const { data } = Papa.parse<Record<string, string>>((await cofferwright(cwd, ['walls', '--format', 'csv'])).out, { header: true, skipEmptyLines: true });
    expect(data.filter(({ what }) => what === 'stands-in' || what === 'leans').map(({ figure, at, known, on, by }) => [figure, at, known, on, by])).toEqual([
        ['0.0625', '0', 'measured', '2026-03-02', 'Ana'], ['0.3125', '60', 'measured', '2026-03-02', 'Ana'], ['-0.0625', '108', 'told', '', 'the owner'],
        ['0.0625', '147.5', 'measured', '2026-03-02', 'Ana'], ['0.0625', '', 'measured', '2026-03-02', 'Ana'],
    ]);
    const follows = data.filter(({ what }) => what === 'scribe' || what === 'gap' || what === 'cut-shorter');
    expect([follows.length > 1, new Set(follows.map(({ known, by }) => `${known} ${by}`))]).toEqual([true, new Set(['told the owner'])]);
});

test('walls --templates: what is scribed, at true size; nothing is written where nothing is', async () => {
    const cwd = folderWith(bowed), { code, out } = await cofferwright(cwd, ['walls', '--templates', 'scribed']);
    expect(code).toBe(0);
    expect(out).toContain('scribed/scribe-walls-den.html');
    expect(readFileSync(join(cwd, 'scribed', 'scribe-walls-den-1.svg'), 'utf8')).toMatch(/width="8\.5in" height="11in"[^]*Measure this square first/);
    expect(readFileSync(join(cwd, 'scribed', 'scribe-walls-den.pdf'), 'latin1')).toMatch(/\/MediaBox \[0 0 612 792\]/);
    const none = folderWith(house);
    expect((await cofferwright(none, ['walls', '--templates', 'scribed'])).err).toContain('Nothing that runs along a wall has to be scribed');
    expect(existsSync(join(none, 'scribed', 'scribe-walls-den.html'))).toBe(false);
});
