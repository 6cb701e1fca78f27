import type { Clash, Fault } from '../../dryfit/model.ts';
import type { JobSettings } from '../../job/model.ts';
import { sizesOf } from '../../rules/support/words.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { printJson } from '../../text/json.ts';
import { roomHead } from '../house-json.ts';
import { standingOfRooms } from '../standing.ts';
import { standingJson } from '../standing-json.ts';
import type { ClashJson, DryFitJson, FaultJson } from './shape.ts';
import { closes, faultWords, type RoomFit } from './words.ts';
import type { JsonText } from '../../text/fit.ts';

/** How the cut lists go together. */
export function jsonDryFit(rooms: readonly RoomFit[], files: Files): JsonText {
    return printJson<DryFitJson>({
        version: 1,
        kind: 'cofferwright.dry-fit',
        standing: standingJson(standingOfRooms(rooms)),
        rooms: rooms.map(one => ({
            ...roomHead(one, one.fit !== undefined, one.job, files),
            closes: closes(one),
            looked: one.fit?.looked ?? null,
            faults: one.fit?.faults.map(fault => faultJson(fault, one.job, files)) ?? [],
        })),
    });
}

function faultJson(fault: Fault, job: JobSettings, files: Files): FaultJson {
    const { rule, severity, message } = faultWords(fault, job);
    const piece = 'piece' in fault ? fault.piece : undefined;
    return {
        rule: rule.name,
        severity,
        message,
        pieces: piecesOf(fault),
        source: piece ? sourceJson(piece.source, files) : null,
        clashes: fault.kind === 'misfit' ? fault.clashes.map(clash => clashJson(clash, job)) : [],
    };
}

/** The piece that all of it has in common first, then those that are off like it. */
function piecesOf(fault: Fault): string[] {
    switch (fault.kind) {
        case 'misfit': case 'underside': return [fault.piece, ...fault.alike].map(piece => piece.id);
        case 'coffer': return fault.pieces.map(piece => piece.id);
        case 'missing': case 'doubled': case 'no-place': return [fault.id, ...fault.alike];
    }
}

/** Distances as they were measured, in ticks, which need not be whole along a miter; areas in square inches. */
function clashJson({ kind, other, ticks, touches, wanted }: Clash, job: JobSettings): ClashJson {
    return {
        kind, with: typeof other === 'string' ? other : other.id,
        ticks, text: sizesOf(job)(ticks),
        touches: touches ?? null, wanted: wanted ?? null,
    };
}
