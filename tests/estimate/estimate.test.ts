import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { estimateOf } from '../../src/estimate/estimate.ts';
import type { Estimate } from '../../src/estimate/model.ts';
import type { Rates } from '../../src/job/rates.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { NO_RATES } from '../support/no-rates.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { randomRooms } from '../support/random-rooms.ts';
import { dollars, given, randomRates } from './random-rates.ts';
import { runs } from '../support/full.ts';

/** Decimal arithmetic by another library: forty digits, and cents rounded half away from zero. */
const D = Decimal.clone({ precision: 40, rounding: Decimal.ROUND_HALF_UP });
const decimal = (value: Rational): Decimal => new D(value.s.toString()).mul(value.n.toString()).div(value.d.toString());
const cents = (value: Decimal): Decimal => value.toDecimalPlaces(2);
const sumOf = (values: readonly Decimal[]): Decimal => values.reduce((sum, value) => sum.plus(value), new D(0));

/** An empty job of one sum of labor: what is added to it, alone. */
function bidOn(cost: string, bid: Partial<Rates['bid']>): Estimate {
    const rates: Rates = { labor: NO_RATES.labor, bid: { ...NO_RATES.bid, allowances: [dollars(cost)], ...bid } };
    return estimateOf({ parts: [{ rates, rooms: [] }], plan: planBoards([], jobBuilder().settings()), setUps: 0 }, jobBuilder().settings());
}
const price = (estimate: Estimate): number => estimate.sums.price.valueOf();

describe('markup and margin are not the same', () => {
    // contractors' accounting pages on markup and margin, as read: cost 50 at 15 %; cost 1000 at 40 %; margin from markup m / (1 + m)
    test.each([
        ['50', '0.15', 'cost', 57.50], ['50', '0.15', 'price', 58.82], ['1000', '0.4', 'cost', 1400],
    ] as const)('%s at %s of %s is %d', (cost, share, of, wanted) => {
        expect(price(bidOn(cost, { profit: given({ share: new Rational(share), of }) }))).toBe(wanted);
    });
    test.each([['0.2', 16.67], ['0.4', 28.57], ['0.5', 33.33]])('a markup of %s is a margin of %d %%', (markup, margin) => {
        const { sums } = bidOn('1000', { profit: given({ share: new Rational(markup), of: 'cost' }) });
        expect(sums.profit.div(sums.price).mul(100).valueOf()).toBeCloseTo(margin, 2);
        const back = bidOn('1000', { profit: given({ share: sums.profit.div(sums.price), of: 'price' }) });
        expect(price(back)).toBe(price(bidOn('1000', { profit: given({ share: new Rational(markup), of: 'cost' }) })));
    });
    test.each([['price', 'profit (margin)'], ['cost', 'profit (markup)']] as const)('a share of the %s is called a %s', (of, what) => {
        expect(bidOn('1000', { profit: given({ share: new Rational('0.1'), of }) }).additions.map(each => each.what)).toContain(what);
    });
    test('a profit of the whole price is none, and is said', () => {
        const estimate = bidOn('1000', { profit: given({ share: new Rational(1), of: 'price' }) });
        expect(estimate.missing.map(one => one.of)).toContain('the profit: a share of the price has to be less than 100 %');
    });
});

test('what is added, line by line: contingency, overhead, profit, the minimum charge and tax', () => {
    const estimate = bidOn('1000', {
        contingency: given(new Rational('0.05')), overhead: given(new Rational('0.12')), profit: given({ share: new Rational('0.2'), of: 'price' }),
        minimum: dollars(1500), tax: given({ share: new Rational('0.07'), on: 'everything' }),
    });
    // 1000 + 50 = 1050; overhead 126: cost 1176; profit 1176 x 0.2 / 0.8 = 294: price 1470, lifted by 30; tax 105
    expect(estimate.additions.map(({ kind, amount }) => [kind, amount.valueOf()])).toEqual([
        ['allowance', 1000], ['contingency', 50], ['overhead', 126], ['profit', 294], ['minimum', 30], ['tax', 105],
    ]);
    expect([estimate.sums.cost, estimate.sums.price, estimate.sums.total].map(sum => sum.valueOf())).toEqual([1176, 1500, 1605]);
});

test.each([[999, []], [1000, []], [1001, ['minimum']]] as const)('a minimum charge of %d beside a price of 1000', (least, kinds) => {
    expect(bidOn('1000', { minimum: dollars(least) }).additions.map(({ kind }) => kind)).toEqual(['allowance', ...kinds]);
});

test('hours from feet: published rates of trim work', () => {
    // common practice, no source: three people, eight hours, 200 ft of crown are 8.33 ft a man-hour, so 452 ft take 54.24
    const rate = new Rational(3 * 8 * 60).div(200).div(TICKS_PER_FOOT);
    expect(rate.mul(452 * TICKS_PER_FOOT).div(60).valueOf()).toBeCloseTo(54.24, 10);
    const feet = takeOff(layOut(plainRoom()).ceiling!).pieces.filter(piece => piece.part === 'trim').reduce((sum, piece) => sum + piece.back, 0);
    const { labor } = estimateOf(
        under({ ...NO_RATES, labor: { ...NO_RATES.labor, byLength: { trim: given(rate) } } }, workOf(plainRoom())), jobBuilder().settings(),
    );
    expect(labor.map(({ what }) => what)).toEqual(['trim']);
    expect(labor[0]!.minutes.div(60).valueOf()).toBeCloseTo(feet / TICKS_PER_FOOT / (200 / 24), 10);
});

describe('work on a detail', () => {
    const minute = new Rational(1);
    const shares = (over: Partial<Rates['labor']>, room = twoDetails()): [string, number][] =>
        estimateOf(under({ ...NO_RATES, labor: { ...NO_RATES.labor, ...over } }, workOf(room)), jobBuilder().settings()).labor
            .filter(({ phase }) => phase === 'first of its kind').map(({ what, minutes }) => [what, minutes.valueOf()]);

    test('the first bay takes longer by a share of an average bay: the detail\'s time over the coffers', () => {
        // 12 minutes for each of two crossings, which lie on the lines north-south: 24 minutes on the box; 6 coffers; twice as long
        expect(shares({ byCount: { layout: given(new Rational(12)) }, firstBay: given(new Rational(1)) })).toEqual([['first bay of box', 4]]);
    });
    test('setting out belongs to the lines north-south, joints to the line of their first piece', () => {
        const unfamiliar = given({ share: new Rational(1, 2), of: [] });
        expect(shares({ byCount: { layout: given(minute) }, unfamiliar })).toEqual([['box is new to the crew', 1]]);
        // bottoms east-west are cut between: two butts at each crossing, at pieces of line A
        expect(shares({ byCount: { butt: given(minute) }, unfamiliar })).toEqual([['flat is new to the crew', 2]]);
    });
});

/** Lines 1 and 2 of one detail, line A of another. */
function twoDetails() {
    const { stock, profile, room } = jobBuilder();
    const board = stock('board', { thickness: '3/4"', width: '5 1/2"', lengths: [`16'`], perFoot: 2 });
    const parts = { blocking: { stock: board }, sides: { stock: board }, cleats: { stock: board }, bottom: { stock: board } };
    return room('den', {
        width: `14'`, length: `12'`, north: { coffers: 3 }, east: { coffers: 2 }, through: 'north-south',
        beams: profile('box', parts), lines: { A: { beams: profile('flat', parts) } },
    });
}

function plainRoom() {
    const { stock, profile, room } = jobBuilder();
    const board = stock('board', { thickness: '3/4"', width: '5 1/2"', lengths: [`16'`], perFoot: 2 });
    return room('den', {
        width: `14'`, length: `12'`, north: { coffers: 3 }, east: { coffers: 2 }, through: 'north-south',
        beams: profile('box', { blocking: { stock: board }, sides: { stock: board }, cleats: { stock: board }, bottom: { stock: board }, trim: { stock: board } }),
    });
}
/** All rooms under the same rates. */
function under(rates: Rates, { rooms, ...work }: ReturnType<typeof workOf>) {
    return { ...work, parts: [{ rates, rooms }] };
}
function workOf(...rooms: Parameters<typeof layOut>[0][]) {
    const laidOut = rooms.flatMap(room => layOut(room).ceiling ?? []).map(ceiling => ({ ceiling, takeOff: takeOff(ceiling) }));
    return { rooms: laidOut, job: rooms[0]!.job, plan: planBoards(laidOut.flatMap(room => room.takeOff.pieces), rooms[0]!.job), setUps: 7 };
}

describe('over random jobs and rates', () => {
    const jobs = fc.tuple(fc.array(randomRooms, { minLength: 1, maxLength: 2 }), randomRates);
    const check = (property: (estimate: Estimate, rates: Rates, work: ReturnType<typeof workOf>) => void): void =>
        fc.assert(fc.property(jobs, ([rooms, rates]) => {
            const work = workOf(...rooms.map(({ room }, i) => ({ ...room, name: `room-${i}` })));
            property(estimateOf(under(rates, work), rooms[0]!.room.job), rates, work);
        }), { numRuns: runs(40), seed: 20261125 });

    test('the same to the cent by decimal arithmetic of another library', () => check((estimate, { labor, bid }, work) => {
        const hour = labor.rate ? decimal(labor.rate.value.amount) : undefined;
        const work_ = sumOf(estimate.labor.map(({ basis }) => {
            const minutes = basis.by === 'length' ? decimal(basis.perTick).mul(basis.ticks) : basis.by === 'count' ? decimal(basis.each).mul(basis.count) : decimal(basis.share).mul(decimal(basis.minutes));
            return hour ? cents(minutes.div(60).mul(hour)) : new D(0);
        }));
        const boards = sumOf(work.plan.stocks.flatMap(stock => stock.buy.flatMap(({ each, count }) => each ? [cents(decimal(each.amount).mul(count))] : [])));
        const supplies = sumOf(estimate.supplies.map(({ count, each }) => cents(decimal(each).mul(count))));
        const allowed = sumOf([bid.delivery, ...bid.allowances].map(one => one ? cents(decimal(one.value.amount)) : new D(0)));
        let cost = sumOf([work_, boards, supplies, allowed]);
        if (bid.tax?.value.on === 'materials') cost = cost.plus(cents(decimal(bid.tax.value.share).mul(boards.plus(supplies))));
        for (const added of [bid.contingency, bid.overhead]) if (added) cost = cost.plus(cents(decimal(added.value).mul(cost)));
        const share = bid.profit && decimal(bid.profit.value.share);
        const profit = !share ? new D(0) : cents(bid.profit!.value.of === 'cost' ? cost.mul(share) : cost.mul(share).div(new D(1).minus(share)));
        const price = bid.minimum ? D.max(cost.plus(profit), decimal(bid.minimum.value.amount)) : cost.plus(profit);
        const tax = bid.tax?.value.on === 'everything' ? cents(decimal(bid.tax.value.share).mul(price)) : new D(0);
        expect([estimate.sums.cost, estimate.sums.profit, estimate.sums.price, estimate.sums.total].map(sum => decimal(sum).toFixed(4)))
            .toEqual([cost, profit, price, price.plus(tax)].map(sum => sum.toFixed(4)));
    }));

    test('rooms that have the same rates on two ways cost what they cost together, to the cent', () => check((estimate, rates, { rooms, job, ...work }) => {
        const parts = rooms.map(room => ({ rates: { labor: { ...rates.labor }, bid: { ...rates.bid } }, rooms: [room] }));
        const { parts: shares, ...apart } = estimateOf({ ...work, parts }, job);
        const { parts: _, ...together } = estimate;
        expect({ ...apart, missing: [] }).toEqual({ ...together, missing: [] });
        expect(shares.reduce((sum, { total }) => sum.add(total), new Rational(0)).equals(apart.sums.total)).toBe(true);
    }));

    test('every foot, joint and coffer of the take-off is timed or said to be missing', () => check((estimate, { labor }, { rooms }) => {
        for (const { takeOff: { room, pieces, joints }, ceiling } of rooms) {
            const lines = estimate.labor.filter(line => line.room === room), missing = estimate.missing.filter(one => one.room === room);
            for (const [part, word] of [['blocking', 'blocking'], ['side', 'sides'], ['cleat', 'cleats'], ['bottom', 'bottoms'], ['band', 'band'], ['trim', 'trim']] as const) {
                const ticks = pieces.filter(piece => piece.part === part).reduce((sum, piece) => sum + piece.back, 0);
                const rate = labor.byLength[part]?.value;
                const said = lines.filter(line => line.what === word).reduce((sum, { basis }) => sum + (basis.by === 'length' ? basis.ticks : 0), 0);
                expect(said).toBe(rate && !rate.equals(0) ? ticks : 0);
                expect(missing.some(one => one.rate === `labor.${part === 'side' || part === 'cleat' ? word : part}`)).toBe(ticks > 0 && !rate);
            }
            const corners = joints.filter(({ kind }) => kind === 'corner').length, timed = lines.find(line => line.what === 'corners of sides');
            if (labor.byCount.corner
                && !labor.byCount.corner.value.equals(0)) expect(timed?.basis).toEqual(corners === 0 ? undefined : expect.objectContaining({ count: corners }));
            expect(lines.find(line => line.what === 'coffers')?.basis ?? { count: ceiling.coffers.length }).toMatchObject({ count: ceiling.coffers.length });
        }
    }));

    test('days are the hours of all, shared by the crew', () => check(({ minutes, days, crew }, { labor }) => {
        if (crew === undefined) expect(labor.crew).toBeUndefined();
        else expect(days!.mul(labor.day.value).mul(crew).equals(minutes)).toBe(true);
    }));
});
