import type { ChangeOrderContent } from './content.ts';

/** In a file of its own: who writes PDF needs no more of what an order is made from. */
export function titleOf({ number, title, draft }: ChangeOrderContent): string {
    return `${draft.length > 0 ? 'Draft of change order' : 'Change order'} ${number}: ${title}`;
}
