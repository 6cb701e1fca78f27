import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith } from '../cli/folder.ts';
import { cofferwright } from '../cli/world.ts';
import { TWO_ROOMS } from '../support/examples.ts';
import { MADE, wordsIn } from './outputs.ts';

interface Bought { readonly stock: string; readonly length: { readonly text: string }; readonly count: number }
interface Money { readonly amount: string }
interface BoardsJson { houses: { job: string; stocks: { stock: string; buy: Omit<Bought, 'stock'>[]; boards: { number: number; strips: { pieces: { piece: string }[] }[] }[] }[]; costs: Money[] }[] }
interface EstimateJson { houses: { job: string; estimate: { materials: (Bought & { onHand: boolean; amount: Money })[]; sums: { total: Money } } }[] }
interface OrderJson { orders: { lines: Bought[]; costs: Money[] }[] }
interface SawJson { houses: { boards: { name: string; number: number; stock: string; strips: { pieces: { piece: string }[] }[] }[] }[] }

const lines = (bought: readonly Bought[]): string[] => bought.map(({ stock, length, count }) => `${stock} ${length.text} ${count}`).sort();

const HOUSE = ['quince-lane/house.coffer', 'quince-lane/study.coffer'];

// looking for cheaper boards takes its time: one room of the house is enough for that
describe.each([['as it is looked for', [], HOUSE], ['at once', ['--quick'], [...HOUSE, 'quince-lane/dining-room.coffer']]] as const)('one plan of boards, %s', (_, quick, rooms) => {
    test('boards, order, estimate, saw, labels, printed pages and the bid agree', async () => {
        const cwd = folderWith(TWO_ROOMS);
        const ask = async <T>(command: string): Promise<T> => JSON.parse((await cofferwright(cwd, [command, ...rooms, '--format', 'json', ...quick])).out) as T;
        const [boards, order, estimate, saw] = [await ask<BoardsJson>('boards'), await ask<OrderJson>('order'), await ask<EstimateJson>('estimate'), await ask<SawJson>('saw')];
        const bought = boards.houses.flatMap(({ stocks }) => stocks.flatMap(({ stock, buy }) => buy.map(one => ({ ...one, stock }))));
        expect(bought.length).toBeGreaterThan(2);
        expect(lines(order.orders.flatMap(one => one.lines))).toEqual(lines(bought));
        expect(lines(estimate.houses.flatMap(({ estimate: { materials } }) => materials.filter(({ onHand }) => !onHand)))).toEqual(lines(bought));
        const onBoards = (all: readonly {
            readonly number: number;
            readonly stock: string;
            readonly strips: readonly { readonly pieces: readonly { readonly piece: string }[] }[];
        }[]): string[] =>
            all.map(({ number, stock, strips }) => `${stock} #${number}: ${strips.flatMap(({ pieces }) => pieces.map(({ piece }) => piece)).sort().join(' ')}`).sort();
        expect(onBoards(saw.houses.flatMap(house => house.boards)))
            .toEqual(onBoards(boards.houses.flatMap(({ stocks }) => stocks.flatMap(({ stock, boards: own }) => own.map(one => ({ ...one, stock }))))));

        const page = async (argv: readonly string[], folder: string): Promise<string> => {
            await cofferwright(cwd, [...argv, ...rooms, ...quick, '--out', folder]);
            return readdirSync(join(cwd, folder)).filter(name => name.endsWith('.html')).map(name => wordsIn(readFileSync(join(cwd, folder, name), 'utf8'))).join(' ');
        };
        const money = (amount: string): string => `$${Number(amount).toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;
        const cost = boards.houses.flatMap(({ costs }) => costs), total = estimate.houses[0]!.estimate.sums.total;
        expect(await page(['print', '--page', 'boards'], 'pages-boards')).toContain(money(cost[0]!.amount));
        expect(await page(['print', '--page', 'estimate'], 'pages-estimate')).toContain(money(total.amount));
        expect(await page(['bid', '--format', 'html'], 'pages-bid')).toContain(money(total.amount));
        const labels = await page(['labels'], 'pages-labels');
        for (const { name, strips } of saw.houses.flatMap(house =>
            house.boards)) if (strips.some(({ pieces }) => pieces.length > 0)) expect(labels, name).toContain(name);
    }, 300_000);
});

test('rooms that are asked for have pages, a title and a file name of their own, and no other room is in them', async () => {
    const cwd = folderWith(TWO_ROOMS), args = ['--room', 'study', '--quick', 'quince-lane'];
    const named: Record<string, RegExp> = {
        'print --page boards': /^boards-quince-lane-12-study\.html$/, 'print --page estimate': /^estimate-quince-lane-12-study\.html$/, 'print --page plan': /^plan-study\.html$/,
        'labels': /^labels-quince-lane-12-study(-\d+\.svg|\.html)$/, 'bid --format html': /^bid-quince-lane-12-study\.html$/,
    };
    for (const [i, [command, name]] of Object.entries(named).entries()) {
        await cofferwright(cwd, [...command.split(' '), ...args, '--out', `out-${i}`]);
        const made = readdirSync(join(cwd, `out-${i}`)).filter(file => file !== MADE);
        expect(made.length, command).toBeGreaterThan(0);
        for (const file of made) {
            expect(file, command).toMatch(name);
            const text = readFileSync(join(cwd, `out-${i}`, file), 'utf8');
            if (file.endsWith('.html')) expect(/<title>([^<]*)/.exec(text)![1], command).toMatch(/Study/);
            expect(wordsIn(text), `${command}: ${file}`).not.toMatch(/dining[.:]|Dining room/i);
        }
    }
    await cofferwright(cwd, ['saw', ...args, '--sheets', 'sheets']);
    expect(readdirSync(join(cwd, 'sheets')).filter(file => file !== MADE).every(file => /^boards-quince-lane-12-study/.test(file))).toBe(true);
    expect((await cofferwright(cwd, ['estimate', ...args])).out).not.toMatch(/dining/i);
});
