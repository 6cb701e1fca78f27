import { stretches } from '../ceiling/bays.ts';
import type { Ceiling } from '../ceiling/model.ts';
import { SIDES } from '../job/model.ts';
import { spliceLetter } from '../takeoff/ids.ts';
import type { Frame } from './frame.ts';
import type { Spot } from './place.ts';

/** The band: its back against the wall, its lower edge where the layout sets it; north and south from wall to wall, the others between. */
export function bandPlaces({ band, room, width, length, inside }: Ceiling): Spot[] {
    if (!band || !room.grid?.perimeter?.stock) return [];
    return SIDES.flatMap(side => {
        const full = side === 'north' || side === 'south';
        const [start, end] = full ? [0, width] : [inside.north, inside.south];
        const [back, looks] = ({ north: [0, 1], south: [length, -1], west: [0, 1], east: [width, -1] } as const)[side];
        return stretches(start, band.splices[side], end).map(([from, to], i, all): Spot => ({
            part: 'band', named: { on: side, nth: spliceLetter(i, all.length) },
            seat: { runs: full ? 'east-west' : 'north-south', middle: (from + to) / 2, across: { back, looks }, down: { foot: band.lowerEdge.ticks } },
            form: { along: to - from, across: band.thickness.ticks, high: band.height.ticks },
        }));
    });
}

/** Ceiling trim: mitered like a picture frame round the inside of every coffer, its back to the sides, its edge to the ceiling. */
export function trimPlaces({ beams, coffers }: Ceiling, frame: Frame): Spot[] {
    const trim = beams?.profile.trim, thick = beams?.trimThickness?.ticks, high = beams?.trimHeight?.ticks;
    if (!trim?.stock || !thick || !high || trim.corners.value !== 'mitered') return [];
    const across = frame['east-west'], down = frame['north-south'];
    const give = Math.max(0, -across.spare, -down.spare);
    return coffers.flatMap(coffer => {
        const column = across.bays[coffer.column - 1]!, row = down.bays[coffer.row - 1]!;
        return SIDES.map((side): Spot => {
            const runs = side === 'north' || side === 'south' ? 'east-west' : 'north-south';
            const bay = runs === 'east-west' ? column : row;
            const [back, looks] = ({ north: [row.start, 1], south: [row.end, -1], west: [column.start, 1], east: [column.end, -1] } as const)[side];
            return {
                part: 'trim', named: { coffer: coffer.number, on: side }, give,
                seat: { runs, middle: (bay.start + bay.end) / 2, across: { back, looks }, down: { top: 0 } },
                form: { along: bay.end - bay.start, across: thick, high, off: [thick, thick] },
            };
        });
    });
}
