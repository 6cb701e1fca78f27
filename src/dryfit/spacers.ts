import type { Ceiling, Line } from '../ceiling/model.ts';
import { baysOf } from '../ceiling/bays.ts';
import { idOf } from '../takeoff/ids.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import { NEAR } from './meetings.ts';
import { spanOf } from './places.ts';

/**
 * Spacers that are missing: a bay has one at most as far from either end as the profile says, and no two neighbors are farther
 * apart than it says, from middle to middle. One that stands in the middle of a short bay serves both ends. Names of the first
 * one missing in each gap.
 */
export function missingSpacers({ lines, room }: Ceiling, takeOff: TakeOff): string[] {
    return lines.flatMap(line => {
        const { section: { spacerThickness, spacerWidth, profile: { spacers } } } = line;
        if (!spacers?.stock || !spacers.height || !spacerThickness || !spacerWidth) return [];
        const thick = spacerThickness.ticks;
        const mine = takeOff.pieces.filter(({ part, line: of }) => part === 'spacer' && of === line.name);
        return baysOf(line).flatMap(bay => {
            const nearest = bay.leans.map(lean => Math.ceil((thick + lean * spacerWidth.ticks) / 2)) as [number, number], clear = bay.end - bay.start;
            if (clear < nearest[0] + nearest[1]) return [];
            const middles = mine.filter(piece => piece.bay === bay.number).map(piece => middleOf(piece, line)).sort((a, b) => a - b);
            const { value: wanted } = spacers.fromEnd, one = (clear + nearest[0] - nearest[1]) / 2;
            const isOne = clear - Math.max(wanted, nearest[0]) - Math.max(wanted, nearest[1]) < thick;
            const [first, last] = [Math.max(wanted, nearest[0], isOne ? one : 0), Math.max(wanted, nearest[1], isOne ? clear - one : 0)];
            const stops = [bay.start + first - spacers.every.value, ...middles, bay.end - last + spacers.every.value];
            const every = Math.max(spacers.every.value, thick);
            const open = stops.slice(1).findIndex((stop, i) => stop - stops[i]! > every + NEAR);
            return open < 0 && middles.length > 0 ? [] : [idOf(room.name, 'spacer', { line: line.name, bay: bay.number, nth: Math.max(0, open) + 1 })];
        });
    });
}

/** Where along its line it stands. */
function middleOf(piece: Piece, line: Line): number {
    const [low, high] = spanOf(piece, line.heading);
    return (low + high) / 2;
}
