import type { Leaf } from '../leaf.ts';
import type { House } from '../house.ts';
import type { InvoiceContent } from './content.ts';
import { WORK_HEAD } from './title.ts';

/** The bill for whoever sends it: with all that is wrong in the house at its head. */
export function invoiceLeaf({ title, number, isFinal, date, draft, contract, work, known, sums, after, terms, cautions }: InvoiceContent, house: House): Leaf {
    const rows = (lines: InvoiceContent['sums']): readonly (readonly string[])[] => lines.map(({ what, amount }) => [what, amount]);
    return {
        title: `${isFinal ? 'FINAL INVOICE' : 'INVOICE'} ${number}${date === undefined ? '' : `, ${date}`}`, of: title, house, head: draft,
        sections: [
            { heading: 'The contract', words: [], table: { head: ['', 'amount'], rows: rows(contract), figures: [1] } },
            { heading: 'What is done', words: known, table: { head: WORK_HEAD.map(word => word.toLowerCase()), rows: work.map(({ what, value, done, earned }) => [what, value, done, earned]), figures: [1, 2, 3] } },
            { heading: 'What is due', words: [], table: { head: ['', 'amount'], rows: rows(sums), figures: [1] } },
            { heading: 'After this bill', words: [], table: { head: ['', 'amount'], rows: rows(after), figures: [1] }, after: terms },
        ],
        notes: [], cautions,
    };
}
