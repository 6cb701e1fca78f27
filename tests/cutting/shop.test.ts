import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { knownText } from '../../src/cutting/known.ts';
import { lookCloser } from '../../src/cutting/look-closer.ts';
import type { BoardPlan } from '../../src/cutting/model.ts';
import { questionsOf, type Answer } from '../../src/cutting/questions.ts';
import { apartOf, ANY_SHOP, type Shop } from '../../src/cutting/shop.ts';
import type { JobSettings } from '../../src/job/model.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import type { CuttingProblem } from '../../src/cutting/solve/problem.ts';
import { choiceText } from '../../src/report/choice.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { runs } from '../support/full.ts';
import { checkPlan } from './checker.ts';
import { given, job, piece, stock } from './samples.ts';
import { leastCost } from './solve/exhaustive.ts';
import { solver } from './solve/problems.ts';

/** At once, and after looking closer; both are gone over. */
function plans(
    pieces: readonly Piece[], { settings = job(), shop = ANY_SHOP }: { settings?: JobSettings; shop?: Shop } = {},
): { first: BoardPlan; closely: BoardPlan } {
    const { asked, answered, first } = questionsOf(pieces, settings, [], shop);
    const answers = new Map<number, Answer>();
    for (const { index, answer } of lookCloser(structuredClone(asked) as typeof asked, solver, 5e6)) answers.set(index, answer);
    const closely = answered(answers);
    for (const plan of [first, closely]) {
        checkPlan(plan, pieces, settings);
        // what comes out of whole boards comes out of boards in sections too
        for (const { choice } of plan.stocks) expect(choice?.boardsSaved.amount.valueOf() ?? 0).toBeGreaterThanOrEqual(0);
    }
    return { first, closely };
}
const several = (count: number, name: string, make: (id: string) => Piece): Piece[] => Array.from({ length: count }, (_, i) => make(`${name}-${i}`));
const bought = ({ stocks }: BoardPlan): string[] => stocks.flatMap(({ buy }) => buy.map(({ count, length }) => `${count} x ${length / TICKS_PER_FOOT}'`));

describe('rooms apart', () => {
    const pine = stock({ feet: [12], perFoot: '2', onHand: [[1, inches(70)]] });
    const pieces = ['den', 'hall', 'study'].flatMap(room => several(room === 'den' ? 3 : 2, room, id => piece(id, pine, inches(68), { room })));
    const roomsOf = (plan: BoardPlan): string[][] => plan.stocks.flatMap(({ boards }) =>
        boards.map(({ strips }) => [...new Set(strips.flatMap(strip => strip.pieces.map(({ room }) => room)))]));

    test('a room that says so shares no board; what is on hand is taken once', () => {
        const together = plans(pieces).closely, apart = plans(pieces, { shop: { apart: new Set(['den', 'study']) } });
        expect(bought(together)).toEqual(["3 x 12'"]);
        for (const plan of [apart.first, apart.closely]) {
            expect(roomsOf(plan).every(rooms => rooms.length === 1)).toBe(true);
            expect(plan.stocks[0]!.boards.filter(({ from }) => from === 'on hand').length).toBe(1);
            expect(bought(plan)).toEqual(["3 x 12'"]);
        }
        expect(knownText(apart.closely.stocks[0]!.known))
            .toBe('none cheaper exists (ways of cutting compared: cut across; no piece turned; no board for two rooms, boards on hand given out beforehand)');
    });
    // of five on hand the den takes one at first, the hall two: two that nobody takes may still be of use to the den
    test('boards on hand that no room uses at first are those of the first room', () => {
        const rack = stock({ feet: [12], perFoot: '2', onHand: [[5, inches(70)]] });
        const own = [...several(1, 'den', id => piece(id, rack, inches(68), { room: 'den' })), ...several(2, 'hall', id => piece(id, rack, inches(68), { room: 'hall' }))];
        const { asked } = questionsOf(own, job(), [], { apart: new Set(['den', 'hall']) });
        expect(asked.map(({ problem }) => problem.boards.map(({ available }) => available))).toEqual([[3, null], [2, null]]);
    });
    test('three rooms of one piece each take three boards instead of two', () => {
        const one = ['den', 'hall', 'study'].map(room => piece(room, stock({ feet: [12], perFoot: '2' }), inches(70), { room }));
        expect(bought(plans(one).closely)).toEqual(["2 x 12'"]);
        expect(bought(plans(one, { shop: { apart: new Set(['den', 'hall', 'study']) } }).closely)).toEqual(["3 x 12'"]);
    });
    test('just what trying everything gives, room by room and of the rooms that share boards together', () => {
        const feet = [8, 12], prices: Readonly<Record<number, number>> = { 8: 16, 12: 23 };
        const wood = stock({ feet, each: Object.fromEntries(feet.map(length => [length, String(prices[length])])) });
        // in eighths of an inch: 1" of trim and a kerf of 1/8"
        const boards = feet.map(length => ({ capacity: length * 96 - 8 + 1, cost: prices[length]!, available: null, across: 1 }));
        const least = (lengths: readonly number[]): number =>
            leastCost({ items: lengths.map(length => ({ size: length + 1, count: 1, lanes: [0] })), boards, strips: [] });
        const room = fc.array(fc.integer({ min: 120, max: 700 }), { minLength: 1, maxLength: 4 });
        fc.assert(fc.property(room, room, room, fc.subarray(['den', 'hall', 'study']), (den, hall, study, apart) => {
            const rooms = Object.entries({ den, hall, study });
            const own = rooms.filter(([name]) => apart.includes(name)), shared = rooms.filter(([name]) => !apart.includes(name));
            fc.pre(shared.length < 3 || den.length + hall.length + study.length <= 9);
            const pieces = rooms.flatMap(([name, lengths]) => lengths.map((length, i) =>
                piece(`${name}-${i}`, wood, inches(new Rational(length, 8).toFraction()), { room: name })));
            const { closely } = plans(pieces, { shop: { apart: new Set(apart) } });
            expect(closely.stocks[0]!.known.as).toBe('none cheaper');
            const groups = [...own.map(([, lengths]) => lengths), shared.flatMap(([, lengths]) => lengths)];
            expect(closely.costs[0]!.amount.valueOf()).toBe(groups.reduce((sum, lengths) => sum + least(lengths), 0));
        }), { seed: 12, numRuns: runs(120, 4) });
    });
    test('with boards on hand too: each room is cut as cheaply as trying everything from what it was given', () => {
        const feet = [8, 12], prices: Readonly<Record<number, number>> = { 8: 16, 12: 23 };
        let taken = 0;
        const room = fc.array(fc.integer({ min: 120, max: 700 }), { minLength: 1, maxLength: 3 });
        const onHand = fc.uniqueArray(fc.integer({ min: 200, max: 900 }), { minLength: 1, maxLength: 2 });
        fc.assert(fc.property(room, room, room, onHand, fc.integer({ min: 1, max: 2 }), (den, hall, study, there, count) => {
            const inEighths = (length: number) => inches(new Rational(length, 8).toFraction());
            const wood = stock({ feet, each: { 8: '16', 12: '23' }, onHand: there.map(length => [count, inEighths(length)]) });
            const rooms = Object.entries({ den, hall, study });
            const pieces = rooms.flatMap(([name, lengths]) => lengths.map((length, i) => piece(`${name}-${i}`, wood, inEighths(length), { room: name })));
            const { first, closely } = plans(pieces, { shop: { apart: new Set(['den', 'hall', 'study']) } });
            // what a room's plan at once takes is given to it, and what none takes to the first room
            const given = (name: string, length: number): number => first.stocks[0]!.boards.filter(({ from, length: own, strips }) =>
                from === 'on hand' && own === inEighths(length) && strips.some(strip => strip.pieces.some(one => one.room === name))).length;
            const least = rooms.map(([name, lengths], r) => leastCost({
                items: lengths.map(length => ({ size: length + 1, count: 1, lanes: [0] })), strips: [],
                boards: [
                    ...feet.map(length => ({ capacity: length * 96 - 8 + 1, cost: prices[length]!, available: null, across: 1 })),
                    ...there.map(length => ({
                        capacity: length - 8 + 1, cost: 0, across: 1,
                        available: r > 0 ? given(name, length) : count - given('hall', length) - given('study', length),
                    })),
                ],
            }));
            expect(closely.stocks[0]!.known.as).toBe('none cheaper');
            expect(closely.stocks[0]!.known.under).toEqual(['rooms apart']);
            expect((closely.costs[0]?.amount ?? new Rational(0)).valueOf()).toBe(least.reduce((sum, cost) => sum + cost, 0));
            taken += closely.stocks[0]!.boards.filter(({ from }) => from === 'on hand').length;
        }), { seed: 13, numRuns: runs(120, 6) });
        expect(taken).toBeGreaterThan(0);
    });
    test('the room says it, else its job', () => {
        const own = given('own' as const), shared = given('shared' as const);
        expect([...apartOf([
            { name: 'a', job: { boards: own } }, { name: 'b', job: { boards: own }, boards: shared }, { name: 'c', job: {} }, { name: 'd', job: {}, boards: own },
        ])]).toEqual(['a', 'd']);
    });
});

describe('what kept offcuts are worth counts in the choice', () => {
    // 12' at 21 dollars leaves 4' 7/8", of which 4' are worth half of 1.75 a foot: 17.50 against 20 for 8'
    const pine = stock({ feet: [8, 12], each: { 8: '20', 12: '21' } });
    test('a longer board is bought where its offcut is worth more than it costs more', () => {
        const one = [piece('one', pine, inches(94))];
        expect(bought(plans(one).closely)).toEqual(["1 x 8'"]);
        const { first, closely } = plans(one, { settings: job({ offcutWorth: given(new Rational(1, 2)) }) });
        for (const plan of [first, closely]) expect(bought(plan)).toEqual(["1 x 12'"]);
        expect(knownText(closely.stocks[0]!.known)).toContain('none cheaper exists (ways of cutting compared: cut across; no piece turned; less what kept offcuts');
        expect(closely.stocks[0]!.known.lowerBound!.toFraction()).toBe(new Rational('17.5').toFraction());
    });

    /** The least by trying every way to put the pieces on boards: each board costs its price less its offcut's worth by the foot from 24" on. */
    function least(lengths: readonly number[], each: Readonly<Record<number, number>>, share: number): number {
        const rate = Math.min(...Object.entries(each).map(([feet, price]) => price / Number(feet)));
        const boardFor = (used: number): number => Math.min(...Object.entries(each).map(([feet, price]) => {
            const left = Number(feet) * 12 - 1 - used; // every piece with its cut, of 1/8"
            if (left < -1 / 8) return Infinity;
            return price - (left >= 24 ? (2 + Math.floor((left - 24) / 12)) * rate * share : 0);
        }));
        let best = Infinity;
        const place = (i: number, used: number[]): void => {
            if (i === lengths.length) { best = Math.min(best, used.reduce((sum, each) => sum + boardFor(each), 0)); return; }
            const takes = lengths[i]! + 1 / 8;
            place(i + 1, [...used, takes]);
            for (let b = 0; b < used.length; b++) place(i + 1, used.with(b, used[b]! + takes));
        };
        place(0, []);
        return best;
    }
    test('just so much as by trying every way', () => {
        fc.assert(fc.property(
            fc.array(fc.integer({ min: 80, max: 760 }), { minLength: 1, maxLength: 6 }), fc.integer({ min: 0, max: 4 }), fc.integer({ min: 1, max: 4 }),
            (eighths, dearer, share) => {
                const each = { 8: 16, 10: 20 + dearer, 12: 25, 16: 32 - dearer };
                const wood = stock({ feet: [8, 10, 12, 16], each: Object.fromEntries(Object.entries(each).map(([feet, price]) => [feet, String(price)])) });
                const { closely } = plans(eighths.map((length, i) => piece(`p${i}`, wood, inches(new Rational(length, 8).toFraction()))), { settings: job({ offcutWorth: given(new Rational(share, 4)) }) });
                const { known } = closely.stocks[0]!;
                expect(known.as).toBe('none cheaper');
                expect(known.lowerBound!.valueOf()).toBeCloseTo(least(eighths.map(length => length / 8), each, share / 4), 9);
            },
        ), { numRuns: runs(100, 4) });
    });
});

describe('sections or whole boards', () => {
    // the cleats come out of what is left beside the bottom, or out of a board of their own
    const pine = stock({ feet: [6, 16], each: { 6: '12', 16: '32' } });
    const pieces = [piece('bottom', pine, inches(120)), ...several(12, 'cleat', id => piece(id, pine, inches('29 7/8'), { width: inches('3/4'), ripped: true }))];
    const shop = (each: number): Shop => ({ apart: new Set(), setUps: { each: { amount: new Rational(each), currency: 'USD' }, count: plan => sawOrder(plan, job()).setUps.total } });

    test('what is cheaper together with its set-ups is taken, and both are told', () => {
        const [cheap, dear] = [plans(pieces, { shop: shop(1) }), plans(pieces, { shop: shop(50) })];
        for (const { stocks: [plan] } of [cheap.first, cheap.closely]) expect([plan!.choice!.takes, plan!.boards.length]).toEqual(['sections', 1]);
        for (const { stocks: [plan] } of [dear.first, dear.closely]) expect([plan!.choice!.takes, plan!.boards.length]).toEqual(['whole boards', 2]);
        const { boardsSaved, setUps } = dear.closely.stocks[0]!.choice!;
        const [sections, whole] = [cheap, dear].map(({ closely }) => ({ costs: closely.costs[0]!.amount, setUps: sawOrder(closely, job()).setUps.total }));
        expect([boardsSaved.amount.toFraction(), setUps]).toEqual([whole!.costs.sub(sections!.costs).toFraction(), sections!.setUps - whole!.setUps]);
        expect(choiceText(dear.closely.stocks[0]!.choice)).toMatch(/^Sections beside whole boards that are ripped: \$12\.00 less for boards, \d+ set-ups? more at \$50\.00 \(\$\d+\.00\)\. Taken: whole boards\.$/);
        expect(knownText(dear.closely.stocks[0]!.known)).toContain('or ripped over the whole length');
    });
    test('the question about whole boards points to that about sections, whose answer is one of its own', () => {
        const { asked } = questionsOf(pieces, job(), [], shop(1));
        const told = asked.map(({ problem: { shortestSection }, withSections }) => [shortestSection !== undefined, withSections]);
        expect(told).toEqual([[true, undefined], [false, 0]]);
    });
    test('also where another room, which shares no board with it, has nothing to rip', () => {
        const other = piece('hall-1', pine, inches(60), { room: 'hall' });
        for (const each of [1, 50]) {
            const { first: { stocks: [plan] } } = plans([other, ...pieces], { shop: { ...shop(each), apart: new Set(['hall']) } });
            expect([plan!.choice!.takes, plan!.boards.length]).toEqual(each === 1 ? ['sections', 2] : ['whole boards', 3]);
        }
    });
    /** Set-ups of plans of square pieces, counted by hand: a fence for every width, a stop for every length, of boards and of sections apart. */
    function setUpsOf({ stocks: [plan] }: BoardPlan): number {
        const fences = new Set<string>(), stops = new Set<string>();
        for (const { strips, sections = [] } of plan!.boards) {
            for (const length of sections) stops.add(`boards ${length}`);
            for (const { section, rippedTo, pieces: own } of strips) {
                if (rippedTo !== undefined) fences.add(`${section === undefined} ${rippedTo}`);
                for (const { cutOverall } of own)
                    stops.add(section === undefined || cutOverall === sections[section - 1] ? `boards ${cutOverall}` : `strips ${cutOverall}`);
            }
        }
        return fences.size + stops.size;
    }
    test('both ways cost what trying everything gives, and the one is taken that is cheaper with its set-ups', () => {
        const taken = new Set<string>();
        const lengths = (least: number, most: number, count: number) => fc.array(fc.integer({ min: least, max: most }), { minLength: 1, maxLength: count });
        const drawn = [lengths(300, 1400, 2), lengths(100, 500, 3), fc.integer({ min: 1, max: 2 }), fc.integer({ min: 1, max: 9 })] as const;
        fc.assert(fc.property(...drawn, (bottoms, cleats, each, price) => {
            const inEighths = (length: number) => inches(new Rational(length, 8).toFraction());
            const wide = bottoms.map((length, i) => piece(`bottom-${i}`, pine, inEighths(length)));
            const narrow = cleats.flatMap((length, i) => several(each, `cleat-${i}`, id => piece(id, pine, inEighths(length), { width: inches('3/4'), ripped: true })));
            const { closely } = plans([...wide, ...narrow], { shop: shop(price) }), [plan] = closely.stocks;
            fc.pre(closely.unplaced.length === 0);
            const whole: CuttingProblem = {
                items: [
                    ...bottoms.map(size => ({ size: size + 1, count: 1, lanes: [0] })), ...cleats.map(size => ({ size: size + 1, count: each, lanes: [1] })),
                ],
                boards: [[6, 12], [16, 32]].map(([feet, cost]) => ({ capacity: feet! * 96 - 8 + 1, cost: cost!, available: null, across: 45 })), strips: [7],
            };
            const [least, leastWhole] = [leastCost({ ...whole, shortestSection: 97 }), leastCost(whole)];
            expect(sawOrder(closely, job()).setUps.total).toBe(setUpsOf(closely));
            const { choice } = plan!;
            if (!choice) {
                expect([leastWhole, closely.costs[0]!.amount.valueOf()]).toEqual([least, least]);
                return;
            }
            expect(choice.boardsSaved.amount.valueOf()).toBe(leastWhole - least);
            const isCheaper = leastWhole - least >= price * choice.setUps;
            expect([choice.takes, closely.costs[0]!.amount.valueOf()]).toEqual(isCheaper ? ['sections', least] : ['whole boards', leastWhole]);
            taken.add(choice.takes);
        }), { seed: 14, numRuns: runs(120, 8) });
        expect(taken.size).toBe(2);
    });
    test('what has no price is not held against money', () => {
        const choiceOf = (feet: readonly number[], each: Readonly<Record<number, string>>): unknown => {
            const wood = stock({ feet, each }), own = pieces.map(one => ({ ...one, stock: wood }));
            return plans(own, { shop: shop(1) }).closely.stocks[0]!.choice;
        };
        // a price that no board is sold at; and one of the boards that the bottom does not come out of
        expect([choiceOf([6, 16], { 20: '40' }), choiceOf([6, 16], { 6: '12' })]).toEqual([undefined, undefined]);
        expect(choiceOf([6, 16], { 6: '12', 16: '32' })).toBeDefined();
    });
    test('where nobody says what a set-up is worth, boards alone decide, and nothing is told', () => {
        const { closely } = plans(pieces);
        expect([closely.stocks[0]!.boards.length, closely.stocks[0]!.choice]).toEqual([1, undefined]);
    });
});

test('a sheet in two stages is ripped over its whole length, whatever is left of it', () => {
    const sheet = (stages: 2 | 3) => ({
        ...stock({ name: 'ply', width: inches(48), feet: [8], perFoot: '8' }), sheet: given({ width: inches(48), length: inches(96), grain: 'lengthwise' as const, stages }),
    });
    const backs = (of: ReturnType<typeof sheet>): Piece[] => several(4, 'back', id => piece(id, of, inches(60), { width: inches('11 1/2'), ripped: true }));
    const [three, two] = ([3, 2] as const).map(stages => plans(backs(sheet(stages))).closely.stocks[0]!);
    expect(three!.boards.map(({ sections }) => sections?.length)).toEqual([1]);
    expect(two!.boards.map(({ sections }) => sections)).toEqual([undefined]);
    expect([three, two].map(plan => plan!.known.model)).toEqual(['sheets along', 'sheets along in two']);
});
