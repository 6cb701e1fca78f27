import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { knownText } from '../../src/cutting/known.ts';
import { leftoversOf } from '../../src/cutting/leftovers.ts';
import type { BoardPlan } from '../../src/cutting/model.ts';
import { questionsOf } from '../../src/cutting/questions.ts';
import type { JobSettings, Stock } from '../../src/job/model.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { checkPlan } from './checker.ts';
import { given, job, piece, stock } from './samples.ts';
import { drawer } from '../support/drawer.ts';

/**
 * The same job is cut the same way everywhere: plans at once of shops that have much in them, board by board, with all that is bought, ripped
 * and left. That every plan is sound is held by the checker; what is written down holds that it stays as it is.
 */
const worth = (amount: number) => ({ amount: new Rational(amount), currency: 'USD' });
const offcut = (count: number, length: string, money?: number) => given({ count, length: inches(length), ...money !== undefined && { worth: worth(money) } });

/** Pieces of a room: mitered sides, bottoms, cleats ripped both ways, blocking ripped narrower, in lengths drawn by chance. */
function pieces(of: Stock, seed: number, count: number): Piece[] {
    const draw = drawer(seed);
    return Array.from({ length: count }, (_, i) => {
        const length = inches(`${14 + draw(80)} ${1 + draw(31)}/32`), id = `p${String(i).padStart(2, '0')}`;
        switch (draw(4)) {
            case 0: return piece(id, of, length, { part: 'side', on: 'south', ends: [{ cut: 'miter', degrees: 45 }, { cut: 'miter', degrees: 22.5 }] });
            case 1: return piece(id, of, length, { part: 'cleat', width: inches('3/4'), thickness: inches('3/4'), ripped: true });
            case 2: return piece(id, of, length, { part: 'blocking', width: inches('2 1/4'), ripped: true });
            default: return piece(id, of, length);
        }
    });
}

const pine = stock({ feet: [8, 10, 16], each: { 8: '11', 10: '14.25', 16: '23.5' } }), ash = stock({ name: 'ash-1x8', width: inches('7 1/4'), feet: [10, 12], perFoot: '3.1' });
const rack: Stock = { ...pine, name: 'rack-1x6', key: 'sample#rack', onHand: [offcut(2, '61 1/2', 4), offcut(1, '100'), offcut(3, '26'), offcut(1, '144', 40)] };
const SHOPS: readonly (readonly [name: string, pieces: readonly Piece[], settings: JobSettings])[] = [
    ['two-stocks', [...pieces(pine, 1, 26), ...pieces(ash, 2, 17)], job()],
    ['on-hand', pieces(rack, 3, 22), job({ kerf: given(inches('3/32')), endTrim: given(inches('1 1/4')), offcutWorth: given(new Rational(1, 2)) })],
    ['little-cleats', pieces(pine, 4, 40).filter(({ part }) => part === 'cleat' || part === 'blocking'), job({ shortestOffcut: given(inches(12)) })],
    ['too-long', [...pieces(ash, 5, 6), piece('long', ash, 13 * TICKS_PER_FOOT), piece('wide', ash, inches(20), { width: inches(9) })], job({ longestBoard: given(11 * TICKS_PER_FOOT) })],
];

describe.each(SHOPS)('%s', (name, all, settings) => {
    test('is planned as it was', async () => {
        const plan = planBoards(all, settings);
        checkPlan(plan, all, settings);
        await expect(told(plan, settings)).toMatchFileSnapshot(`./whole-plans/${name}.txt`);
    });
    test('what is asked of the search is whole numbers that stand for the shop', async () => {
        await expect(questionsOf(all, settings).asked.map(({ problem }) => JSON.stringify(problem)).join('\n')).toMatchFileSnapshot(`./whole-plans/${name}-asked.txt`);
    });
});

const inch = (ticks: number): string => String(Math.round(ticks / inches(1) * 1e4) / 1e4);

function told(plan: BoardPlan, settings: JobSettings): string {
    return [
        ...plan.stocks.flatMap(({ stock: { name }, boards, buy, costs, rips, known, spare }) => [
            `${name}: ${knownText(known)}, at least ${known.lowerBound?.toFraction()}; ${costs.map(({ amount, currency }) => `${amount.toFraction()} ${currency}`).join(', ')}`,
            ...buy.map(({ length, count, each }) => `   buy ${count} x ${inch(length)} at ${each?.amount.toFraction()}`), ...spare ? [`   spare ${JSON.stringify(spare)}`] : [],
            ...boards.map(({ number, length, from, worth: money, strips, sections }) =>
                `   #${number} ${inch(length)} ${from}${money ? ` worth ${money.amount.toFraction()}` : ''}${sections ? ` in ${sections.map(inch).join(' ')}` : ''}: ${
                    strips.map(({ rippedTo, section, pieces: own, offcut: left, kept }) =>
                        `${rippedTo === undefined ? 'whole' : inch(rippedTo)}${section === undefined ? '' : `/${section}`} ${own.map(({ id }) => id).join(' ')} | ${inch(left)}${kept ? ' kept' : ''}`).join('; ')}`),
            ...rips.map(rip => `   rip ${JSON.stringify(rip)}`),
        ]),
        ...plan.unplaced.map(({ piece: { id }, reason }) => `unplaced ${id}: ${reason}`),
        ...leftoversOf([{ plan, job: settings }]).map(({ stock: { name }, pieces: whole, strips }) => `left of ${name}: ${
            [...whole.map(({ count, length, worth: money }) => `${count} x ${inch(length)}${money ? ` worth ${money.amount.toFraction()}` : ''}`), ...strips.map(strip => JSON.stringify(strip))].join('; ')}`),
        '',
    ].join('\n');
}
