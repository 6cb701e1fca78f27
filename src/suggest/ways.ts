import { featureAt, cutStep } from '../ceiling/limits.ts';
import { lowReach, otherSideOf } from '../ceiling/flanks.ts';
import { joistsOf } from '../ceiling/joists.ts';
import { layOut } from '../ceiling/layout.ts';
import { LineSections } from '../ceiling/lines.ts';
import { unitOf } from '../ceiling/along.ts';
import type { Ceiling, Line, WholeSection } from '../ceiling/model.ts';
import { divide } from '../ceiling/spacing.ts';
import type { Division, Divided as Spaced } from '../ceiling/division.ts';
import type { FileContent } from '../job/file.ts';
import { lineName } from '../job/line-names.ts';
import type { Direction, Grid, Room, Spacing } from '../job/model.ts';
import { atKey } from '../plain/at-key.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { blockingMissesJoist } from '../rules/blocking-misses-joist.ts';
import { footOf, hits, placed, reachAbove, reachThatWay, type Placed } from '../rules/support/in-the-way.ts';
import { reachAlong } from '../takeoff/holding.ts';

/** One direction of a room, to be divided anew. Places from the west or the north. */
export interface Way {
    /** The direction that is divided, and that in which its lines run. */
    readonly along: Direction; readonly runs: Direction;
    readonly start: Ticks; readonly end: Ticks; readonly room: Ticks;
    /** How wide a line is; undefined where its profile does not say enough. */
    width(index: number): Ticks | undefined;
    /** From its west or north face to its center. */
    toCenter(index: number): number;
    /** As the layout itself divides it. */
    divide(spacing: Spacing): Spaced | undefined;
    /** Where the center of a line may not stand, and where it had better not. */
    blocked(index: number): readonly Zone[]; spared(index: number): readonly Zone[];
    /** What lines of this spacing come upon, in a room in which that is no matter of places along a wall. */
    comesUpon?(spacing: Spacing): readonly string[];
    /** Where the middle of a coffer is wanted. */
    readonly middles: readonly Ticks[];
}
/** Between two places, which are free themselves. */
export interface Zone { readonly from: number; readonly to: number; readonly what: string }

export interface Ways {
    readonly across: Way; readonly down: Way;
    /**
     * Four walls along the compass, all lines from wall to wall where the grid has them: then what stands in the way of one direction
     * does so whatever the other is, and lines may be moved.
     */
    readonly plain: boolean;
    /** Whether anything is excluded by plain geometry: not where lines stop at lines, since what one comes upon depends on the other direction then. */
    readonly excludes: boolean;
}

/** Undefined where the room cannot be laid out whatever its grid is. */
export function waysOf(room: Room, grid: Grid, file: FileContent): Ways | undefined {
    const empty = layOut(withoutLines(room, grid)).ceiling, step = cutStep(room.job, []);
    if (!empty || !step) return undefined;
    const excludes = !room.lines.some(({ place, from, until }) => place ?? from ?? until);
    const plain = excludes && empty.square && empty.walls.length === 4 && !grid.alongNorth && !grid.alongEast;
    const sections = new LineSections(room), isBacked = file.allowances.some(({ rule }) => rule === blockingMissesJoist.name);
    const wayOf = (along: Direction): Way => {
        const runs = along === 'east-west' ? 'north-south' : 'east-west', axis = along === 'east-west' ? 'x' : 'y';
        const run = along === 'east-west' ? empty.across : empty.down;
        const feature = featureAt(grid.centeredOn, axis), [origin, far] = run.wallEnds;
        const [start, end] = [run.start - origin, run.end - origin], lays = along === 'east-west' ? grid.layNorthSouth : grid.layEastWest;
        const width = (index: number): Ticks | undefined => sections.whole(lineName(runs, index))?.outerWidth.ticks;
        const beamOf = (index: number): Beam | undefined => {
            const name = lineName(runs, index), section = sections.whole(name);
            if (!section) return undefined;
            const otherSide = otherSideOf(name, runs, section, sections.spec(name), []), low = lowReach({ section, runs, ...otherSide && { otherSide } });
            return { section, low, high: section.outerWidth.ticks - low };
        };
        const toCenter = (index: number): number => beamOf(index)?.low ?? 0;
        const division = (spacing: Spacing): Division => ({
            along, spacing, start, end, room: far - origin, ends: [], step, show: room.job.show.value, name: index => lineName(runs, index), width, toCenter,
            byCenters: lays?.how === 'falling' || lays?.how === 'rising', ...feature && { feature: { ...feature, position: feature.position - origin } },
        });
        const things = plain ? within(placed(room.fixtures), runs, empty) : [];
        const missed = ({ section }: Beam): Zone[] => (plain && !isBacked ? offJoists(section, runs, empty) : []);
        const blocked = zonesOf(beamOf, beam => [...inTheWay(things, axis, beam), ...missed(beam)]);
        const spared = zonesOf(beamOf, beam => keptClear(things, axis, beam));
        return {
            along, runs, start, end, room: far - origin, width, toCenter, divide: spacing => divide(division(spacing), []), blocked, spared,
            ...!plain && excludes && { comesUpon: (spacing: Spacing) => comesUpon(along, spacing, { room, grid, isBacked }) },
            middles: things.filter(({ fixture }) => fixture.wants?.value === 'coffer-center').map(one => one[axis]),
        };
    };
    return { across: wayOf('east-west'), down: wayOf('north-south'), plain, excludes };
}

/** The room without a line in it: what is left between what runs along its walls. */
function withoutLines(room: Room, { centeredOn: _, ...grid }: Grid): Room {
    const one: Spacing = { by: 'number', coffers: { value: 1, at: grid.at, said: false } };
    return { ...room, grid: { ...grid, north: one, east: one }, lines: [], crossings: [], fixtures: [], diagonals: room.diagonals };
}

interface Between { readonly room: Room; readonly grid: Grid; readonly isBacked: boolean }

/**
 * What the lines of one direction come upon, laid out alone: they run from wall to wall, be it into a corner or askew, so they stand there too when those of
 * the other direction are laid out with them.
 */
function comesUpon(along: Direction, spacing: Spacing, { room, grid, isBacked }: Between): string[] {
    const one: Spacing = { by: 'number', coffers: { value: 1, at: grid.at, said: false } }, { centeredOn: _, ...rest } = grid;
    const divided = along === 'east-west' ? { north: spacing, east: one } : { north: one, east: spacing };
    const { ceiling } = layOut({ ...room, grid: { ...rest, ...divided }, crossings: [], tooMuch: undefined });
    if (!ceiling) return [];
    const things = placed(room.fixtures).flatMap(one => (isPassedBy(one, ceiling) ? [] : [one.fixture.name]));
    return [...things, ...isBacked || ceiling.lines.every(line => findsJoists(line, ceiling)) ? [] : [BETWEEN]];
}

function isPassedBy(one: Placed, ceiling: Ceiling): boolean {
    const { fixture: { kind, wants, reachedBy }, half } = one;
    if (wants?.value === 'beam-center' || kind === 'junction-box' && reachedBy) return true;
    const within = hits(one, 0, ceiling).map(({ on }) => on);
    return !hits(one, half, ceiling).some(hit => 'runs' in hit.on && (reachAbove(one, footOf(hit)) === half || within.includes(hit.on)));
}

/** False of a line whose blocking runs along the joists, exactly, between two of them. */
function findsJoists(line: Line, ceiling: Ceiling): boolean {
    const joists = joistsOf(ceiling), { section, runs } = line, unit = unitOf(line), isAskew = Math.min(Math.abs(unit.x), Math.abs(unit.y)) > 0;
    if (!section.profile.blocking || !joists || joists.runs !== runs || joists.all.length === 0 || isAskew) return true;
    const center = runs === 'north-south' ? line.spot.x : line.spot.y;
    return joists.all.some(joist => Math.abs(joist.center - center) <= reachAlong(section.blockingWidth.ticks, joist) + HAIR);
}
/** Less is rounding: what is excluded here the whole check would not pass. */
const HAIR = 40;

/** What a line of this direction may come upon from wall to wall. */
function within(things: readonly Placed[], runs: Direction, { inside }: Ceiling): Placed[] {
    return things.filter(({ x, y }) => (runs === 'north-south' ? y >= inside.north && y <= inside.south : x >= inside.west && x <= inside.east));
}

/** A line's section, and how far it reaches to the west or north of its center and to the other side. */
interface Beam { readonly section: WholeSection; readonly low: number; readonly high: number }

/** Those of a line are worked out once. */
function zonesOf(beamOf: (index: number) => Beam | undefined, of: (beam: Beam) => Zone[]): (index: number) => readonly Zone[] {
    const known = new Map<number, Zone[]>();
    return index => atKey(known, index, () => {
        const beam = beamOf(index);
        return beam ? of(beam).sort((a, b) => a.from - b.from) : [];
    });
}

const ALONG = { x: { x: 1, y: 0 }, y: { x: 0, y: 1 } } as const;

function inTheWay(things: readonly Placed[], axis: 'x' | 'y', beam: Beam): Zone[] {
    return things.flatMap(one => {
        const { fixture: { name, kind, wants, reachedBy } } = one;
        if (wants?.value === 'beam-center' || kind === 'junction-box' && reachedBy) return [];
        return around(one[axis], beam, reachThatWay(one, reachAbove(one, beam.section.depth.ticks), ALONG[axis]), name);
    });
}

function keptClear(things: readonly Placed[], axis: 'x' | 'y', beam: Beam): Zone[] {
    return things.flatMap(one => {
        const { fixture: { name, wants, keepClear } } = one;
        return keepClear && wants?.value !== 'beam-center' ? around(one[axis], beam, reachThatWay(one, one.half + keepClear.value, ALONG[axis]), name) : [];
    });
}

/** Where a line's center stands while it reaches to within `reach` of a place. */
function around(place: number, { low, high }: Beam, reach: number, what: string): Zone[] {
    return [{ from: place - reach - high, to: place + reach + low, what }];
}

/** Between the joists that a line's blocking would run along. */
function offJoists(section: WholeSection, runs: Direction, empty: Ceiling): Zone[] {
    const joists = joistsOf(empty);
    if (!section.profile.blocking || !joists || joists.runs !== runs || joists.all.length === 0) return [];
    const zones: Zone[] = [];
    let reached = -Infinity;
    for (const joist of joists.all) {
        const reach = reachAlong(section.blockingWidth.ticks, joist);
        if (joist.center - reach > reached) zones.push({ from: reached, to: joist.center - reach, what: BETWEEN });
        reached = Math.max(reached, joist.center + reach);
    }
    return [...zones, { from: reached, to: Infinity, what: BETWEEN }];
}
const BETWEEN = 'the joists: blocking would run between two of them';
