import type { InvoiceContent } from './content.ts';

/** In a file of its own: who writes PDF needs no more of what a bill is made from. */
export function titleOf({ number, title, draft, isFinal }: Pick<InvoiceContent, 'number' | 'title' | 'draft' | 'isFinal'>): string {
    const kind = isFinal ? 'final invoice' : 'invoice';
    return `${draft.length > 0 ? `Draft of ${kind}` : `${kind[0]!.toUpperCase()}${kind.slice(1)}`} ${number}: ${title}`;
}

/** Heads of the columns of the work. */
export const WORK_HEAD = ['Work', 'Value', 'Done', 'Done to date'] as const;
