import type { Ceiling } from '../ceiling/model.ts';
import type { Survey } from '../job/survey.ts';
import { kept } from '../plain/kept.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import { choosePlane, SCRIBED, type Chosen, type Hanging } from './choose-plane.ts';
import { soundReadings, type SurveyTrouble } from './readings.ts';
import { sidesUnder, type SideUnder } from './sides.ts';
import { heightOf, Surface, type Known, type Plane } from './surface.ts';

/** What is found of a ceiling that was surveyed, with the plane its sides hang by, and what that leaves of every side and spacer. */
export interface Surveyed {
    readonly said: Survey;
    readonly surface: Surface;
    readonly troubles: readonly SurveyTrouble[];
    /** Undefined where no side has a reading on all sides of it. */
    readonly chosen?: Chosen;
    readonly hanging: Hanging;
    readonly sides: readonly SurveyedSide[];
    readonly spacers: readonly SurveyedSpacer[];
}

/** A figure, and how far from the west or north end of the side's face it is. */
export interface Spot { readonly ticks: Ticks; readonly along: Ticks }
/** A stretch along a side's face, from its west or north end. */
export interface Stretch { readonly from: Ticks; readonly to: Ticks }

export interface SurveyedSide {
    readonly under: SideUnder;
    /** The gap between side and ceiling at every place where the ceiling bends, as far as it is known; less than nothing where it has to be scribed. */
    readonly profile: readonly { readonly along: number; readonly gap: number }[];
    /** Where the ceiling is known: the least and the greatest gap between side and ceiling, less than nothing where it has to be scribed. */
    readonly gap?: { readonly least: Spot; readonly most: Spot };
    /** Stretches over which it is scribed, with the depth at the deepest spot. */
    readonly scribes: readonly (Stretch & { readonly deepest: Spot })[];
    /** What the trim laps over the side, and the side over the blocking, where it is least. */
    readonly trimLap?: Spot;
    readonly blockingLap?: Spot;
    /** Stretches over which nothing is known of the ceiling. */
    readonly unknown: readonly Stretch[];
}

/** A spacer, the room between blocking and cleats there, and how far the ceiling hangs below the plane. */
interface SurveyedSpacer { readonly piece: Piece; readonly height: Ticks; readonly room: Ticks; readonly hump: Ticks }

/** Less is rounding, and no stretch. */
const TELLS: Ticks = inches('1/4');

/** Undefined where nobody surveyed the ceiling. */
export const surveyedOf: (ceiling: Ceiling, takeOff: TakeOff) => Surveyed | undefined = kept(surveyed);

function surveyed(ceiling: Ceiling, takeOff: TakeOff): Surveyed | undefined {
    const said = ceiling.room.survey;
    if (!said) return undefined;
    const { points, troubles } = soundReadings(ceiling, said), surface = new Surface(points);
    const hanging = hangingOf(said), under = sidesUnder(ceiling, takeOff, surface), chosen = choosePlane(under, hanging);
    return {
        said, surface, hanging, troubles,
        ...chosen && { chosen }, sides: chosen ? under.map(side => sideBy(side, chosen.plane)) : [],
        spacers: chosen ? spacersBy(ceiling, takeOff, surface, chosen.plane) : [],
    };
}

function hangingOf({ plane }: Survey): Hanging {
    return plane.value === 'following' ? { kind: 'following', slope: plane.fall.value / Math.max(1, plane.over.value) }
        : { kind: 'level', ...plane.reading && { reading: plane.reading.value } };
}

function sideBy(under: SideUnder, plane: Plane): SurveyedSide {
    const { heldDown, known, trim, blocking } = under;
    const spots = known.flatMap(stretch => stretch.map(station => ({ along: station.along, gap: station.up - heightOf(plane, station) + heldDown })));
    const [first] = spots;
    if (!first) return { under, profile: [], scribes: [], unknown: [{ from: 0, to: Math.round(under.length) }] };
    const least = spots.reduce((a, b) => (b.gap < a.gap ? b : a)), most = spots.reduce((a, b) => (b.gap > a.gap ? b : a));
    const spot = ({ along }: { along: number }, ticks: number): Spot => ({ ticks: Math.round(ticks), along: Math.round(along) });
    return {
        under, profile: spots, gap: { least: spot(least, least.gap), most: spot(most, most.gap) },
        scribes: known.flatMap(stretch => scribesOf(stretch, plane, heldDown)),
        ...trim !== undefined && { trimLap: spot(most, trim - most.gap) }, ...blocking !== undefined && { blockingLap: spot(most, blocking - most.gap) },
        unknown: unknownOf(known, under.length),
    };
}

/** Where a side runs into the ceiling, and how deep. */
function scribesOf(stretch: Known, plane: Plane, heldDown: Ticks): SurveyedSide['scribes'] {
    const found: { from: number; to: number; deepest: { ticks: number; along: number } }[] = [];
    const into = stretch.map(station => ({ along: station.along, depth: heightOf(plane, station) - station.up - heldDown }));
    let open: (typeof found)[number] | undefined;
    into.forEach((spot, i) => {
        const before = into[i - 1];
        const crossing = before ? before.along + (spot.along - before.along) * before.depth / (before.depth - spot.depth) : spot.along;
        if (spot.depth > 0) {
            if (!open) found.push(open = { from: crossing, to: spot.along, deepest: { ticks: spot.depth, along: spot.along } });
            open.to = spot.along;
            if (spot.depth > open.deepest.ticks) open.deepest = { ticks: spot.depth, along: spot.along };
        } else if (open) {
            open.to = crossing;
            open = undefined;
        }
    });
    return found.filter(({ deepest }) => deepest.ticks > SCRIBED).map(({ from, to, deepest }) => ({
        from: Math.round(from), to: Math.round(to), deepest: { ticks: Math.round(deepest.ticks), along: Math.round(deepest.along) },
    }));
}

function unknownOf(known: readonly Known[], length: number): Stretch[] {
    const edges = [0, ...known.flatMap(stretch => [stretch[0]!.along, stretch.at(-1)!.along]), length];
    return edges.flatMap((from, i) => {
        const to = edges[i + 1];
        return i % 2 === 0 && to !== undefined && to - from > TELLS ? [{ from: Math.round(from), to: Math.round(to) }] : [];
    });
}

function spacersBy({ lines }: Ceiling, { pieces }: TakeOff, surface: Surface, plane: Plane): SurveyedSpacer[] {
    const sections = new Map(lines.map(({ name, section }) => [name, section]));
    return pieces.flatMap((piece): SurveyedSpacer[] => {
        const section = piece.line === null ? undefined : sections.get(piece.line);
        const height = section?.profile.spacers?.height?.value.ticks, room = section?.spacerRoom?.ticks;
        if (piece.part !== 'spacer' || height === undefined || room === undefined) return [];
        const center = { x: (piece.box.west + piece.box.east) / 2, y: (piece.box.north + piece.box.south) / 2 }, up = surface.at(center);
        return up === undefined ? [] : [{ piece, height, room, hump: Math.round(heightOf(plane, center) - up) }];
    });
}
