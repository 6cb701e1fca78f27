import type { Cause, Clash, Misfit } from '../../dryfit/model.ts';
import { plural } from '../../job/part.ts';
import type { RelatedPlace } from '../../findings/finding.ts';
import { compassOfEnd } from '../../takeoff/ends.ts';
import { spokenName } from '../../takeoff/ids.ts';
import type { Piece } from '../../takeoff/model.ts';
import type { Found } from '../rule.ts';
import { shortest } from '../../quantity/print-length.ts';
import type { Sizes } from './words.ts';
import { counted, listed } from '../../plain/words.ts';

/** More findings of one rule in one room are no news: `cofferwright dry-fit` tells all of them. */
const MOST = 5;

/** The first of what was found; the last of them says how many more there are. */
export function theFirst(found: readonly Found[]): Found[] {
    const more = found.length - MOST;
    return found.slice(0, MOST).map((one, i) => (more > 0 && i === MOST - 1 ? { ...one, message: `${one.message} There ${more === 1 ? 'is 1 more' : `are ${more} more`} of this kind: \`cofferwright dry-fit\` lists all.` } : one));
}

/** A piece as it is spoken of: "side A-1-north", "bottom 2", "trim 5-north"; or "the ceiling". */
export function nameOf(piece: Pick<Piece, 'id'> | string): string {
    return typeof piece === 'string' ? piece : spokenName(piece.id);
}

/** The first three, and how many others. */
export function some(names: readonly string[], of: string): string {
    return names.length <= 3 ? listed(names) : `${names.slice(0, 2).join(', ')} and ${counted(names.length - 2, `other ${of}`)}`;
}

/** What shows is named before what does not. */
const SHOWN: readonly Piece['part'][] = ['side', 'bottom', 'timber', 'molding', 'trim', 'band', 'cleat', 'spacer', 'blocking', 'panel'];

/** "side A-1-north by 1/32", bottom 2 by 1/16"". */
export function clashWords(clashes: readonly Clash[], say: (clash: Clash) => string): string {
    const rank = ({ other }: Clash): number => typeof other === 'string' ? SHOWN.length : SHOWN.indexOf(other.part);
    return some([...clashes].sort((a, b) => rank(a) - rank(b) || Math.abs(b.ticks) - Math.abs(a.ticks)).map(clash => `${nameOf(clash.other)} ${say(clash)}`), 'piece');
}

/** Where the lines of the text stand that two pieces come from. */
export function relatedTo({ piece, clashes }: Misfit): RelatedPlace[] {
    const other = clashes.map(clash => clash.other).find((one): one is Piece => typeof one !== 'string' && one.source !== piece.source);
    return other ? [{ at: other.source, message: `${nameOf(other)} comes from here` }] : [];
}

/** What of its line of the list is off, and what it makes of that; or that the text has it so. */
export function causeWords({ piece, causes, alike }: Misfit, size: Sizes, otherwise: string): string {
    if (causes.length === 0) return `${otherwise}${likeIt(piece, alike, 'The same goes for')}`;
    return `In the list ${listed(causes.map(cause => causeOf(piece, cause, size)))}. ${FAULT_OF_THE_LIST}${likeIt(piece, alike, 'The same goes for')}`;
}

/** The list is made by the program, so what is off in it is none of the carpenter's doing. */
export const FAULT_OF_THE_LIST = 'That is a mistake in the cut list, not in your file: cut nothing from it, and report it.';

export function likeIt({ part }: Pick<Piece, 'part'>, alike: readonly unknown[], words: string): string {
    return alike.length === 0 ? '' : ` ${words} ${counted(alike.length, `other ${plural(part, 1)}`, `other ${plural(part, 2)}`)}.`;
}

function causeOf(piece: Piece, cause: Cause, size: Sizes): string {
    switch (cause.what) {
        case 'length': return `it is ${size(cause.is)} long and its place takes ${size(cause.wanted)}`;
        case 'width': return `it is ${size(cause.is)} wide and its place takes ${size(cause.wanted)}`;
        case 'thickness': return `it is ${size(cause.is)} thick and its place takes ${size(cause.wanted)}`;
        case 'rabbet width': return `its rabbet is ${size(cause.is)} wide instead of ${size(cause.wanted)}`;
        case 'rabbet height': return `its rabbet is ${size(cause.is)} high instead of ${size(cause.wanted)}`;
        case 'rabbet': return 'its rabbet is missing, or along another edge';
        case 'miter': return `its ${compassOfEnd(piece, cause.end)} end is ${cut(cause.is)} instead of ${cut(cause.wanted)}`;
        case 'hand': return cause.is === null ? 'it has no hand, and it cannot be turned around' : `it is a ${cause.is} one, mitered at the wrong end`;
        case 'face': return `its face is ${size(cause.is)}, and its back less the miters leaves ${size(cause.wanted)}`;
    }
}

function cut(degrees: number): string {
    return degrees === 0 ? 'square' : `mitered at ${shortest(Math.abs(degrees), 2)} degrees${degrees < 0 ? ', longer at the face' : ''}`;
}
