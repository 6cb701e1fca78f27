import type { AcceptedChange, Contract, KnownBy, Payment, Phase, SentBill, Signed } from '../../job/contract.ts';
import type { Given } from '../../provenance/source.ts';
import type { Rational } from '../../quantity/rational.ts';
import type * as ast from '../generated/ast.ts';
import { sourceOfProperty } from '../types/place.ts';
import { nameOf, wordsOf } from '../types/values.ts';
import type { LineReading, Reading } from './reading.ts';
import type { Found, Values } from './values.ts';

/**
 * The contract of a job. Its sums are in the currency of the one that was signed, which is the job's where that says one; a line in another money is
 * told and not read. Whatever is said and could not be read leaves the contract lacking: nobody may bill by it then.
 *
 * @param currency of the job, where it is said
 */
export function readContract(outer: Reading, currency: Given<string> | undefined): Contract | undefined {
    const reading = outer.inner('contract'), word = reading?.block.words[0];
    if (!reading || !word) return undefined;
    const signed = signedOf(reading, currency), money = moneyIn(reading, signed);
    const phases = linesOf<Phase>(reading, 'phase', phaseOf, money), changes = linesOf<AcceptedChange>(reading, 'change', changeOf, money);
    const bills = linesOf<SentBill>(reading, 'bill', billOf, money), payments = linesOf<Payment>(reading, 'payment', paymentOf, money);
    const deposit = money(reading.amount('deposit')), retainage = shareOf(reading, 'retainage'), until = reading.amount('retainage', 'until'), dueDays = reading.wholeNumber('due-days');
    const remit = reading.each('remit', ({ known: { value } }) => value.is === 'text' ? value.text : undefined);
    const said: Readonly<Record<string, unknown>> = { signed, deposit, retainage, 'due-days': dueDays };
    return {
        at: sourceOfProperty(word.line, 'path', word.index),
        lacks: reading.block.unknown.length > 0 || !signed || Object.entries(said).some(([name, value]) => reading.lost(name, value))
            || !until && reading.block.entries.get('retainage')?.lines.some(({ mods }) => mods.length > 0) === true || [phases, changes, bills, payments].some(({ lacks }) => lacks),
        ...signed && { signed }, ...deposit && { deposit }, ...retainage && { retainage },
        ...until && { retainedUntil: { ...until, value: until.value.exact } },
        phases: phases.all, changes: changes.all, bills: bills.all, payments: payments.all, ...dueDays && { dueDays }, remit,
    };
}

/** A sum of money in the contract's own currency. */
type Money = (given: ReturnType<Values['amount']>) => Given<Rational> | undefined;

function signedOf(reading: Reading, currency: Given<string> | undefined): Signed | undefined {
    const given = reading.amount('signed'), on = dayOf(reading.found('signed', 'on'), reading), commit = reading.text('signed', 'at');
    if (!given || !on) return undefined;
    const { at, via, value: { exact, currency: own } } = given;
    if (exact.equals(0)) {
        reading.evaluator.raise({ rule: 'out-of-range', at, via, message: 'What was signed is for nothing. Write the sum of the contract.' });
        return undefined;
    }
    if (currency && own !== currency.value) {
        reading.evaluator.raise({
            rule: 'mixed-currency', at, via, message: `The contract is in ${own}, and the job is in ${currency.value}; no exchange rate is known.`,
            related: [{ at: currency.at, message: `The job is in ${currency.value}.` }],
        });
        return undefined;
    }
    return { sum: { ...given, value: exact }, currency: own, on, ...commit && { commit } };
}

function moneyIn(reading: Reading, signed: Signed | undefined): Money {
    return given => {
        if (!given || !signed) return undefined;
        const { exact, currency } = given.value;
        if (currency === signed.currency) return { ...given, value: exact };
        reading.evaluator.raise({
            rule: 'mixed-currency', at: given.at, via: given.via, message: `This is in ${currency}, and the contract is in ${signed.currency}; no exchange rate is known.`,
            related: [{ at: signed.sum.at, message: `Signed in ${signed.currency}.` }],
        });
        return undefined;
    };
}

/** What stands behind the first value of a line, each by its word. */
type Behind<T> = (value: Found, line: LineReading, money: Money, words: ast.Line) => Line<T>;
interface Line<T> { readonly read: T | undefined; readonly mods: Readonly<Record<string, unknown>> }

/** All lines of a property; `lacks` where one of them, or a word of one, could not be read. */
function linesOf<T>(reading: Reading, name: string, behind: Behind<T>, money: Money): { readonly all: readonly T[]; readonly lacks: boolean } {
    const entry = reading.block.entries.get(name);
    if (!entry) return { all: [], lacks: false };
    let lacks = entry.broken;
    const all = reading.each(name, (found, line) => {
        const { read, mods } = behind(found, reading.line(line, entry.property, reading.block.kind.name), money, line);
        lacks ||= line.mods.some(({ decl }) => mods[decl?.$refText ?? ''] === undefined);
        return read;
    }).map(({ value }) => value);
    return { all, lacks: lacks || all.length < entry.lines.reduce((count, { values }) => count + values.length, 0) };
}

const phaseOf: Behind<Phase> = (found, line, money) => {
    const what = line.given(found, ({ known: { value } }) => value.is === 'text' ? value.text : undefined);
    const share = shareOf(line, 'share'), sum = money(line.amount('sum')), done = shareOf(line, 'done'), knownBy = line.word<KnownBy>('known-by');
    return {
        read: what && { what, ...share && { share }, ...sum && { sum }, ...done && { done }, ...knownBy && { knownBy } },
        mods: { share, sum, done, 'known-by': knownBy },
    };
};

const changeOf: Behind<AcceptedChange> = (found, line, money, words) => {
    const number = line.given(found, one => line.count(one)), on = dayOf(line.found('on'), line);
    const adds = money(line.amount('adds')), deducts = money(line.amount('deducts')), commit = line.text('at'), reference = line.text('reference'), what = line.text('for');
    const done = shareOf(line, 'done'), says = words.mods.map(({ decl }) => decl?.$refText ?? '');
    if (!says.includes('adds') && !says.includes('deducts') && !says.includes('')) {
        line.evaluator.raise({ rule: 'not-said', at: wordsOf(words), message: `${nameOf(words)} also needs its sum: adds 400 USD, or deducts 400 USD.` });
    }
    return {
        read: number && on && (adds ?? deducts) ? {
            number, on, ...adds && { adds }, ...deducts && { deducts }, ...commit && { commit }, ...reference && { reference }, ...what && { what },
            ...done && { done },
        } : undefined,
        mods: { adds, deducts, on, at: commit, reference, for: what, done },
    };
};

const billOf: Behind<SentBill> = (found, line, money) => {
    const number = line.given(found, ({ known: { value } }) => value.is === 'text' ? value.text : undefined);
    const sum = money(line.amount('sum')), on = dayOf(line.found('on'), line);
    return { read: number && sum && on && { number, sum, on }, mods: { sum, on } };
};

const paymentOf: Behind<Payment> = (found, line, money) => {
    const sum = money(line.given(found, one => line.amountOf(one))), on = dayOf(line.found('on'), line), what = line.text('for');
    return { read: sum && on && { sum, on, ...what && { what } }, mods: { on, for: what } };
};

function shareOf(from: Values, name: string): Given<Rational> | undefined {
    const given = from.amount(name);
    return given && { ...given, value: given.value.exact };
}

function dayOf(found: Found | undefined, from: Values): Given<string> | undefined {
    return from.given(found, ({ known: { value } }) => value.is === 'date' ? value.text : undefined);
}
