import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house, yard } from './house.ts';
import { cofferwright } from './world.ts';

interface MoneyJson { amount: string; currency: string }
interface EstimateJson {
    complete: boolean;
    currency: string;
    materials: { stock: string; count: number; onHand: boolean; amount: MoneyJson }[];
    supplies: { amount: MoneyJson }[];
    labor: { phase: string; room: string | null; what: string; minutes: { value: number }; amount: MoneyJson | null }[];
    additions: { kind: string; what: string; amount: MoneyJson }[];
    sums: Record<string, MoneyJson> & { total: MoneyJson };
    missing: { rate: string; of: string; room: string | null }[];
}
interface OutJson { houses: { job: string; estimate: EstimateJson; alternates: {
    name: string;
    title: string | null;
    errors: number;
    changes: { total: { before: MoneyJson; after: MoneyJson }; pieces: { part: string }[] };
    estimate: EstimateJson;
}[] }[] }

const RATES = `edition 1
labor {
  crew      2 rate 64 USD per h
  layout    12 min per crossing
  blocking  3 min per ft
  spacers   3 min per piece
  sides     5 min per ft
  cleats    2 min per ft
  bottom    4 min per ft
  band      4 min per ft
  trim      3 min per ft
  corner    4 min per joint
  butt      6 min per joint
  splice    10 min per joint
  coffer    20 min per coffer
  set-up    6 min per set-up
}
bid {
  overhead  12%
  profit    15% of price
  tax       6.25% on materials
  supplies {
    screws    0.11 USD per piece
    nails     0.02 USD per piece
    biscuits  0.09 USD per piece
    glue      0.45 USD per fl-oz
    filler    0.60 USD per fl-oz
    caulk     5.80 USD per tube
  }
}
`;
const ALTERNATES = `edition 1
from "./den.coffer" use den
alternate wide "Fewer coffers" { den.grid.coffers-north 2 }
alternate low { den.grid.beams.sides.held-down 1/8" }
alternate wrong { den.grid.beams.bottom.rip 6" }
`;
const priced = { ...house, 'rates.coffer': RATES };
const run = async (files: Record<string, string>, ...args: string[]) => {
    const { code, out, err } = await cofferwright(folderWith(files), ['estimate', ...args, '--format', 'json']);
    return { code, err, json: out === '' ? undefined : JSON.parse(out) as OutJson };
};
const cents = ({ amount }: MoneyJson): number => Math.round(Number(amount) * 100);

describe('estimate', () => {
    test('rates said below the job hold in their folder: each room is priced by its own', async () => {
        const up = house['den.coffer'].replaceAll('from "', 'from "../').replace('room den', 'room loft');
        const dear = 'edition 1\nlabor { sides 50 min per ft }\nbid { overhead 90%; deposit 50% }\n';
        const lines = async (files: Record<string, string>) => (await run(files)).json!.houses[0]!.estimate;
        const one = await lines({ ...priced, 'up/loft.coffer': up }), two = await lines({ ...priced, 'up/loft.coffer': up, 'up/rates.coffer': dear });
        const sides = ({ labor }: EstimateJson): Record<string, number> => Object.fromEntries(labor.filter(({ what }) => what === 'sides').map(({ room, minutes }) => [room!, minutes.value]));
        expect(sides(two)['den']).toBe(sides(one)['den']);
        expect(sides(two)['loft']).toBeCloseTo(10 * sides(one)['loft']!, 5);
        const direct = (estimate: EstimateJson): number => ['materials', 'supplies', 'labor'].reduce((sum, key) => sum + cents(estimate.sums[key]!), 0);
        const added = (estimate: EstimateJson, kind: string) => estimate.additions.filter(one => one.kind === kind);
        expect(added(two, 'overhead').map(({ what }) => what)).toEqual(['overhead, den', 'overhead, loft']);
        expect(added(two, 'profit')).toHaveLength(1);
        // what the two overheads are shares of is all that it costs, tax included
        const [den, loft] = added(two, 'overhead').map(({ amount }, i) => cents(amount) / (i === 0 ? 0.12 : 0.9));
        expect(Math.abs(den! + loft! - direct(two) - cents(added(two, 'tax on materials')[0]!.amount))).toBeLessThan(10);
        expect(two.missing).toEqual([]);
    });

    test('a folder below the job that alone says rates prices its room', async () => {
        const { 'den.coffer': den, ...rest } = house;
        const { code, json } = await run({ ...rest, 'up/den.coffer': den.replaceAll('from "', 'from "../'), 'up/rates.coffer': RATES });
        expect([code, json!.houses[0]!.estimate.missing]).toEqual([0, []]);
        expect(json!.houses[0]!.estimate.sums.total).toEqual((await run(priced)).json!.houses[0]!.estimate.sums.total);
    });

    test('as its schema says; the lines on the paper add up to the total, and nothing is missing: 0', async () => {
        const { code, json } = await run(priced);
        const valid = strictSchema('estimate');
        expect(valid(json), JSON.stringify(valid.errors)).toBe(true);
        const { estimate } = json!.houses[0]!;
        expect([estimate.missing, estimate.complete, code]).toEqual([[], true, 0]);
        const lines = [...estimate.materials, ...estimate.supplies, ...estimate.labor, ...estimate.additions].map(({ amount }) => cents(amount!));
        expect(lines.reduce((sum, n) => sum + n, 0)).toBe(cents(estimate.sums.total));
    });

    test('boards on hand that the plan takes are shown at no cost, and whose they are; of two houses in one run each board is spent once', async () => {
        const there = { ...priced, 'yard.coffer': yard.replace('price    3.25 USD per ft', "price    3.25 USD per ft\n  on-hand  1 x 13'") };
        const taken = ({ materials }: EstimateJson): string[] => materials.filter(({ onHand }) => onHand).map(({ stock, count, amount }) => `${count} ${stock} ${amount.amount}`);
        const { json } = await run(there);
        expect(taken(json!.houses[0]!.estimate)).toEqual(['1 pine-1x8 0.00']);
        expect((await run(priced)).json!.houses[0]!.estimate.materials.some(({ onHand }) => onHand)).toBe(false);
        const cwd = folderWith(there), human = await cofferwright(cwd, ['estimate']), csv = await cofferwright(cwd, ['estimate', '--format', 'csv']);
        expect(human.out).toMatch(/pine-1x8 +1 x +13' +on hand, at no cost +\$0\.00/);
        expect(human.out.replace(/\s+/g, ' ')).toContain('Boards on hand are counted as this house\'s own.');
        expect(csv.out).toContain("pine-1x8 13',1,on hand,0.00,");
        const inside = (folder: string): Record<string, string> =>
            Object.fromEntries(Object.entries({ ...house, 'rates.coffer': RATES }).filter(([name]) => name !== 'yard.coffer').map(([name, text]) => [`${folder}/${name}`, text.replaceAll('from "yard', 'from "../yard')]));
        const both = await run({ 'yard.coffer': there['yard.coffer'], ...inside('a'), ...inside('b') });
        expect(both.json!.houses.map(({ estimate }) => taken(estimate))).toEqual([['1 pine-1x8 0.00'], []]);
    });

    test('what has no rate is said, is in no sum, and is not passed over: 1', async () => {
        const { code, json } = await run({ ...house, 'rates.coffer': RATES.replace(/ {2}cleats.*\n/, '').replace(/ {4}nails.*\n/, '') });
        const { missing, complete } = json!.houses[0]!.estimate;
        expect(missing.map(({ rate }) => rate)).toContain('labor.cleats');
        expect([complete, code]).toEqual([false, 1]);
        const { code: without, json: bare } = await run(house);
        expect(bare!.houses[0]!.estimate.missing.map(({ rate }) => rate)).toContain('labor');
        expect(without).toBe(1);
    });

    test('every alternate by itself, with what it changes; one that cannot be built says so: 1', async () => {
        const { code, json } = await run({ ...priced, 'alternates.coffer': ALTERNATES });
        const valid = strictSchema('estimate');
        expect(valid(json), JSON.stringify(valid.errors)).toBe(true);
        const [{ alternates, estimate }] = json!.houses as [OutJson['houses'][0]];
        expect(alternates.map(({ name, title, errors }) => [name, title, errors > 0])).toEqual([['wide', 'Fewer coffers', false], ['low', null, false], ['wrong', null, true]]);
        const wide = alternates[0]!;
        expect(wide.changes.total).toMatchObject({ before: estimate.sums.total, after: wide.estimate.sums.total });
        expect(cents(wide.changes.total.after)).toBeLessThan(cents(wide.changes.total.before));
        expect(wide.changes.pieces.map(({ part }) => part)).toEqual(expect.arrayContaining(['side', 'bottom']));
        expect(code).toBe(1);
    });

    test('alternates that are combined are one; the base stays what it is', async () => {
        const files = { ...priced, 'alternates.coffer': ALTERNATES };
        const { code, json } = await run(files, '--with', 'wide', '--with', 'low');
        const [{ alternates }] = json!.houses as [OutJson['houses'][0]];
        expect(alternates.map(({ name }) => name)).toEqual(['wide+low']);
        const alone = await run(files, '--with', 'wide');
        expect(alternates[0]!.changes.total.before).toEqual(alone.json!.houses[0]!.alternates[0]!.changes.total.before);
        expect([code, alone.code]).toEqual([0, 0]);
        expect((await run(files, '--with', 'wiide')).code).toBe(2);
    });

    test('as CSV a row a line, whose amounts add up; for people with both kinds of profit named', async () => {
        const cwd = folderWith(priced);
        const { out } = await cofferwright(cwd, ['estimate', '--format', 'csv']);
        const { data, errors } = Papa.parse<{ amount: string; kind: string }>(out, { header: true, skipEmptyLines: true });
        expect(errors).toEqual([]);
        const { json } = await run(priced);
        expect(data.reduce((sum, row) => sum + Math.round(Number(row.amount) * 100), 0)).toBe(cents(json!.houses[0]!.estimate.sums.total));
        const human = (await cofferwright(cwd, ['estimate'])).out;
        expect(human).toMatch(/^ESTIMATE {2}Plum Street 4\n/);
        expect(human).toMatch(/profit \(margin\) {2,}15 % of \$[\d,.]+, the price/);
        expect(human).toContain('for a crew of 2');
    });
});

test('what is counted in milliliters has its price by the liter, and in CSV one that adds up', async () => {
    const metric = { ...priced, 'job.coffer': house['job.coffer'].replace('cut-to  1/16"', 'show millimeters\n  cut-to 0.5 mm'), 'rates.coffer': RATES.replace('glue      0.45 USD per fl-oz', 'glue      14 USD per L') };
    const cwd = folderWith(metric), { out } = await cofferwright(cwd, ['estimate', '--quick']);
    const [, count = '0', amount = '0'] = /wood glue +(\d+) mL +at \$14\.00 per L +\$([\d.]+)/.exec(out) ?? [];
    expect(Math.round(Number(count) * 1.4)).toBe(Math.round(Number(amount) * 100));
    const rows = Papa.parse<Record<string, string>>((await cofferwright(cwd, ['estimate', '--quick', '--format', 'csv'])).out, { header: true, skipEmptyLines: true }).data;
    expect(rows.find(({ what }) => what === 'wood glue')).toMatchObject({ count, unit: 'mL', each: '0.014', amount });
});

test('what an allowance is for carries nothing to the terminal but its words', async () => {
    const cwd = folderWith({ ...house, 'rates.coffer': RATES.replace('bid {', 'bid {\n  allowance 250 USD for "paint\u001b]0;x\u0007\u001b[31m\u202e\u009b5m"') });
    const { out } = await cofferwright(cwd, ['estimate', '--quick']);
    expect(out).toMatch(/paint\]0;x\[31m5m +.*250\.00/);
    expect(out).not.toMatch(/[\u001b\u0007\u009b\u202e]/);
});

test('what is cut and spoiled is not in the price, and what it costs beside it is said: the same as boards and order', async () => {
    interface Money { readonly amount: string }
    interface Printed { readonly houses: readonly {
        readonly after: { boards: number; spoiled: number; bought: Money[]; toBuy: Money[]; together: Money[]; planned: Money[] } | null;
        readonly estimate: { readonly sums: { readonly materials: Money; readonly total: Money } };
    }[] }
    const rates = { 'rates.coffer': 'edition 1\n\nlabor { crew 2 rate 60 USD per h; sides 5 min per ft }\nbid { overhead 10%; profit 15% }\n' };
    const cut = den.replace(/\n}\n$/, `\n  measured {\n    cut      16' of pine-1x8 into side-A-1-north, side-A-1-south, side-A-2-north\n    spoiled  side-A-1-south, side-A-2-north\n  }\n}\n`);
    const [plain, cwd] = [folderWith({ ...house, ...rates }), folderWith({ ...house, ...rates, 'den.coffer': cut })];
    const printed = async <T>(folder: string, command: string): Promise<T> => JSON.parse((await cofferwright(folder, [command, '--format', 'json', '--quick'])).out) as T;
    const [before, after] = [(await printed<Printed>(plain, 'estimate')).houses[0]!, (await printed<Printed>(cwd, 'estimate')).houses[0]!];
    expect(before.after).toBeNull();
    expect(after.estimate.sums.total.amount, 'the price is that of the whole job').toBe(before.estimate.sums.total.amount);
    const lost = after.after!, sum = (money: readonly Money[]): number => money.reduce((all, { amount }) => all + Number(amount), 0);
    expect([lost.boards, lost.spoiled]).toEqual([1, 2]);
    expect(sum(lost.bought), "16' at 3.25 a foot").toBe(52);
    expect(sum(lost.planned)).toBe(Number(after.estimate.sums.materials.amount));
    expect(sum(lost.toBuy)).toBe(sum((await printed<{ houses: readonly { costs: Money[] }[] }>(cwd, 'boards')).houses[0]!.costs));
    expect(sum(lost.toBuy)).toBe(sum((await printed<{ orders: readonly { costs: Money[] }[] }>(cwd, 'order')).orders.flatMap(({ costs }) => costs)));
    expect(sum(lost.together)).toBe(sum(lost.bought) + sum(lost.toBuy));
    expect(sum(lost.together), 'two sides more').toBeGreaterThan(sum(lost.planned));
    const words = (await cofferwright(cwd, ['estimate', '--quick'])).out.replace(/\s+/g, ' ');
    expect(words).toMatch(/1 board is cut already and 2 pieces are spoiled\. Boards bought for what is cut cost \$52\.00, and those still to buy \$[\d.,]+: \$[\d.,]+ in all, where this price has \$[\d.,]+: \$[\d.,]+ more\./);
    // in the table they have no amounts, so that those of the price still add up
    const table = Papa.parse<Record<string, string>>((await cofferwright(cwd, ['estimate', '--format', 'csv', '--quick'])).out, { header: true }).data.filter(row => row['kind'] === 'after cutting');
    expect(table.map(row => row['what'])).toEqual(['boards bought for what is cut', 'boards still to buy', 'boards in all', 'boards in this price']);
    expect(table.map(row => row['amount'])).toEqual(['', '', '', '']);
    const [bought, toBuy, together] = table.map(row => Number(row['each']));
    expect([bought, Math.round((bought! + toBuy!) * 100)]).toEqual([52, Math.round(together! * 100)]);
    expect((await cofferwright(cwd, ['bid', '--format', 'html', '--quick', '--out', 'bids'])).err.replace(/\s+/g, ' ')).toContain('prices the job as if nothing were cut yet. 1 board is cut already');
});
