import type { Offer } from '../../suggest/model.ts';

/** What an offer is called by between a pane and the server: its words, which no other offer of the room has. */
export function offerKey({ says }: Pick<Offer, 'says'>): string {
    return says.join('; ');
}
