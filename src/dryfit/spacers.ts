import type { Ceiling } from '../ceiling/model.ts';
import { baysOf } from '../ceiling/bays.ts';
import { idOf } from '../takeoff/ids.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { NEAR } from './meetings.ts';

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
            if (bay.end - bay.start < thick) return [];
            const middles = mine.filter(piece => piece.bay === bay.number)
                .map(({ box }) => line.runs === 'east-west' ? (box.west + box.east) / 2 : (box.north + box.south) / 2).sort((a, b) => a - b);
            const fromEnd = Math.max(
                spacers.fromEnd.value, (bay.end - bay.start) / 2 < spacers.fromEnd.value + thick ? (bay.end - bay.start) / 2 : 0, Math.ceil(thick / 2),
            );
            const stops = [bay.start + fromEnd - spacers.every.value, ...middles, bay.end - fromEnd + spacers.every.value];
            const every = Math.max(spacers.every.value, thick);
            const open = stops.slice(1).findIndex((stop, i) => stop - stops[i]! > every + NEAR);
            return open < 0 && middles.length > 0 ? [] : [idOf(room.name, 'spacer', { line: line.name, bay: bay.number, nth: Math.max(0, open) + 1 })];
        });
    });
}
