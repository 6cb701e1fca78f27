import type { Part, Piece } from '../takeoff/model.ts';
import type { FirstBay, Spot, StepKind } from './model.ts';

/** What is put up in one go, and when as a rule: common practice, no source. */
export interface Group { readonly kind: StepKind; readonly of: Spot; readonly key: string }

/** In the order in which they come where nothing else is said and nothing stands in the way. */
export const KINDS: readonly StepKind[] = ['panel', 'blocking', 'first-bay', 'spacers', 'sides', 'bottoms', 'moldings', 'band', 'trim'];
const KIND_OF: Readonly<Record<Part, StepKind>> = {
    panel: 'panel', blocking: 'blocking', spacer: 'spacers', side: 'sides', cleat: 'sides', bottom: 'bottoms', timber: 'bottoms', molding: 'moldings', band: 'band', trim: 'trim',
};
/** Done coffer by coffer, from one place of the ladder. */
const BY_COFFER: readonly StepKind[] = ['sides', 'moldings', 'trim'];

export function kindOf(part: Part): StepKind {
    return KIND_OF[part];
}

export function groupOf(piece: Piece, firstBay: FirstBay | null): Group {
    if (firstBay?.pieces.includes(piece.id)) return group('first-bay', { kind: 'coffer', name: String(firstBay.coffer) });
    const kind = kindOf(piece.part);
    if (BY_COFFER.includes(kind) && piece.coffer !== null) return group(kind, { kind: 'coffer', name: String(piece.coffer) });
    return group(kind, piece.line === null ? { kind: 'wall', name: piece.on ?? '' } : { kind: 'line', name: piece.line });
}

function group(kind: StepKind, of: Spot): Group {
    return { kind, of, key: `${kind} ${of.kind} ${of.name}` };
}
