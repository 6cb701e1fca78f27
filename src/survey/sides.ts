import { sectionLooking } from '../ceiling/flanks.ts';
import type { Ceiling, WholeSection } from '../ceiling/model.ts';
import { distance } from '../plane/point.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import type { Known, Surface } from './surface.ts';

/** What trim laps over the side, and the side over the blocking, at least: to cover, and for a nail. Common practice, no source. */
export const LEAST_LAP: Ticks = inches('3/8');

/** What the plane is chosen by: what is known of the ceiling along a side, how it hangs, and what has to lap it. */
export interface Bearing {
    readonly known: readonly Known[];
    readonly heldDown: Ticks;
    /** How high the trim before it is, and how thick the blocking behind it; undefined where there is none. */
    readonly trim?: Ticks;
    readonly blocking?: Ticks;
}

/** A side as it hangs under the ceiling that was surveyed; what is known is along its face, from its west or north end. */
export interface SideUnder extends Bearing {
    readonly piece: Piece;
    readonly section: WholeSection;
    readonly length: number;
}

export function bearing({ known, heldDown, trim, blocking }: SideUnder): Bearing {
    return { known, heldDown, ...trim !== undefined && { trim }, ...blocking !== undefined && { blocking } };
}

/** Every side of the take-off: of lines, and of half beams along the walls. */
export function sidesUnder(ceiling: Ceiling, { pieces }: TakeOff, surface: Surface): SideUnder[] {
    const lines = new Map(ceiling.lines.map(line => [line.name, line]));
    const trim = ceiling.beams?.trimHeight?.ticks;
    return pieces.flatMap((piece): SideUnder[] => {
        const around = piece.on === null ? undefined : ceiling.around[piece.on];
        const line = lines.get(piece.line ?? ''), section = line ? sectionLooking(line, piece.on) : around?.kind === 'half-beam' ? around.section : undefined;
        if (piece.part !== 'side' || !section) return [];
        // its corners go along its back and then back along its face
        const [, , last, first] = piece.corners, blocking = section.profile.blocking && section.blockingThickness.ticks;
        return [{
            piece, section, length: distance(first, last), known: surface.along(first, last), heldDown: section.heldDown.value.ticks,
            ...trim !== undefined && { trim }, ...blocking !== undefined && { blocking },
        }];
    });
}

/** How deep a hollow may be over a side so that trim and blocking still lap as they should; undefined where neither is there. */
export function deepestHollow({ trim, blocking, heldDown }: Bearing): Ticks | undefined {
    const bounds = [trim, blocking].filter(size => size !== undefined).map(size => size - heldDown - LEAST_LAP);
    return bounds.length === 0 ? undefined : Math.min(...bounds);
}
