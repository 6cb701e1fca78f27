import type { Piece as Strip } from '../arrangement/model.ts';
import type { Ceiling, Line } from '../ceiling/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Part } from '../takeoff/model.ts';
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
        case 'band': return bandBoard(ceiling);
        case 'trim': return trimBoard(ceiling);
        default: {
            const line = ceiling.lines.find(one => one.name === strip.of);
            return line && boardOfLine(strip.part, line);
        }
    }
}

function boardOfLine(part: Strip['part'], line: Line): Board | undefined {
    const { blockingWidth, blockingThickness, bottomWidth, bottomThickness, sideThickness, sideHeight, heldDown, cleatThickness, cleatHeight, depth, profile } = line.section;
    switch (part) {
        case 'blocking':
            return profile.blocking?.stock && { part, centered: true, across: blockingWidth.ticks, high: blockingThickness.ticks, down: { top: 0 } };
        case 'bottom':
            // bottoms go up until they meet the cleats
            return profile.bottom?.stock && {
                part, centered: true, across: bottomWidth.ticks, high: bottomThickness.ticks, press: profile.bottom.press?.value,
                down: { top: profile.cleats ? cleatFoot(line) : depth.ticks - bottomThickness.ticks },
            };
        case 'side': {
            const rabbet = profile.sides?.rabbet?.value;
            return profile.sides?.stock && {
                part, centered: false, across: sideThickness.ticks, high: sideHeight.ticks, down: { top: heldDown.value.ticks },
                ...rabbet && { rabbet: { width: rabbet.width.ticks, height: rabbet.height.ticks, edge: rabbet.edge } },
            };
        }
        case 'cleat':
            return profile.cleats?.stock && cleatThickness && cleatHeight && { part, centered: false, across: cleatThickness.ticks, high: cleatHeight.ticks, down: { foot: cleatFoot(line) } };
        default: return undefined;
    }
}

/** Cleats are set with a block of the bottom's own stock unless the text says otherwise. */
function cleatFoot({ section: { depth, bottomThickness, profile } }: Line): Ticks {
    return depth.ticks - (profile.cleats?.gauge?.value.ticks ?? bottomThickness.ticks);
}

/** Its back against the wall, its lower edge where the layout sets it. */
function bandBoard({ band, room }: Ceiling): Board | undefined {
    return band && room.grid?.perimeter?.stock ? { part: 'band', centered: false, across: band.thickness.ticks, high: band.height.ticks, down: { foot: band.lowerEdge.ticks } } : undefined;
}

/** Its back to the sides, its edge to the ceiling. */
function trimBoard({ beams }: Ceiling): Board | undefined {
    const thick = beams?.trimThickness?.ticks, high = beams?.trimHeight?.ticks;
    return beams?.profile.trim?.stock && thick && high ? { part: 'trim', centered: false, across: thick, high, down: { top: 0 } } : undefined;
}
