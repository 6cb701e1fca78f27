import type { Ceiling } from '../ceiling/model.ts';
import type { Survey } from '../job/survey.ts';
import { stretchesOver } from '../plane/stretches.ts';
import { kept, keptByName, MOST_ROOMS } from '../plain/kept.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { choosePlane, SCRIBED, type Chosen, type Hanging } from './choose-plane.ts';
import { soundReadings, type SurveyTrouble } from './readings.ts';
import { bearing, LEAST_LAP, sidesUnder, type Bearing, type SideUnder } from './sides.ts';
import { spacersBy, type SurveyedSpacer } from './spacers.ts';
import { heightOf, Surface, type Known, type Plane, type Station } from './surface.ts';

/** What is found of a ceiling that was surveyed, with the plane its sides hang by, and what that leaves of every side and spacer. */
export interface Surveyed {
    readonly said: Survey;
    readonly surface: Surface;
    readonly troubles: readonly SurveyTrouble[];
    /** Readings that lay outside of a wall by no more than a tape tells, and are taken as on it. */
    readonly moved: number;
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

export interface Deep extends Stretch { readonly deepest: Spot }

export interface SurveyedSide {
    readonly under: SideUnder;
    /** The gap between side and ceiling at every place where the ceiling bends, as far as it is known; less than nothing where it has to be scribed. */
    readonly profile: readonly { readonly along: number; readonly gap: number }[];
    /** Where the ceiling is known: the least and the greatest gap between side and ceiling, less than nothing where it has to be scribed. */
    readonly gap?: { readonly least: Spot; readonly most: Spot };
    /** Stretches over which it is scribed, with the depth at the deepest spot. */
    readonly scribes: readonly Deep[];
    /** Stretches over which it laps the blocking too little for a nail, and how thick a shim over the blocking has to be there. */
    readonly shims: readonly Deep[];
    /** What the trim laps over the side, and the side over the blocking, where it is least. */
    readonly trimLap?: Spot;
    readonly blockingLap?: Spot;
    /** Stretches over which nothing is known of the ceiling. */
    readonly unknown: readonly Stretch[];
}

/** Less is rounding, and no stretch. */
const TELLS: Ticks = inches('1/4');

/** Undefined where nobody surveyed the ceiling. */
export const surveyedOf: (ceiling: Ceiling, takeOff: TakeOff) => Surveyed | undefined = kept(surveyed);

/** What takes long is made again only where the readings, or how sides hang under them, are others: not for a price or a lamp. */
const surfaceOf = keptByName((points: readonly { readonly x: Ticks; readonly y: Ticks; readonly up: Ticks }[]) => new Surface(points), MOST_ROOMS);
interface Hung { readonly under: readonly Bearing[]; readonly hanging: Hanging }
const chosenFor = keptByName(({ under, hanging }: Hung) => choosePlane(under, hanging), MOST_ROOMS);

function surveyed(ceiling: Ceiling, takeOff: TakeOff): Surveyed | undefined {
    const said = ceiling.room.survey;
    if (!said) return undefined;
    const { points, troubles, moved } = soundReadings(ceiling, said), { name } = ceiling.room;
    const surface = surfaceOf(name, points.map(({ x, y, up }) => ({ x, y, up })));
    const hanging = hangingOf(said), under = sidesUnder(ceiling, takeOff, surface), chosen = chosenFor(name, { under: under.map(bearing), hanging });
    return {
        said, surface, hanging, troubles, moved,
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
    const gapAt = (station: Station): number => station.up - heightOf(plane, station) + heldDown;
    const spots = known.flatMap(stretch => stretch.map(station => ({ along: station.along, gap: gapAt(station) })));
    const [first] = spots;
    if (!first) return { under, profile: [], scribes: [], shims: [], unknown: [{ from: 0, to: Math.round(under.length) }] };
    const least = spots.reduce((a, b) => (b.gap < a.gap ? b : a)), most = spots.reduce((a, b) => (b.gap > a.gap ? b : a));
    const spot = ({ along }: { along: number }, ticks: number): Spot => ({ ticks: Math.round(ticks), along: Math.round(along) });
    return {
        under, profile: spots, gap: { least: spot(least, least.gap), most: spot(most, most.gap) },
        scribes: known.flatMap(stretch => stretchesOver(stretch.map(station => ({ along: station.along, depth: -gapAt(station) })), SCRIBED)),
        shims: blocking === undefined ? [] : known.flatMap(stretch =>
            stretchesOver(stretch.map(station => ({ along: station.along, depth: gapAt(station) + LEAST_LAP - blocking })), SCRIBED)),
        ...trim !== undefined && { trimLap: spot(most, trim - most.gap) }, ...blocking !== undefined && { blockingLap: spot(most, blocking - most.gap) },
        unknown: unknownOf(known, under.length),
    };
}

function unknownOf(known: readonly Known[], length: number): Stretch[] {
    const edges = [0, ...known.flatMap(stretch => [stretch[0]!.along, stretch.at(-1)!.along]), length];
    return edges.flatMap((from, i) => {
        const to = edges[i + 1];
        return i % 2 === 0 && to !== undefined && to - from > TELLS ? [{ from: Math.round(from), to: Math.round(to) }] : [];
    });
}
