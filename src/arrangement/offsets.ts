import type { Ticks } from '../quantity/ticks.ts';
import type { Beam, BottomBoard, HalfBeam, Perimeter, SideBoard } from './plan.ts';

/**
 * How far each edge of a beam's flank lies from its center line, or from the wall: ticks, halves where an inside or a play is
 * odd. Everything else is offsets of carriers crossing each other. Common practice, no source.
 *
 *     of a line           face = inside/2 + side    back = inside/2    blocking = (inside - narrower)/2
 *     bottom              between the sides (inside - play)/2, under them inside/2 + side + beyond, let in inside/2 + let in - play/2
 *     of a half beam      face = inside + side      back = blocking = inside; its bottom has no play
 *     of band, bare wall  all of them its thickness, or nothing
 */
export interface Offsets { readonly face: number; readonly back: number; readonly bottom: number; readonly blocking: number }

export function offsetsOfBeam(beam: Beam, side: 'left' | 'right'): Offsets {
    if (beam.kind === 'solid') {
        const half = beam.width / 2;
        return { face: half, back: half, bottom: half, blocking: half };
    }
    const half = beam.inside / 2, board = beam[side];
    return {
        face: half + board.thickness, back: half, blocking: (beam.inside - (beam.blocking?.narrower ?? 0)) / 2,
        bottom: half + beyondTheBack(beam.bottom, board, beam.bottom?.play ?? 0),
    };
}

export function offsetsOfWall(perimeter: Perimeter): Offsets {
    switch (perimeter.kind) {
        case 'bare': return { face: 0, back: 0, bottom: 0, blocking: 0 };
        case 'band': return { face: perimeter.thickness, back: perimeter.thickness, bottom: perimeter.thickness, blocking: perimeter.thickness };
        case 'half-timber': return { face: perimeter.width, back: perimeter.width, bottom: perimeter.width, blocking: perimeter.width };
        case 'half-beam': return {
            face: perimeter.inside + perimeter.side.thickness, back: perimeter.inside, blocking: perimeter.inside,
            bottom: perimeter.inside + beyondTheBack(perimeter.bottom, perimeter.side, 0),
        };
    }
}

function beyondTheBack(bottom: BottomBoard | undefined, { thickness, letIn = 0 }: SideBoard, play: Ticks): number {
    switch (bottom?.place) {
        case 'under-sides': return thickness + bottom.by;
        case 'in-rabbets': return letIn - play / 2;
        case 'between-sides': return 0 - play / 2;
        case undefined: return 0;
    }
}

/** Where the parts of a beam hang, from the ceiling down, in ticks. */
interface Heights {
    readonly bottomTop: Ticks; readonly bottomFoot: Ticks;
    readonly sideFoot: Ticks;
    readonly blockingFoot: Ticks;
    readonly cleatTop: Ticks; readonly cleatFoot: Ticks;
}

/** Sides reach down to the depth, or to the bottom under them; cleats hang one bottom above the lower edge of the bottom. */
export function heightsOf({ depth, bottom, blocking, cleats }: Pick<HalfBeam, 'depth' | 'bottom' | 'blocking' | 'cleats'>, cleatHeight = cleats?.height ?? 0): Heights {
    const bottomTop = depth - (bottom?.thickness ?? 0);
    return {
        bottomTop, bottomFoot: depth, sideFoot: bottom?.place === 'under-sides' ? bottomTop : depth,
        blockingFoot: blocking?.thickness ?? 0, cleatTop: bottomTop - cleatHeight, cleatFoot: bottomTop,
    };
}
