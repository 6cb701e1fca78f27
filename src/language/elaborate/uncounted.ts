import { spoiledPieces, spoiledWords, type NotComputed, type Spoils } from '../../job/not-computed.ts';
import type { Source } from '../../provenance/source.ts';
import { quoted } from '../types/words.ts';
import type { Raised } from './raised.ts';

/** Something not computed, as it was found: with the arguments it came through, and whether the layout tells it too. */
export interface Uncounted extends Omit<NotComputed, 'spoils'> { readonly spoils: Spoils | 'told'; readonly via?: Raised['via'] }
export type Tell = (one: Uncounted) => void;

/**
 * What is told of it where it is said: as a warning where pieces are left out for it, or a figure may be wrong. An error of the layout takes the
 * place of a room's hint.
 */
export function raisedFor({ at, words, spoils, via }: Uncounted): Raised {
    const pieces = spoils === 'told' ? undefined : spoiledPieces({ at, words, spoils });
    const left = pieces ? ` So these are left out of every list, price and drawing: ${spoiledWords(pieces)}.` : '';
    return { rule: 'not-computed-yet', severity: pieces || spoils === 'figures' ? 'warning' : 'hint', at, message: `Not computed yet: ${words}.${left}`, ...via && { via } };
}

export function toleranceUnused(at: Source, name: string): Raised {
    return raisedFor({ at, words: `what a tolerance of ${quoted(name)} does`, spoils: 'nothing' });
}
