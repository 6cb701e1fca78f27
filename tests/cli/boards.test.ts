import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house, yard } from './house.ts';
import { cofferwright } from './world.ts';

interface Printed {
    plan: string;
    houses: {
        job: string; known: { as: string; text: string }; costs: { amount: string }[];
        stocks: {
            stock: string; known: { text: string }; buy: { count: number; length: { text: string } }[];
            boards: { from: string; length: { text: string }; strips: { pieces: { piece: string }[] }[] }[];
            rips: { widths: { width: { text: string } }[] }[];
        }[];
    }[];
    left: { stock: string; pieces: { count: number; length: { text: string } }[]; strips: object[] }[];
}
const boards = async (cwd: string, ...more: string[]) => JSON.parse((await cofferwright(cwd, ['boards', '--format', 'json', ...more])).out) as Printed;
const planned = ({ houses }: Printed, ...from: string[]): string[] =>
    houses.flatMap(h => h.stocks).flatMap(s => s.boards).filter(b => from.length === 0 || from.includes(b.from))
        .flatMap(b => b.strips).flatMap(s => s.pieces.map(p => p.piece)).sort();
const cost = ({ houses }: Printed): number => houses.flatMap(h => h.costs).reduce((sum, { amount }) => sum + Number(amount), 0);
const inWork = (lines: string): string => den.replace(/\n}\n$/, `\n  measured {\n${lines.split('\n').map(line => `    ${line.trim()}\n`).join('')}  }\n}\n`);

describe('boards', () => {
    test('say how good their plan is known to be; --quick makes one at once', async () => {
        const cwd = folderWith(house);
        const [close, quick] = [await boards(cwd), await boards(cwd, '--quick')];
        expect([close.plan, close.houses[0]!.known.text]).toEqual(['looked closer', 'none cheaper exists (ways of cutting compared: cut across; no piece turned)']);
        expect([quick.plan, quick.houses[0]!.known.as]).toEqual(['first', 'first plan']);
        expect(planned(quick)).toEqual(planned(close));
        expect(cost(close)).toBeLessThanOrEqual(cost(quick));
        expect((await cofferwright(cwd, ['boards'])).out).toContain('For den. None cheaper exists (ways of cutting compared: cut across; no piece turned).');
        expect((await cofferwright(cwd, ['boards', '--quick'])).out).toContain('For den. A first plan; a cheaper one may exist.');
    });

    test('what is expected to be unusable is bought besides, for the same money everywhere, and said at the head', async () => {
        const bad = { ...house, 'yard.coffer': yard.replace('price    3.25 USD per ft', 'price    3.25 USD per ft\n  defects  20%') };
        const [plain, cwd] = [folderWith(house), folderWith(bad)];
        const said = async (command: string, folder = cwd): Promise<string> => (await cofferwright(folder, [command, '--quick'])).out.replace(/\s+/g, ' ');
        const printed = async <T>(command: string, folder = cwd): Promise<T> => JSON.parse((await cofferwright(folder, [command, '--quick', '--format', 'json'])).out) as T;
        for (const command of ['boards', 'order', 'estimate']) {
            expect(await said(command, plain), command).toContain('Nothing is added for defects or breakage: a stock can have `defects` or `spare`.');
            expect(await said(command), command).toMatch(/Extra boards for defects and breakage: 3 x 16' of pine-1x8 \(20 % are expected to be unusable\)\. Nothing is added for defects of pine-1x6, strip-1x2\./);
        }
        interface Costs { readonly costs: readonly { readonly amount: string }[] }
        const boardsOf = async (folder: string) => (await printed<{ houses: readonly (Costs & { stocks: readonly { stock: string; defects: { spare: { count: number } | null } | null; buy: readonly { count: number }[]; boards: readonly { from: string }[] }[] })[] }>('boards', folder)).houses[0]!;
        const [without, withSpare] = [await boardsOf(plain), await boardsOf(cwd)], wide = withSpare.stocks.find(({ stock }) => stock === 'pine-1x8')!;
        expect(Number(withSpare.costs[0]!.amount)).toBeGreaterThan(Number(without.costs[0]!.amount));
        expect(wide.buy.reduce((sum, { count }) => sum + count, 0)).toBe(wide.boards.filter(({ from }) => from === 'bought').length + wide.defects!.spare!.count);
        expect(withSpare.stocks.find(({ stock }) => stock === 'pine-1x6')!.defects).toBeNull();
        const total = withSpare.costs[0]!.amount;
        expect((await printed<{ orders: readonly Costs[] }>('order')).orders[0]!.costs[0]!.amount).toBe(total);
        expect((await printed<{ houses: readonly { estimate: { sums: { materials: { amount: string } } } }[] }>('estimate')).houses[0]!.estimate.sums.materials.amount).toBe(total);
    });

    test('what is cut is not planned again, what is spoiled is, and less has to be bought', async () => {
        const before = await boards(folderWith(house));
        const cut = inWork(`cut 16' of pine-1x8 into side-A-1-north, side-A-1-south, side-A-2-north
            cut 12' of pine-1x8 into side-A-3-north, side-A-3-south
            spoiled side-A-1-south`);
        const cwd = folderWith({ ...house, 'den.coffer': cut });
        const after = await boards(cwd);
        const done = ['side-A-1-north', 'side-A-1-south', 'side-A-2-north', 'side-A-3-north', 'side-A-3-south'].map(name => `den.${name}`);
        expect(planned(after, 'already cut')).toEqual(done);
        expect(planned(after, 'bought', 'on hand')).toEqual(planned(before).filter(piece => !done.includes(piece) || piece === 'den.side-A-1-south'));
        expect(cost(after)).toBeLessThan(cost(before));
        const human = await cofferwright(cwd, ['boards']);
        expect(human.out).toMatch(/pine-1x8 +1 x +16' +already cut/);
        expect(human.code).toBe(0);
        const valid = strictSchema('boards');
        expect(valid(after), JSON.stringify(valid.errors)).toBe(true);
    });

    test('what was cut before a wall was measured anew is told with both lengths, and cut again', async () => {
        const lines = `cut 16' of pine-1x8 into side-A-1-north, side-A-3-south at 4' 1 1/8" mitered 45° into side-A-2-north at 30" left 4'
            spoiled side-A-2-north`;
        const cwd = folderWith({ ...house, 'den.coffer': inWork(lines) });
        const { out, code } = await cofferwright(cwd, ['check']);
        const wantedAt = /side-A-1-north was cut at 4' 1 1\/8", and is now needed at (\S+ ?[\d/"]* ?[\d/"]*)\./.exec(out.replace(/\s+/g, ' '))?.[1];
        expect([code, wantedAt === undefined], out).toEqual([1, false]);
        expect(out.match(/cut-no-longer-fits/g)).toHaveLength(2);
        const after = await boards(cwd);
        expect(planned(after, 'bought', 'on hand')).toEqual(planned(await boards(folderWith(house))));
        expect(planned(after, 'already cut')).toEqual(['den.side-A-1-north', 'den.side-A-2-north', 'den.side-A-3-south']);
        const right = inWork(lines.replace(`4' 1 1/8"`, wantedAt!));
        const mended = folderWith({ ...house, 'den.coffer': right });
        expect((await cofferwright(mended, ['check'])).code).toBe(0);
        expect(planned(await boards(mended), 'bought', 'on hand')).not.toContain('den.side-A-1-north');
    });

    test('how the length of a board on hand is known stands where it is cut', async () => {
        const told = yard.replace('price    3.25 USD per ft', 'price    3.25 USD per ft\n  on-hand  1 x 16\' as told by "the yard"');
        const cwd = folderWith({ ...house, 'yard.coffer': told });
        expect((await cofferwright(cwd, ['boards'])).out).toMatch(/#\d+ +16' on hand, told by the yard  /);
        const { houses } = JSON.parse((await cofferwright(cwd, ['boards', '--quick', '--format', 'json'])).out) as {
            houses: { stocks: { boards: { from: string; name: unknown; lengthKnown: unknown }[] }[] }[];
        };
        const all = houses.flatMap(({ stocks }) => stocks).flatMap(({ boards }) => boards);
        expect(all.filter(({ from }) => from === 'on hand').map(({ name, lengthKnown }) => [name, lengthKnown])).toEqual([[null, { known: 'told', on: null, by: 'the yard' }]]);
        expect(new Set(all.filter(({ from }) => from !== 'on hand').map(({ lengthKnown }) => lengthKnown))).toEqual(new Set([null]));
        const { data } = Papa.parse<Record<string, string>>((await cofferwright(cwd, ['boards', '--quick', '--format', 'csv'])).out, { header: true, skipEmptyLines: true });
        expect(data.filter(row => row.length_known !== '').map(({ from, count, length_known, on, by }) => [from, count, length_known, on, by])).toEqual([['on hand', '1', 'told', '', 'the yard']]);
    });

    test('of boards on hand of one length those that are known otherwise stand in a row of their own in the CSV, one that was measured by its name', async () => {
        const there = yard.replace('price    3.25 USD per ft', 'price    3.25 USD per ft\n  on-hand  2 x 16\' as told by "the yard"');
        const one = house['den.coffer'].replace('  grid {', '  measured { board b1 pine-1x8 as verified on 2026-03-05 by "Ines" { length 16\' } }\n  grid {');
        const { out } = await cofferwright(folderWith({ ...house, 'yard.coffer': there, 'den.coffer': one }), ['boards', '--quick', '--format', 'csv']);
        const { data } = Papa.parse<Record<string, string>>(out, { header: true, skipEmptyLines: true });
        expect(data.filter(({ from }) => from === 'on hand').map(({ count, note, length_known, on, by }) => [count, note, length_known, on, by])).toEqual([
            ['1', '', 'told', '', 'the yard'], ['1', 'board b1', 'verified', '2026-03-05', 'Ines'],
        ]);
    });

    test('a board on hand that another room has cut is gone, also where only one room is asked for', async () => {
        const withBoard = yard.replace('price    3.25 USD per ft', 'price    3.25 USD per ft\n  on-hand  1 x 16\'');
        const files = { ...house, 'yard.coffer': withBoard, 'hall.coffer': inWork(`cut 16' of pine-1x8 into band-north left 3'`).replace('room den', 'room hall') };
        const used = async (...more: string[]) => (await boards(folderWith(files), ...more)).houses.flatMap(h => h.stocks).flatMap(s => s.boards).filter(b => b.from === 'on hand').map(b => b.length.text);
        expect(await used('--room', 'den', '.')).toEqual([]);
        const untouched = { ...files, 'hall.coffer': den.replace('room den', 'room hall') };
        const all = (await boards(folderWith(untouched), '--room', 'den', '.')).houses.flatMap(h => h.stocks).flatMap(s => s.boards).filter(b => b.from === 'on hand');
        expect(all.map(b => b.length.text)).toEqual(["16'"]);
    });

    test('a mistake in what is cut is said, and the end is 1', async () => {
        const { code, err } = await cofferwright(folderWith({ ...house, 'den.coffer': inWork(`cut 16' of pine-1x8 into side-A-9-north`) }), ['boards']);
        expect(err).toContain('room den: run `cofferwright check`');
        expect(code).toBe(1);
    });

    test('strips of sheets are left on hand too, and gauge blocks come out of them', async () => {
        const sheets = yard.replace(/stock pine-1x6 \{[^}]*\}/, `stock pine-1x6 { thickness 3/4"; sheet 48" x 96" grain lengthwise; price 60 USD per sheet }`);
        const inSheets = { ...house, 'yard.coffer': sheets, 'box.coffer': house['box.coffer'].replaceAll('stock pine-1x6 }', 'stock pine-1x6; rip 5 1/2" }').replace('stock   pine-1x6', 'stock   pine-1x6\n    rip     5 1/2"') };
        const cwd = folderWith(inSheets);
        const { left } = await boards(cwd);
        const strips = left.find(({ stock }) => stock === 'pine-1x6') as unknown as { pieces: unknown[]; strips: unknown[] };
        // what is not ripped of a sheet keeps its width
        expect([strips.pieces.length, strips.strips.length > 0]).toEqual([1, true]);
        const { out, err } = await cofferwright(cwd, ['boards', '--leftovers']);
        expect(err).not.toContain('Nothing is left');
        const said = out.split('\n').filter(line => /^ {2}on-hand .* ripped-to /.test(line)).flatMap(line => line.split(', '));
        expect(said.length).toBeGreaterThanOrEqual(strips.strips.length);
        expect((await cofferwright(cwd, ['saw'])).out.replaceAll(/\s+/g, ' ')).toMatch(/2 gauge blocks of pine-1x6, 8" each, for cleats[^;]*; out of the offcuts? of pine-1x6 #\d/);
    });

    test('what is left is printed as lines that can be pasted into the stocks', async () => {
        const cwd = folderWith(house);
        const { left } = await boards(cwd);
        const { out, code } = await cofferwright(cwd, ['boards', '--leftovers']);
        expect(code).toBe(0);
        const [, name, line] = /^\/\/ (\S+), yard\.coffer:\d+\n {2}(on-hand .*)$/m.exec(out)!;
        const count = line!.split(',').length;
        expect(count).toBe(left.find(one => one.stock === name)!.pieces.length);
        const pasted = yard.replace(new RegExp(`(stock ${name} \\{\n)`), `$1  ${line}\n`);
        expect(await cofferwright(folderWith({ ...house, 'yard.coffer': pasted }), ['check'])).toMatchObject({ code: 0 });
        const next = await boards(folderWith({ ...house, 'yard.coffer': pasted }));
        expect(next.houses[0]!.stocks.find(s => s.stock === name)!.boards.some(b => b.from === 'on hand')).toBe(true);
    });
});

test('a sheet is ripped into strips, bought by the sheet, and told with its size', async () => {
    const panel = `${yard}stock panel { sheet 48" x 96"; thickness 3/4"; price 61 USD per sheet }\n`;
    const box = house['box.coffer'].replace('strip-1x2\n', 'strip-1x2, panel\n').replace('spacers {\n    stock   pine-1x6', 'spacers {\n    stock   panel\n    rip     5 1/2"');
    const cwd = folderWith({ ...house, 'yard.coffer': panel, 'box.coffer': box });
    expect(await cofferwright(cwd, ['check'])).toMatchObject({ code: 0 });
    const printed = await boards(cwd);
    const stock = printed.houses[0]!.stocks.find(s => s.stock === 'panel')!;
    expect(stock).toMatchObject({ sheet: { width: { text: "4'" }, length: { text: "8'" }, grain: 'lengthwise' }, buy: [{ count: 1, length: { text: "8'" }, each: { amount: '61.00' } }] });
    expect(stock.rips.flatMap(rip => rip.widths.map(({ width }) => width.text))).toEqual(['5 1/2"']);
    expect((await cofferwright(cwd, ['boards'])).out).toMatch(/panel +1 x +4' x 8' sheet +at \$61\.00/);
});

describe('order', () => {
    const sold = yard.replace("lengths  8', 12'\n", "lengths  8', 12'\n  supplier  \"Tern & Daughters\"\n  lead-days  4\n  comes  primed\n");

    test('one order for two houses, by supplier, as its schema says', async () => {
        const inFolder = (folder: string) => ({ [`${folder}/den.coffer`]: den.replace('"yard', '"../yard').replace('"box', '"../box'), [`${folder}/job.coffer`]: `edition 1\njob "${folder}" {}\n` });
        const cwd = folderWith({ 'yard.coffer': sold, 'box.coffer': house['box.coffer'], ...inFolder('one'), ...inFolder('two') });
        const { out, code } = await cofferwright(cwd, ['order', '--format', 'json']);
        const valid = strictSchema('order');
        expect(valid(JSON.parse(out)), JSON.stringify(valid.errors)).toBe(true);
        const { orders } = JSON.parse(out) as { orders: {
            supplier: string | null; leadDays: number | null; lines: { stock: string; count: number; houses: string[] }[];
            costs: { amount: string }[];
        }[] };
        expect(orders.map(({ supplier, leadDays, lines }) => [supplier, leadDays, [...new Set(lines.map(l => l.stock))]])).toEqual([
            ['Tern & Daughters', 4, ['strip-1x2']], [null, null, ['pine-1x6', 'pine-1x8']],
        ]);
        expect(orders.every(({ lines }) => lines.every(({ houses }) => houses.join() === 'one,two'))).toBe(true);
        const both = await boards(cwd);
        expect(orders.flatMap(o => o.costs).reduce((sum, { amount }) => sum + Number(amount), 0)).toBeCloseTo(cost(both), 2);
        expect(code).toBe(0);
        const { data } = Papa.parse<Record<string, string>>((await cofferwright(cwd, ['order', '--format', 'csv'])).out, { header: true, skipEmptyLines: true });
        expect(data.reduce((sum, row) => sum + Number(row.cost), 0)).toBeCloseTo(cost(both), 2);
    });

    test('a stock without a price is said, and the end is 1', async () => {
        const { out, code } = await cofferwright(folderWith({ ...house, 'yard.coffer': sold.replace(/ {2}price {4}3.25.*\n/, '') }), ['order', '--quick']);
        expect(out).toMatch(/pine-1x8 +\d+ x .* no price/);
        expect(out).toContain('no price');
        expect(code).toBe(1);
    });

    test('a house with an error is not to be ordered for', async () => {
        const { out, code } = await cofferwright(folderWith({ ...house, 'den.coffer': inWork('spoiled nothing-like-it') }), ['order', '--quick']);
        expect(out).toContain('room den: 1 error in what it is made from. Do not order before it is fixed.');
        expect(code).toBe(1);
    });
});
