import type { Ceiling } from '../ceiling/model.ts';
import { grouped } from '../plain/groups.ts';
import { inches } from '../quantity/rational.ts';
import { roundDown } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import { SCRIBED } from './choose-plane.ts';
import { heightOf, type Plane, type Surface } from './surface.ts';

/** A spacer, the room between blocking and cleats there, and how far the ceiling hangs below the plane. */
export interface SurveyedSpacer { readonly piece: Piece; readonly height: Ticks; readonly room: Ticks; readonly hump: Ticks }

/** Less is what interpolation rounds. */
const ROUNDING: Ticks = inches('1/512');

/** The spacers over which the ceiling is known. */
export function spacersBy({ lines }: Ceiling, { pieces }: TakeOff, surface: Surface, plane: Plane): SurveyedSpacer[] {
    const sections = new Map(lines.map(({ name, section }) => [name, section]));
    return pieces.flatMap((piece): SurveyedSpacer[] => {
        const section = piece.line === null ? undefined : sections.get(piece.line);
        const height = section?.profile.spacers?.height?.value.ticks, room = section?.spacerRoom?.ticks;
        if (piece.part !== 'spacer' || height === undefined || room === undefined) return [];
        const center = { x: (piece.box.west + piece.box.east) / 2, y: (piece.box.north + piece.box.south) / 2 }, up = surface.at(center);
        return up === undefined ? [] : [{ piece, height, room, hump: Math.round(heightOf(plane, center) - up) }];
    });
}

/** Those that have too little room where the ceiling hangs low, and are not too high everywhere: that is a mistake of the section. */
export function crowdedSpacers(spacers: readonly SurveyedSpacer[]): SurveyedSpacer[] {
    return spacers.filter(({ height, room, hump }) => height <= room && height - (room - hump) > SCRIBED);
}

/** How high at the most spacers are cut that are crowded, the lowest first, with those that are cut so. */
export interface Shortened { readonly most: Ticks; readonly spacers: readonly SurveyedSpacer[] }

/** Those that have to be cut shorter than the rest, by what they are cut to at a mark of the tape: the lowest first. */
export function shortenedSpacers(spacers: readonly SurveyedSpacer[], step: Ticks): Shortened[] {
    const to = grouped(crowdedSpacers(spacers), spacer => mostOfSpacer(spacer, step));
    return [...to].map(([most, same]) => ({ most, spacers: same })).sort((a, b) => a.most - b.most);
}

/** The highest that a spacer may be there, at a mark of the tape. */
export function mostOfSpacer({ room, hump }: SurveyedSpacer, step: Ticks): Ticks {
    return roundDown(room - hump + ROUNDING, step);
}
