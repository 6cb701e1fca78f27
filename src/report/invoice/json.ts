import { roundMoney } from '../../quantity/money.ts';
import type { Rational } from '../../quantity/rational.ts';
import { printJson } from '../../text/json.ts';
import type { JsonText } from '../../text/fit.ts';
import { moneyJson } from '../amounts-json.ts';
import { jobJson } from '../house-json.ts';
import type { House } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import { nameOf, type Invoice } from './content.ts';
import type { InvoicesJson } from './shape.ts';

export function jsonInvoices(invoices: readonly { readonly house: House; readonly invoice: Invoice }[], files: Files): JsonText {
    return printJson<InvoicesJson>({
        version: 1, kind: 'cofferwright.invoice', standing: standingJson(standingOfRooms(invoices.flatMap(({ house }) => house.rooms))),
        invoices: invoices.flatMap(({ house, invoice }) => ('none' in invoice ? [] : [invoiceJson(house, invoice, files)])),
        none: invoices.flatMap(({ house: { job }, invoice }) => ('none' in invoice ? [{ job: jobJson(job), why: invoice.none }] : [])),
    });
}

function invoiceJson({ job }: House, { bill, content }: Extract<Invoice, { bill: unknown }>, files: Files): InvoicesJson['invoices'][number] {
    const { toDate: { currency, signed, changes, sum }, work, payments, before } = bill, contract = job.contract!;
    const money = (amount: Rational) => moneyJson({ amount: roundMoney(amount), currency });
    return {
        job: jobJson(job), number: content.number, date: content.date ?? null, final: content.isFinal,
        contractor: content.contractor ?? null, client: content.client ?? null, draft: content.draft,
        contract: {
            signed: money(signed), on: contract.signed!.on.value, commit: contract.signed!.commit?.value ?? null,
            source: sourceJson(contract.signed!.sum.at, files),
            changes: changes.map(({ change, value }) => ({
                number: change.number.value, on: change.on.value, amount: money(value), what: change.what?.value ?? null, commit: change.commit?.value ?? null,
                reference: change.reference?.value ?? null, source: sourceJson(change.number.at, files),
            })),
            sum: money(sum),
        },
        work: work.map(line => ({
            what: nameOf(line), change: 'change' in line.of ? line.of.change.number.value : null, value: money(line.value), done: line.done.toFraction(), earned: money(line.earned),
            source: sourceJson('change' in line.of ? line.of.change.number.at : line.of.at, files),
        })),
        earned: money(bill.earned), retained: money(bill.retained), ahead: money(bill.ahead),
        payments: payments.map(({ sum: paid, on, what }) => ({ on: on.value, amount: money(paid.value), what: what?.value ?? null })),
        due: money(bill.due),
        billedBefore: before.map(one => ({ number: one.number.value, on: one.on.value, amount: money(one.sum.value) })),
        open: money(bill.open), left: money(bill.toFinish), dueDays: contract.dueDays?.value ?? null, remit: contract.remit.map(({ value }) => value),
    };
}
