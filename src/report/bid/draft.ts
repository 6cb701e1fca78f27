/**
 * Stands on a page that is to be signed, and on each of its drawings, while something of it is open. In a file of its own: who writes PDF
 * needs no more of what a bid is made from.
 */
export const DRAFT = 'Draft, not to be signed';
