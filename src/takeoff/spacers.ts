import { baysOf, channelLow, type Bay } from '../ceiling/bays.ts';
import { onLine, unitOf } from '../ceiling/along.ts';
import type { Line } from '../ceiling/model.ts';
import type { Spacers } from '../job/model.ts';
import { term } from '../provenance/why.ts';
import type { Point } from '../plane/point.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Corners, Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { cornersOf, type Setting } from './setting.ts';

/** Pocket screws up into the blocking. Common practice, no source. */
export const POCKET_SCREWS_A_SPACER = 2;

/** Spacers of a line: cut off a board as wide as the channel, hung under the blocking with the grain up and down. */
export function spacersOf(line: Line, setting: Setting): Piece[] {
    const { section } = line, { spacerThickness, spacerWidth } = section, spacers = section.profile.spacers;
    if (!spacers?.height || !spacerThickness || !spacerWidth) return [];
    const height = spacers.height.value.ticks, heightAt = spacers.height.at;
    const top = section.blockingThickness.ticks, thickness = spacerThickness.ticks;
    const low = channelLow(line) + Math.floor((section.innerWidth.ticks - spacerWidth.ticks) / 2);
    const across = [low, low + spacerWidth.ticks] as const, isAskew = line.heading.x !== 0 && line.heading.y !== 0;
    const corners = (start: Ticks): Corners => {
        const along = [start, start + thickness] as const;
        return isAskew ? cornersAskew(line, along, spacerWidth.ticks) : cornersOf(line.runs, along, across);
    };
    return baysOf(line).flatMap(bay => spacerStarts(bay, { thickness, width: spacerWidth.ticks }, spacers).flatMap((start, i) => pieceOf({
        part: 'spacer', line: line.name, bay: bay.number, nth: i + 1, stock: spacers.stock,
        back: height, why: [term('spacer height', 1, height, heightAt)],
        width: spacerWidth.ticks, thickness, work: [{ kind: 'pocket-holes', count: POCKET_SCREWS_A_SPACER }], fence: spacers.ripWith?.value,
        where: `line ${line.name}, bay ${bay.number}, spacer ${i + 1}`, source: spacers.at,
        corners: corners(start), heights: [top, top + height],
    }, setting)));
}

/** The side to the west or north first, as of a line along the compass. */
function cornersAskew(line: Line, [from, to]: readonly [Ticks, Ticks], width: Ticks): Corners {
    const u = unitOf(line), aside = line.runs === 'east-west' ? -width / 2 : width / 2;
    const at = (along: Ticks, by: number): Point => { const { x, y } = onLine(line, along); return { x: x - u.y * by, y: y + u.x * by }; };
    return [at(from, aside), at(from, -aside), at(to, -aside), at(to, aside)];
}

/** How near to the ends of a bay the middle of a spacer may stand, so that its corners are clear of what stands there at an angle. */
function nearestToEnds({ leans }: Pick<Bay, 'leans'>, { thickness, width }: SpacerSize): readonly [Ticks, Ticks] {
    const [first, last] = leans.map(lean => Math.ceil((thickness + lean * width) / 2));
    return [first!, last!];
}
interface SpacerSize { readonly thickness: Ticks; readonly width: Ticks }

/**
 * Where the spacers of a bay begin, along the line. The centers of the first and the last stand at `fromEnd` from the
 * faces of the coffer, on the center of the line, or where these stand at an angle so far that they are clear of them; and as many between them as
 * keep any two at most `every` apart, equally. One in the middle serves
 * where it stands within `fromEnd` of both. A bay narrower than a spacer has none. Common practice, no source.
 */
export function spacerStarts(bay: Omit<Bay, 'number'>, size: SpacerSize, spacers: Pick<Spacers, 'every' | 'fromEnd'>): Ticks[] {
    const coffer = bay.end - bay.start, { thickness } = size, nearest = nearestToEnds(bay, size);
    if (coffer < nearest[0] + nearest[1] - thickness % 2) return [];
    const [first, last] = nearest.map(near => Math.max(spacers.fromEnd.value, near)) as [Ticks, Ticks];
    const between = coffer - first - last;
    if (between < thickness) return [bay.start + Math.floor((coffer - thickness + nearest[0] - nearest[1]) / 2)];
    const spaces = Math.min(Math.ceil(between / spacers.every.value), Math.floor(between / thickness));
    return Array.from({ length: spaces + 1 }, (_, i) => bay.start + first + Math.round((between * i) / spaces) - Math.floor(thickness / 2));
}
