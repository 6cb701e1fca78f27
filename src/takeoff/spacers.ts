import { baysOf, channelLow, type Bay } from '../ceiling/bays.ts';
import type { Line } from '../ceiling/model.ts';
import type { Spacers } from '../job/model.ts';
import { term } from '../provenance/why.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { cornersOf, type Setting } from './setting.ts';

/** Pocket screws up into the blocking. Common practice, no source. */
export const POCKET_SCREWS_A_SPACER = 2;

/** Spacers of a line: cut off a board as wide as the channel, hung under the blocking with the grain up and down. */
export function spacersOf(line: Line, setting: Setting): Piece[] {
    const { section } = line, { spacerThickness, spacerWidth } = section, spacers = section.profile.spacers;
    const height = spacers?.height?.value.ticks;
    if (!spacers || !spacerThickness || !spacerWidth || !height) return [];
    const top = section.blockingThickness.ticks, thickness = spacerThickness.ticks;
    const low = channelLow(line) + Math.floor((section.innerWidth.ticks - spacerWidth.ticks) / 2);
    return baysOf(line).flatMap(bay => spacerStarts(bay, thickness, spacers).flatMap((start, i) => pieceOf({
        part: 'spacer', line: line.name, bay: bay.number, nth: i + 1, stock: spacers.stock,
        back: height, why: [term('spacer height', 1, height, spacers.height?.at)],
        width: spacerWidth.ticks, thickness, work: [{ kind: 'pocket-holes', count: POCKET_SCREWS_A_SPACER }], fence: spacers.ripWith?.value,
        where: `line ${line.name}, bay ${bay.number}, spacer ${i + 1}`, source: spacers.at,
        corners: cornersOf(line.runs, [start, start + thickness], [low, low + spacerWidth.ticks]), heights: [top, top + height],
    }, setting)));
}

/**
 * Where the spacers of a bay begin, along the line. The centers of the first and the last stand at `fromEnd` from the
 * faces of the coffer, and as many between them as keep any two at most `every` apart, equally. One in the middle serves
 * where it stands within `fromEnd` of both. A bay narrower than a spacer has none. Common practice, no source.
 */
export function spacerStarts(bay: Pick<Bay, 'start' | 'end'>, thickness: Ticks, spacers: Pick<Spacers, 'every' | 'fromEnd'>): Ticks[] {
    const coffer = bay.end - bay.start;
    if (coffer < thickness) return [];
    const fromEnd = Math.max(spacers.fromEnd.value, Math.ceil(thickness / 2));
    const between = coffer - 2 * fromEnd;
    if (between < thickness) return [bay.start + Math.floor((coffer - thickness) / 2)];
    const spaces = Math.min(Math.ceil(between / spacers.every.value), Math.floor(between / thickness));
    return Array.from({ length: spaces + 1 }, (_, i) => bay.start + fromEnd + Math.round((between * i) / spaces) - Math.floor(thickness / 2));
}
