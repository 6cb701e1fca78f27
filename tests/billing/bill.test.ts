import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { billOf, type Bill } from '../../src/billing/bill.ts';
import { crossing, toDate } from '../../src/billing/to-date.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { runs } from '../support/full.ts';
import { contractOf, given, randomContracts, type Plain } from './random-contracts.ts';

/** Decimal arithmetic by another library: forty digits, and cents rounded half away from zero. */
const D = Decimal.clone({ precision: 40, rounding: Decimal.ROUND_HALF_UP });
const cents = (value: Decimal): Decimal => value.toDecimalPlaces(2);
const sumOf = (values: readonly Decimal[]): Decimal => values.reduce((sum, value) => sum.plus(value), new D(0));
const decimal = (value: Rational): Decimal => new D(value.s.toString()).mul(value.n.toString()).div(value.d.toString());

const bill = (plain: Plain, isFinal = false): Bill => billOf(contractOf(plain), () => undefined, isFinal)!;
const dollars = (value: Rational): number => value.valueOf();

describe('worked examples', () => {
    // Practice question of the Louisiana contractor's business and law examination, as printed by a publisher of such questions: a contract of
    // $357,000 is half done, $110,000 is paid, 10 % is retained: 178,500 - 17,850 - 110,000
    test('half of a contract, with retainage and what is paid', () => {
        const { earned, retained, due } = bill({ signed: '357000', retainage: '0.10', phases: [{ done: '0.5' }], payments: ['110000'] });
        expect([earned, retained, due].map(dollars)).toEqual([178_500, 17_850, 50_650]);
    });
    // Example of progress payments by a schedule of values, from an instructor for the NASCLA contractors' examination: tasks of $12,000, $8,500
    // and $25,000 are 18 %, 2 % and 7 % done: 2,160 + 170 + 1,750 = 4,080
    test('three lines of a schedule of values', () => {
        const { work, earned, due } = bill({ signed: '45500', phases: [{ sum: '12000', done: '0.18' }, { sum: '8500', done: '0.02' }, { sum: '25000', done: '0.07' }] });
        expect([...work.map(line => line.earned), earned, due].map(dollars)).toEqual([2160, 170, 1750, 4080, 4080]);
    });
    // The order of its lines is that of form RD 1924-18 (rev. 6-97), Partial Payment Estimate, of USDA Rural Development: original contract, change
    // orders, revised contract (1 + 2), work completed, subtotal, retainage, previous payments, amount due (6 - 7 - 8). The figures are invented.
    test('a revised contract, work completed, retainage, previous payments, amount due', () => {
        const { toDate: { signed, changed, sum, paid }, earned, retained, due } = bill({
            signed: '31200', retainage: '0.05', phases: [{ share: '0.40', done: '1' }, { share: '0.45', done: '0.30' }, { share: '0.15' }],
            changes: [{ adds: '1450', done: '0.5' }, { deducts: '280' }], payments: ['3120', '8000'],
        });
        const [one, two, three] = [31_200, 1450 - 280, 31_200 + 1450 - 280], eight = 3120 + 8000;
        const six = 12_480 + 4212 + 725 - 280, seven = Math.round(six * 5) / 100;
        expect([signed, changed, sum, earned, retained, paid, due].map(dollars)).toEqual([one, two, three, six, seven, eight, six - seven - eight]);
    });
    // Public records of the City of Carmel, Indiana, redevelopment commission, one electrical contract of 7,505,000.00 less 467,808.00: application 25
    // (period to 2010-05-31) has 6,448,296.27 completed and 351,859.60 retained, application 26 (to 2010-06-30) 6,585,898.78 and the same retained, and
    // the check for it is 137,602.51. That much is kept at 10 % until half of the contract is done.
    test('two applications of one contract, one after the other, as a city has paid them', () => {
        const at = (completed: number, payments: readonly string[]): Bill => bill({
            signed: '7505000', retainage: '0.10', until: '0.5', changes: [{ deducts: '467808' }], payments,
            phases: [{ done: `${Math.round((completed + 467_808) * 100)}/750500000` }],
        });
        const before = at(6_448_296.27, []), now = at(6_585_898.78, [before.due.toString()]);
        expect([before.toDate.sum, before.earned, before.retained].map(dollars)).toEqual([7_037_192, 6_448_296.27, 351_859.60]);
        expect([now.earned, now.retained, now.due].map(dollars)).toEqual([6_585_898.78, 351_859.60, 137_602.51]);
    });
    // The same records, a masonry contract: what of six applications was kept at 10 %, each to the cent
    test.each([[94_313.33, 9431.33], [172_644.44, 17_264.44], [58_588.89, 5858.89], [27_432.22, 2743.22], [118_846.10, 11_884.61], [240_730.01, 24_073]])('of %d is kept %d', (sum, kept) => {
        expect(dollars(bill({ signed: String(sum), retainage: '0.10', phases: [{ done: '1' }] }).retained)).toBe(kept);
    });
    // Progress payment vouchers of the California Department of Transportation, which publishes them (petsfiles.dot.ca.gov, hq/construc/vouchers), by contract
    // and number of the payment: contract items, extra work, adjustments and materials are what 5 % is retained of; mobilization is paid without retention and
    // is left out here; deductions are taken off behind it, as what is paid is. `this`: what the voucher pays; all sums to the cent.
    test.each([
        { voucher: '04-163624, 9', items: '1638633.31', extra: '9320.76', adjustment: '12493.01', materials: '25687.60', subject: '1661148.66', retained: '83057.43', deductions: '0', total: '1578091.23', this: '50229.65' },
        { voucher: '04-253794, 19', items: '27662734.78', extra: '1236755.80', adjustment: '484451.70', materials: '7226.82', subject: '28422265.70', retained: '1421113.29', deductions: '0', mobilization: '2800000.00', total: '29801152.41', this: '621758.75' },
        { voucher: '04-006044, 18', items: '10277840.50', extra: '80128.29', adds: '208662.36', materials: '0', subject: '10566631.15', retained: '528331.56', deductions: '2350.94', total: '10035948.65', this: '559448.59' },
        { voucher: '12-0695U4, 24', items: '25008829.24', extra: '1725861.07', adds: '202869.91', materials: '1683065.38', subject: '28620625.60', retained: '1431031.28', deductions: '40000.00', mobilization: '5259991.00', total: '32409585.32', this: '950741.15' },
        { voucher: '03-1A1814, 19', items: '759915.25', extra: '12761.78', adds: '25236.00', materials: '0', subject: '797913.03', retained: '39895.65', deductions: '42119.71', mobilization: '152913.00', total: '868810.67', this: '14011.39' },
    ])('voucher $voucher of a state, with all of its sums', ({ items, extra, adjustment, adds, materials, subject, retained, deductions, mobilization = '0', total, this: pays }) => {
        const before = new D(total).minus(mobilization).minus(pays).plus(deductions);
        const { work, earned, due, ...made } = bill({
            signed: new D(items).plus(materials).toString(), retainage: '0.05', phases: [{ sum: items, done: '1' }, { sum: materials, done: '1' }],
            changes: [{ adds: extra, done: '1' }, adds === undefined ? { deducts: adjustment } : { adds, done: '1' }], payments: [before.toString()],
        });
        expect([...work.map(line => line.earned), earned, made.retained, due].map(dollars))
            .toEqual([items, materials, extra, adds ?? `-${adjustment!}`, subject, retained, pays].map(Number));
    });
    // 48 CFR 32.103: retainage is at most 10 % of the approved amount, and is paid when all of the contract is done
    test('what was retained is paid with the final bill', () => {
        const first = bill({ signed: '20000', retainage: '0.10', phases: [{ done: '1' }] });
        expect([first.retained, first.due, first.toFinish].map(dollars)).toEqual([2000, 18_000, 2000]);
        const last = bill({ signed: '20000', retainage: '0.10', phases: [{ done: '1' }], payments: ['18000'] }, true);
        expect([last.retained, last.due, last.toFinish].map(dollars)).toEqual([0, 2000, 0]);
    });
});

// 48 CFR 32.103 lets less be retained as the work goes well; that no more is kept once half is done is common practice, no source
describe('retainage that ends', () => {
    const at = (done: string, changes: Plain['changes'] = []): Bill => bill({ signed: '20000', retainage: '0.10', until: '0.5', phases: [{ done }], changes });
    test('grows until that share of the contract is done, and stays', () => {
        expect(['0.3', '0.5', '0.5001', '1'].map(done => dollars(at(done).retained))).toEqual([600, 1000, 1000, 1000]);
        expect(dollars(at('1').due)).toBe(19_000);
    });
    test('is of the contract to date, with its changes', () => {
        expect(dollars(at('0.9', [{ adds: '4000', done: '0' }]).retained)).toBe(1200);              // 10 % of half of 24,000
        expect(dollars(at('0.9', [{ deducts: '4000' }]).retained)).toBe(800);
    });
});

describe('a deposit', () => {
    const plain: Plain = { signed: '10000', deposit: '3000', retainage: '0.05', phases: [{ share: '0.5' }, { share: '0.5' }] };
    const done = (first: string, payments: readonly string[] = []): Bill => bill({ ...plain, phases: [{ share: '0.5', done: first }, { share: '0.5' }], payments });
    test('is due before anything is done, and counts towards what is', () => {
        expect([done('0').ahead, done('0').due].map(dollars)).toEqual([3000, 3000]);
        expect([done('0.4').ahead, done('0.4').due].map(dollars)).toEqual([1100, 3000]);            // 2,000 - 100 earned
        expect([done('1').ahead, done('1').due].map(dollars)).toEqual([0, 4750]);
    });
    test('that is paid is taken off like any payment', () => {
        expect(dollars(done('0', ['3000']).due)).toBe(0);
        expect(dollars(done('0.4', ['3000']).due)).toBe(0);
        expect(dollars(done('1', ['3000']).due)).toBe(1750);
    });
    test('is never more than the contract to date', () => {
        expect(dollars(bill({ ...plain, changes: [{ deducts: '8000' }] }).due)).toBe(2000);
    });
});

test('what was billed before and is not paid is told apart, and asked for once', () => {
    const { open, due } = bill({ signed: '10000', phases: [{ done: '0.6' }], bills: ['2000', '2500'], payments: ['2000', '1000'] });
    expect([open, due].map(dollars)).toEqual([1500, 3000]);
});

test('what is known by the pieces is rounded down to a hundredth; unknown, there is no bill', () => {
    const contract = contractOf({ signed: '1000', phases: [{}] }), known = { ...contract, phases: [{ what: given('shop'), knownBy: given('cut' as const) }] };
    expect(dollars(billOf(known, () => new Rational(2, 3), false)!.earned)).toBe(660);
    expect(billOf(known, () => undefined, false)).toBeUndefined();
    expect(billOf({ ...contract, lacks: true }, () => undefined, false)).toBeUndefined();
});

test.each<[string, Plain]>([
    ['phases that are too little', { signed: '1000', phases: [{ share: '0.5', done: '1' }] }],
    ['phases that are too much', { signed: '1000', phases: [{ share: '0.5' }, { sum: '500.01' }] }],
    ['a rest that is less than nothing', { signed: '1000', phases: [{ sum: '1200' }, {}] }],
    ['a phase that is more than done', { signed: '1000', phases: [{ done: '1.01' }] }],
    ['a change that is more than done', { signed: '1000', changes: [{ adds: '10', done: '2' }] }],
    ['more deducted than there is', { signed: '1000', changes: [{ deducts: '1000.01' }] }],
])('%s: a bill is inconsistent', (_, plain) => {
    expect(bill(plain).isConsistent).toBe(false);
});

test('one sum after the other, where they come to too much', () => {
    const sums = ['10', '20.004', '0.01'].map(one => new Rational(one));
    expect(crossing(sums, new Rational(30))).toEqual({ at: 2, total: new Rational('30.01') });
    expect(crossing(sums, new Rational('30.01'))).toBeUndefined();
});

/** The same bill by decimals alone, from the plain words. */
function reckoned({ signed, deposit = '0', retainage = '0', until = '1', phases = [], changes = [], payments = [] }: Plain, isFinal: boolean) {
    const whole = cents(new D(signed));
    const said = phases.map(({ share, sum }) => (sum !== undefined ? cents(new D(sum)) : share !== undefined ? cents(whole.mul(share)) : undefined));
    const rest = whole.minus(sumOf(said.filter(one => one !== undefined)));
    const values = said.map(one => one ?? rest);
    const work = [
        ...values.map((value, i) => cents(value.mul(phases[i]!.done ?? '0'))),
        ...changes.map(({ adds, deducts, done = '0' }) => (adds !== undefined ? cents(cents(new D(adds)).mul(done)) : cents(new D(deducts!)).neg())),
    ];
    const paid = sumOf(payments.map(one => cents(new D(one))));
    const sum = whole.plus(sumOf(changes.map(({ adds, deducts }) => cents(new D(adds ?? `-${deducts!}`)))));
    const earned = sumOf(work), retained = isFinal ? new D(0) : D.max(cents(D.min(earned, sum.mul(until)).mul(retainage)), 0);
    const ahead = isFinal ? new D(0) : D.max(D.min(cents(new D(deposit)), sum).minus(earned.minus(retained)), 0);
    return { values, work, earned, retained, ahead, sum, due: earned.minus(retained).plus(ahead).minus(paid), paid };
}

test('every sum of a bill is that of an independent reckoning, to the cent', () => {
    fc.assert(fc.property(randomContracts, fc.boolean(), (plain, isFinal) => {
        const ours = bill(plain, isFinal), theirs = reckoned(plain, isFinal);
        expect(ours.toDate.schedule.map(({ value }) => decimal(value).toString())).toEqual(theirs.values.map(String));
        expect(ours.work.map(({ earned }) => decimal(earned).toString())).toEqual(theirs.work.map(String));
        for (const name of ['earned', 'retained', 'ahead', 'due'] as const) expect([name, decimal(ours[name]).toString()]).toEqual([name, theirs[name].toString()]);
        expect(decimal(ours.toDate.sum).toString()).toBe(theirs.sum.toString());
    }), { seed: 41, numRuns: runs(1000) });
});

test('no bill asks for more than the contract, and all of them together for all of it', () => {
    const hundredths = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 12, maxLength: 12 });
    fc.assert(fc.property(randomContracts, fc.array(hundredths, { maxLength: 5 }), (plain, stages) => {
        const payments: string[] = [];
        const at = (shares: readonly number[]): Plain => ({
            ...plain, payments, bills: payments, phases: plain.phases!.map((one, i) => ({ ...one, done: (shares[i]! / 100).toFixed(2) })),
            changes: plain.changes!.map((one, i) => (one.adds === undefined ? one : { ...one, done: (shares[11 - i]! / 100).toFixed(2) })),
        });
        for (const shares of [...stages, Array.from({ length: 12 }, () => 100)]) {
            const { due, toDate: { sum, paid }, toFinish, isConsistent } = bill(at(shares));
            expect(isConsistent).toBe(true);
            expect(paid.add(due).lte(sum)).toBe(true);
            expect(due.lt(0) || paid.add(due).add(toFinish).equals(sum)).toBe(true);
            if (due.gt(0)) payments.push(decimal(due).toString());
        }
        const last = bill(at(Array.from({ length: 12 }, () => 100)), true);
        expect([last.undone, last.toDate.paid.add(last.due).sub(last.toDate.sum).valueOf(), last.toFinish.valueOf()]).toEqual([[], 0, 0]);
    }), { seed: 43, numRuns: runs(400) });
});

test('the phases together are what was signed', () => {
    fc.assert(fc.property(randomContracts, plain => {
        const { off, schedule, signed } = toDate(contractOf(plain))!;
        expect([off.valueOf(), schedule.reduce((all, { value }) => all.add(value), new Rational(0)).sub(signed).valueOf()]).toEqual([0, 0]);
    }), { seed: 47, numRuns: runs(400) });
});
