import type { Piece as Strip } from '../arrangement/model.ts';
import type { Band, Ceiling, WholeSection } from '../ceiling/model.ts';
import { sectionAt } from '../ceiling/flanks.ts';
import { cleatFootOf, moldingOf, seatOf } from '../ceiling/section.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { roundDown } from '../quantity/round.ts';
import type { Part } from '../takeoff/model.ts';
import { blankOf } from '../takeoff/panels.ts';
import type { Form, Seat } from './stand.ts';

/** What a piece of the arrangement is made of, by the sections alone: its form but for its length, and what sets its height. */
export interface Board extends Pick<Form, 'across' | 'high' | 'rabbet'> {
    readonly part: Part;
    readonly down: Seat['down'];
    /** It stands in the middle of its place, and not with its back against something. */
    readonly centered: boolean;
    readonly press?: Ticks;
}

export function formAt(strip: Strip, ceiling: Ceiling): Board | undefined {
    switch (strip.part) {
        case 'trim': return trimBoard(ceiling);
        case 'panel': return panelBoard(strip, ceiling);
        default: {
            const line = ceiling.lines.find(one => one.name === strip.of), own = ceiling.around[strip.of];
            if (line) return boardOfBeam(strip.part, strip.flank ? sectionAt(line, strip.flank) : line.section, {});
            return own?.kind === 'band' ? bandBoard(own) : own ? boardOfBeam(strip.part, own.section, { width: strip.part === 'bottom' ? own.bottomWidth.ticks : own.width.ticks }) : undefined;
        }
    }
}

/** `width`: of a half beam, what lies in it is ripped to that, its back against the wall. */
function boardOfBeam(part: Strip['part'], section: WholeSection, { width }: { readonly width?: Ticks }): Board | undefined {
    const {
        blockingWidth, blockingThickness, bottomWidth, bottomThickness, sideThickness, sideHeight, heldDown, cleatThickness, cleatHeight, profile,
    } = section;
    const lies = { centered: width === undefined };
    switch (part) {
        case 'blocking':
            return profile.blocking?.stock && { part, ...lies, across: width ?? blockingWidth.ticks, high: blockingThickness.ticks, down: { top: 0 } };
        case 'bottom':
            return profile.bottom?.stock && {
                part, ...lies, across: width ?? bottomWidth.ticks, high: bottomThickness.ticks,
                ...width === undefined && { press: profile.bottom.press?.value }, down: { top: seatOf(section) },
            };
        case 'side': {
            const rabbet = profile.sides?.rabbet?.value;
            return profile.sides?.stock && {
                part, centered: false, across: sideThickness.ticks, high: sideHeight.ticks, down: { top: heldDown.value.ticks },
                ...rabbet && { rabbet: { width: rabbet.width.ticks, height: rabbet.height.ticks, edge: rabbet.edge, face: rabbet.face } },
            };
        }
        case 'cleat': case 'wall-cleat':
            return profile.cleats?.stock && cleatThickness && cleatHeight && { part: 'cleat', centered: false, across: cleatThickness.ticks, high: cleatHeight.ticks, down: { foot: cleatFootOf(section) } };
        case 'beam': return profile.solid?.stock && {
            part: 'timber', ...lies, across: width ?? section.outerWidth.ticks, high: section.depth.ticks, down: { top: 0 },
        };
        case 'molding': {
            const hangs = moldingOf(section);
            if (!hangs || !profile.under?.stock) return undefined;
            return { part, centered: false, across: hangs.inside + hangs.beyond, high: hangs.foot - hangs.top, down: { foot: hangs.foot } };
        }
        default: return undefined;
    }
}

/** Its back against the wall, its lower edge where the layout sets it. */
function bandBoard(band: Band): Board | undefined {
    return band.perimeter.stock ? { part: 'band', centered: false, across: band.thickness.ticks, high: band.height.ticks, down: { foot: band.lowerEdge.ticks } } : undefined;
}

/** Its back to the sides, its edge to the ceiling. */
function trimBoard({ beams }: Ceiling): Board | undefined {
    const thick = beams?.trimThickness?.ticks, high = beams?.trimHeight?.ticks;
    return beams?.profile.trim?.stock && thick && high ? { part: 'trim', centered: false, across: thick, high, down: { top: 0 } } : undefined;
}

/** In the middle of its place, its underside where all heights are counted from. */
function panelBoard({ width, shape }: Strip, { beams, room }: Ceiling): Board | undefined {
    const back = beams?.profile.back, high = back?.thickness?.value.ticks, step = room.job.cutTo.value;
    return back?.stock && high ? { part: 'panel', centered: true, across: shape ? blankOf(width, step) : roundDown(width, step), high, down: { foot: 0 } } : undefined;
}
