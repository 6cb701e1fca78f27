import { printAmount } from '../../quantity/money.ts';
import type { Rational } from '../../quantity/rational.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import type { CsvText } from '../../text/fit.ts';
import { titleOf, type House } from '../house.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import { faultsOf, nameOf, type Billing, type Invoice } from './content.ts';

const HEADER = ['job', 'invoice', 'kind', 'what', 'on', 'value', 'done_percent', 'amount', 'currency'] as const;
type Row = Readonly<Partial<Record<(typeof HEADER)[number], Cell>>>;

/**
 * A row for each line of what is due: the amounts of `work`, `change`, `retainage`, `deposit` and `payment` add up to that of `due`. What was signed, what a
 * change comes to, what was billed before and what is left have a value, and no amount. Above them, why it is not fit to be sent.
 */
export function csvInvoices(invoices: readonly { readonly house: House; readonly invoice: Invoice }[], { number }: Billing): CsvText {
    return csvStanding(HEADER, invoices.map(({ house, invoice }) => ({
        standing: standingOfRooms(house.rooms),
        rows: [...faultsOf(invoice).map((what): Row => ({ kind: 'draft', what })), ...'none' in invoice ? [] : rowsOf(house, invoice)].map(row => rowOf(HEADER, { job: titleOf(house.job), invoice: number, ...row })),
    })));
}

function rowsOf({ job: { contract } }: House, { bill }: Extract<Invoice, { bill: unknown }>): Row[] {
    const { toDate: { currency, signed, sum }, work, retained, ahead, payments, before, due, toFinish } = bill;
    // a number, since a text that begins with a minus would be taken for a formula
    const money = (amount: Rational): number => Number(printAmount(amount));
    return [
        { kind: 'signed', on: contract!.signed!.on.value, value: money(signed), currency },
        { kind: 'contract to date', value: money(sum), currency },
        ...work.map((line): Row => ({
            kind: 'change' in line.of ? 'change' : 'work', what: nameOf(line), ...'change' in line.of && { on: line.of.change.on.value },
            value: money(line.value), done_percent: line.done.mul(100).valueOf(), amount: money(line.earned), currency,
        })),
        ...retained.gt(0) ? [{ kind: 'retainage', amount: money(retained.neg()), currency }] : [],
        ...ahead.gt(0) ? [{ kind: 'deposit', amount: money(ahead), currency }] : [],
        ...payments.map((payment): Row => ({ kind: 'payment', what: payment.what?.value ?? null, on: payment.on.value, amount: money(payment.sum.value.neg()), currency })),
        { kind: 'due', amount: money(due), currency },
        ...before.map((one): Row => ({ kind: 'billed before', what: one.number.value, on: one.on.value, value: money(one.sum.value), currency })),
        { kind: 'left', value: money(toFinish), currency },
    ];
}
