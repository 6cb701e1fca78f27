import { describe, expect, test } from 'vitest';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house, tooWide } from './house.ts';
import { cofferwright } from './world.ts';

/** The den with a light where line 1 is: 12' 3 1/2" by 10' 2" inside a band of 3/4", so it stands from 44 3/4" to 51 3/4". */
const lit = { ...house, 'den.coffer': den.replace('  grid {', `  fixture can light at 4', 2' diameter 5"\n\n  grid {`) };

interface Told { rooms: {
    present: { coffersNorth: number; errors: number } | null;
    tried: { grids: number; clear: number; inTheWay: { what: string; grids: number }[] };
    offers: { rank: number; write: string[]; errors: number; joists: number | null; boards: number; costs: { currency: string }[] }[];
}[] }

describe('suggest', () => {
    test('other grids with the words to write; the room as it stands beside them: 0', async () => {
        const { code, out } = await cofferwright(folderWith(house), ['suggest']), words = out.replace(/\s+/g, ' ');
        expect(out).toMatch(/^OTHER GRIDS {2}Plum Street 4\n/);
        expect(out).toMatch(/\n +now +3 by 2 +3' 8" +4' 8 3\/4" /);
        expect(words).toMatch(/\d+ grids tried, with coffers from .* to .*; of these all come upon nothing by plain geometry/);
        expect(words).toMatch(/1: write `(coffers|through)/);
        expect(words).toContain('nothing that it does not: know what the ceiling hides');
        expect(out).not.toMatch(/\bis safe\b/);
        expect(out).not.toContain('joists  ');
        expect(code).toBe(0);
    });
    test('a light in the way of the grid as it is: that is told first, none that is offered comes upon it, 1', async () => {
        const cwd = folderWith(lit), { code, out } = await cofferwright(cwd, ['suggest']), words = out.replace(/\s+/g, ' ');
        expect(code).toBe(1);
        expect(words).toMatch(/Not to be built from as it stands: den\.coffer:\d+:\d+: can, 5" across, is where line 1 goes/);
        expect(words).toMatch(/In the way of lines: can \(\d+ grids\)/);
        expect(out).toMatch(/now +3 by 2 .* 0 and 1 wrong/);
    });
    test('JSON as its schema says; CSV with a row for the room as it stands and one for each grid', async () => {
        const cwd = folderWith(lit), { out } = await cofferwright(cwd, ['suggest', '--format', 'json']), valid = strictSchema('suggest');
        const told = JSON.parse(out) as Told, [room] = told.rooms;
        expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
        expect(room!.present).toMatchObject({ coffersNorth: 3, errors: 1 });
        expect(room!.offers.map(({ rank }) => rank)).toEqual(room!.offers.map((_, i) => i + 1));
        for (const { errors, write, joists, boards, costs } of room!.offers) {
            expect([errors, joists]).toEqual([0, null]);
            expect(write.length).toBeGreaterThan(0);
            expect(boards).toBeGreaterThan(0);
            expect(costs.map(({ currency }) => currency)).toEqual(['USD']);
        }
        expect(room!.tried.inTheWay).toEqual([{ what: 'can', grids: expect.any(Number) as number }]);
        expect(room!.tried.clear).toBeLessThan(room!.tried.grids);
        const csv = (await cofferwright(cwd, ['suggest', '--format', 'csv'])).out.trim().split('\r\n');
        expect(csv).toHaveLength(2 + room!.offers.length);
        expect(csv[0]).toMatch(/^room,rank,coffers_north,coffers_east,through,unit,/);
        expect(csv[1]).toMatch(/^den,0,3,2,north-south,in,44,44,56\.75,56\.75,0,/);
    });
    test('an error that no grid mends: it is named, and nothing is offered; a room that there is not', async () => {
        const { code, out } = await cofferwright(folderWith(tooWide), ['suggest']);
        expect(code).toBe(1);
        expect(out).toMatch(/Nothing is tried while errors stand that no grid mends: box\.coffer:\d+:\d+/);
        expect((await cofferwright(folderWith(house), ['suggest', '--room', 'attic'])).code).toBe(2);
    });
    test('millimeters', async () => {
        const metric = { ...house, 'job.coffer': house['job.coffer'].replace('cut-to  1/16"', 'cut-to  0.5 mm\n  show  millimeters') };
        const { out, code } = await cofferwright(folderWith(metric), ['suggest']);
        expect(code).toBe(0);
        expect(out).toMatch(/now +3 by 2 +1117\.5 mm +1441\.5 mm/);
    });
});
