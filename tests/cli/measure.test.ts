import { describe, expect, test } from 'vitest';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MeasureJson } from '../../src/report/measure/shape.ts';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house } from './house.ts';
import { cofferwright } from './world.ts';

const WALLS = /  wall north .*\n/;
/** The den, of which one wall is drawn and nothing is said of the rest. */
const sketched = { ...house, 'den.coffer': den.replace(WALLS, line => line.replace('\n', ' as drawn\n')) };

describe('measure', () => {
    test('what is to measure, on the walk; the exit code is 0, since a price may stand on a sketch', async () => {
        const { code, out } = await cofferwright(folderWith(sketched), ['measure']);
        expect(out).toMatch(/^STILL TO MEASURE {2}Plum Street 4\nBefore anything is cut:\n {2}den\.coffer:\d+:\d+: Nobody measured a diagonal: .*\n[^]*: Wall north, 12' 3 1\/2", is drawn\./);
        expect(out).toMatch(/\n {2}1 +wall north +\S.* drawn +measure\n {2}2 +wall east +\S.* not said +measure\n/);
        expect(out).toMatch(/wall south .* assumed +measure +taken as long as wall north/);
        expect(code).toBe(0);
    });
    test('JSON as its schema says, CSV with a row for each dimension, a page', async () => {
        const cwd = folderWith(sketched), { out } = await cofferwright(cwd, ['measure', '--format', 'json']), valid = strictSchema('measure');
        const told = JSON.parse(out) as MeasureJson, [room] = told.rooms;
        expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
        expect([room!.asked, room!.least, told.standing.sound, told.standing.beforeCutting!.length > 3]).toEqual([true, 'verified', true, true]);
        const rows = (await cofferwright(cwd, ['measure', '--format', 'csv'])).out.trim().split('\r\n');
        expect(rows.length - 1).toBe(room!.dimensions.length);
        expect(rows[1]).toMatch(/^den,1,wall,north,in,[\d.]+,drawn,,,measure,yes,/);
        expect((await cofferwright(cwd, ['print', '--page', 'measure', '--out', 'pages'])).code).toBe(0);
        expect(readFileSync(join(cwd, 'pages', 'measure-den.html'), 'utf8')).toContain('as it stands');
    });
    test('a room whose walls make no room has its list all the same', async () => {
        const { out, code } = await cofferwright(folderWith({ ...house, 'den.coffer': den.replace(WALLS, line => `${line}  wall south 9'\n`) }), ['measure']);
        expect([code, /wall south +9' /.test(out)]).toEqual([1, true]);
    });
    test('it stands at the head of what is cut from, and nowhere where nobody says how anything is known', async () => {
        const asked = folderWith(sketched), plain = folderWith(house);
        for (const argv of [['cut-list'], ['saw', '--quick'], ['boards', '--quick'], ['cut-list', '--format', 'csv']]) {
            expect((await cofferwright(asked, argv)).out.toLowerCase(), argv.join(' ')).toContain('before anything is cut');
            expect((await cofferwright(plain, argv)).out.toLowerCase(), argv.join(' ')).not.toContain('before anything is cut');
        }
        await cofferwright(asked, ['draw', '--out', 'drawn']);
        const plan = readFileSync(join(asked, 'drawn', 'plan-den.svg'), 'utf8').replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ');
        expect(plan).toContain('Before anything is cut');
        expect(plan).toContain('Drawn: the north wall.');
    });
});
