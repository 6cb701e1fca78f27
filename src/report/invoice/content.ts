import { billOf, type Bill, type WorkLine } from '../../billing/bill.ts';
import { toDate } from '../../billing/to-date.ts';
import type { Contract, KnownBy, Payment } from '../../job/contract.ts';
import { counted, listed } from '../../plain/words.ts';
import type { Given } from '../../provenance/source.ts';
import { printMoney, roundMoney } from '../../quantity/money.ts';
import type { Rational } from '../../quantity/rational.ts';
import { percentText } from '../estimate/words.ts';
import { titleOfHouse, type House } from '../house.ts';
import { standingOfRooms } from '../standing.ts';
import { piecesDone, shareOf, type Agreed, type PiecesDone } from './pieces-there.ts';

/** What the client is asked to pay, and for what. No cost, no rate and no hour of ours is in it. */
export interface InvoiceContent {
    /** The house. */
    readonly title: string;
    readonly number: string;
    readonly isFinal: boolean;
    readonly contractor?: string; readonly client?: string;
    /** As it was given; the program looks at no clock. */
    readonly date?: string;
    /** Why it is not fit to be sent yet. */
    readonly draft: readonly string[];
    /** What was signed, each change, and what they come to. */
    readonly contract: readonly SumLine[];
    /** Every line of the schedule of values, and every change. */
    readonly work: readonly WorkRow[];
    /** How it is known what is done, where it is worked out. */
    readonly known: readonly string[];
    /** From what is done to what is due. */
    readonly sums: readonly SumLine[];
    /** How it stands with the contract once this is paid. */
    readonly after: readonly SumLine[];
    readonly terms: readonly string[];
    readonly cautions: readonly string[];
}
interface SumLine { readonly what: string; readonly amount: string; readonly strong: boolean }
interface WorkRow { readonly what: string; readonly value: string; readonly done: string; readonly earned: string }

/** As it was asked for. */
export interface Billing { readonly number: string; readonly date?: string; readonly final: boolean }

/** A bill with its words, or why there is none. */
export type Invoice = { readonly content: InvoiceContent; readonly bill: Bill } | { readonly none: string; readonly because: 'no contract' | 'unfit' | 'nothing due'; readonly draft: readonly string[] };

/**
 * The bill of a house by the contract of its job. It never asks for more than the contract to date: where lines contradict each other there is none.
 * @param agreed the house as it was at the commits that something was agreed for, as far as they are known: what is done is counted by their cut lists
 */
export function invoiceOf(house: House, { number, date, final }: Billing, agreed: readonly Agreed[] = []): Invoice {
    const { job, rooms } = house, { contract } = job, of = titleOfHouse(house);
    const none = (words: string, because: 'no contract' | 'unfit' | 'nothing due' = 'unfit'): Invoice => ({ none: words, because, draft: [] });
    if (!contract) return none(`Nothing is billed for ${of}: its job has no contract. Write \`contract { signed … }\` into it.`, 'no contract');
    const now = toDate(contract);
    if (!now) return none(`Nothing is billed for ${of}: not all of its contract could be read. \`cofferwright check\` says where.`);
    const there = doneByPieces(house, contract, agreed);
    const bill = billOf(contract, by => { const pieces = there.get(by); return pieces && shareOf(pieces); }, final);
    if (!bill) return none(`Nothing is billed for ${of}: a phase is known by its pieces, and not every room could be laid out.`);
    const money = (amount: Rational): string => printMoney(amount, now.currency);
    if (!bill.isConsistent) return none(`Nothing is billed for ${of}: its contract contradicts itself. \`cofferwright check\` says where.`);
    if (final && bill.undone.length > 0) return none(`There is no final bill for ${of} yet: ${bill.undone.map(line => `${nameOf(line)} is ${percentText(line.done)} done`).join(', ')}.`);
    const notCounted = [...there].flatMap(([by, pieces]) => notCountedText(by, pieces)), draft = [...notCounted, ...draftOf(house)];
    if (bill.due.lte(0)) {
        const sums = `${money(bill.earned)} is done, ${bill.retained.equals(0) ? '' : `${money(bill.retained)} of it is retained, `}and ${money(now.paid)} is paid.`;
        return { none: [`Nothing is due for ${of}: ${sums}`, ...notCounted].join(' '), because: 'nothing due', draft };
    }
    const contractor = rooms.find(({ room }) => room.rates.bid.contractor)?.room.rates.bid.contractor?.value;
    return {
        bill,
        content: {
            title: of, number, isFinal: final, draft,
            ...contractor !== undefined && { contractor }, ...job.client && { client: job.client.value }, ...date !== undefined && { date },
            contract: contractLines(bill, contract, money),
            work: bill.work.map(line => ({ what: nameOf(line), value: money(line.value), done: percentText(line.done), earned: money(line.earned) })),
            known: [...there].map(([by, { all, done, commit }]) =>
                `${done} of ${counted(all, 'piece')} of ${listed(rooms.map(({ room }) => room.title ?? room.name))} are ${by === 'cut' ? 'cut' : 'up'}${commit === undefined ? '' : `, by the cut list of the drawings at ${commit}`}.`),
            sums: sumLines(bill, contract.retainage?.value, money),
            after: afterLines(bill, money),
            terms: [
                ...contract.dueDays ? [contract.dueDays.value === 0 ? 'Due at once.' : `Due ${counted(contract.dueDays.value, 'day')} after the date above.`] : [],
                ...contract.remit.map(({ value }) => value),
            ],
            cautions: CAUTIONS,
        },
    };
}

/** Common practice, no source. */
const CAUTIONS = [
    'Whether sales tax is due on this work, and on which part of it, is for local law; the sums are those of the contract.',
    'How much may be kept back and when it is paid out, what a deposit may be, and which notices, waivers and rights of lien go with a payment, is for the contract and local law. Ask somebody who is licensed to advise.',
];

/** Why it is not fit to be sent, or that nothing is due not fit to be believed. */
export function faultsOf(invoice: Invoice): readonly string[] {
    return 'none' in invoice ? invoice.draft : invoice.content.draft;
}

/** What is done, for every way in which a phase is known by its pieces. */
function doneByPieces(house: House, contract: Contract, agreed: readonly Agreed[]): ReadonlyMap<KnownBy, PiecesDone> {
    const ways = (['cut', 'put-up'] as const).filter(by => contract.phases.some(({ knownBy }) => knownBy?.value === by));
    return new Map(ways.flatMap(by => {
        const done = piecesDone(house, by, contract, agreed);
        return done ? [[by, done] as const] : [];
    }));
}

/** What was cut or put up before the ceiling was changed, and is wanted otherwise now: the bill would be less without a word. */
function notCountedText(by: KnownBy, { notCounted, commit }: PiecesDone): string[] {
    const many = notCounted.size, isOne = many === 1, where = commit === undefined ? 'in the present cut list' : `in the cut list of the drawings at ${commit}, nor in the present one,`;
    if (many === 0) return [];
    if (by === 'put-up') return [`${listed([...notCounted].map(({ value }) => value))}, recorded as up, ${isOne ? 'is' : 'are'} not ${where.replace(/,$/, '')}, so ${isOne ? 'it is' : 'they are'} not counted as done.`];
    return [`${counted(many, 'piece')} recorded as cut ${isOne ? 'is' : 'are'} not ${where} as ${isOne ? 'it was' : 'they were'} cut, so ${isOne ? 'it is' : 'they are'} not counted as done.`];
}

function draftOf({ rooms }: House): string[] {
    const { errors, notComputed } = standingOfRooms(rooms);
    return [
        ...errors.length > 0 || rooms.some(({ takeOff }) => !takeOff) ? ['Something in the contract or in the ceiling as it is drawn is still wrong.'] : [],
        ...notComputed.length > 0 ? ['Not everything that has to be considered is worked out yet.'] : [],
    ];
}

/** `Beams up`; `Change 2: A fourth line of beams`. */
export function nameOf({ of }: WorkLine): string {
    if (!('change' in of)) return of.phase?.what.value ?? 'All of the work';
    const { number, what } = of.change;
    return what ? `Change ${number.value}: ${what.value}` : `Change ${number.value}`;
}

type Print = (amount: Rational) => string;

function contractLines({ toDate: now }: Bill, { signed }: NonNullable<House['job']['contract']>, money: Print): SumLine[] {
    return [
        { what: [`Signed on ${signed!.on.value}`, ...drawingsAt(signed!.commit)].join(', '), amount: money(now.signed), strong: false },
        ...now.changes.map(({ change, value }) => ({
            what: `${[`Change ${change.number.value}, accepted on ${change.on.value}`, ...drawingsAt(change.commit), ...change.reference ? [change.reference.value] : []].join(', ')}${change.what ? `: ${change.what.value}` : ''}`,
            amount: signedText(value, money), strong: false,
        })),
        { what: 'The contract to date', amount: money(now.sum), strong: true },
    ];
}

/** The state of the drawings that something was agreed for. */
function drawingsAt(commit: Given<string> | undefined): string[] {
    return commit ? [`drawings at ${commit.value}`] : [];
}

function sumLines(bill: Bill, share: Rational | undefined, money: Print): SumLine[] {
    const { earned, retained, retainedOf, ahead, payments, due, isFinal } = bill;
    return [
        { what: isFinal ? 'All of the work' : 'Work done to date', amount: money(earned), strong: false },
        ...retained.gt(0) ? [{ what: `Retainage, ${percentText(share!)} of ${retainedOf.lt(earned) ? `the first ${money(retainedOf)}` : 'that'}`, amount: signedText(retained.neg(), money), strong: false }] : [],
        ...ahead.gt(0) ? [{ what: 'Deposit, due before it is earned', amount: signedText(ahead, money), strong: false }] : [],
        ...payments.map(payment => ({ what: paidText(payment), amount: signedText(roundMoney(payment.sum.value).neg(), money), strong: false })),
        { what: 'Due with this bill', amount: money(due), strong: true },
    ];
}

function paidText({ on, what }: Payment): string {
    return `Paid on ${on.value}${what ? `, ${what.value}` : ''}`;
}

function afterLines({ before, open, retained, toFinish, toDate: now }: Bill, money: Print): SumLine[] {
    const line = (what: string, amount: Rational): SumLine => ({ what, amount: money(amount), strong: false });
    return [
        ...before.length > 0 ? [line(`Billed before (${before.map(({ number, on }) => `${number.value} on ${on.value}`).join(', ')})`, now.billed), line('Of that not paid yet, and in this bill', open)] : [],
        ...retained.gt(0) ? [line('Retainage held by then', retained)] : [],
        line(retained.gt(0) ? 'Left of the contract once this is paid, retainage with it' : 'Left of the contract once this is paid', toFinish),
    ];
}

/** `+$1,240.00`, `-$300.00`. */
function signedText(amount: Rational, money: Print): string {
    return amount.gt(0) ? `+${money(amount)}` : money(amount);
}
