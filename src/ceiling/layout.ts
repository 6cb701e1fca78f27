import { lineName } from '../job/line-names.ts';
import { SIDES, type Direction, type Grid, type LineSpec, type Room, type Side } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { edgingOf, hung, type Edging } from './band.ts';
import { centerOf } from './bays.ts';
import { tooLongForBoards } from './board-limits.ts';
import { coffersOf, crossingsOf } from './coffers.ts';
import { cornerTroubles } from './corners.ts';
import type { Divided, Division } from './division.ts';
import { cutStep, featureAt, tooMany, tooManySpacers } from './limits.ts';
import { LineSections } from './lines.ts';
import { longestPiece } from './longest.ts';
import type { Around, Ceiling, Layout, Line, Run, Splice, Trouble } from './model.ts';
import { arrangedOf, arrangementTroubles } from './plan.ts';
import { profileTroubles } from './profile-troubles.ts';
import { residueOf } from './residue.ts';
import { shapeOf, type Shape } from './room-shape.ts';
import { divide } from './spacing.ts';
import { splicesOf } from './line-splices.ts';
import { spliceOnCrossings } from './splices.ts';
import { depthTroubles, oncePerPlace, trimTroubles } from './troubles.ts';

/**
 * Lays out one room: walls, band, lines, crossings, coffers, splices, and what rounding leaves. Never throws. Where the
 * text does not say enough there is no `ceiling`, silently; where what it says cannot be built or is not computed, a
 * trouble says so, and there is a ceiling only as far as its figures would still be right.
 */
export function layOut(room: Room): Layout {
    const troubles: Trouble[] = [];
    const sections = new LineSections(room);
    for (const section of sections.all.values()) troubles.push(...profileTroubles(section));
    const ceiling = ceilingOf(room, sections, troubles);
    return { room, sections: sections.all, ...(ceiling && { ceiling }), troubles: oncePerPlace(troubles) };
}

function ceilingOf(room: Room, sections: LineSections, troubles: Trouble[]): Ceiling | undefined {
    const step = cutStep(room.job, troubles);
    const { shape, troubles: walls } = shapeOf(room);
    const rectangle = shape?.rectangle ? shape : undefined;
    const unknown = notSupported(room);
    troubles.push(...walls, ...unknown);
    if (shape && !rectangle) troubles.push({ kind: 'not-supported', what: 'a room that is no rectangle', instead: 'four walls with square corners', at: shape.walls[0]!.at });
    const grid = room.grid;
    const edging = grid && edgingsOf(grid, sections, troubles);
    if (unknown.length > 0 || !step || !grid?.through || !rectangle || !edging || troubles.some(trouble => trouble.kind === 'not-positive')) return undefined;

    const across = runOf('east-west', rectangle.width, [edging.west, edging.east], { room, grid, sections, step, troubles });
    const down = runOf('north-south', rectangle.length, [edging.north, edging.south], { room, grid, sections, step, troubles });
    if (!across || !down) return undefined;
    troubles.push(...unknownLines(room.lines, [...across.lines, ...down.lines]));
    if (room.lines.some(spec => spec.notComputed.length > 0) || tooMany({ across, down }, grid.at, troubles)) return undefined;
    return assembled({ room, grid, sections, rectangle, edging, across, down, step, troubles });
}

type Edgings = Readonly<Record<Side, Edging | null>>;

function edgingsOf({ around }: Grid, sections: LineSections, troubles: Trouble[]): Edgings | undefined {
    const found = SIDES.map(side => [side, edgingOf(around[side] ?? null, sections, troubles)] as const);
    return found.some(([, edging]) => edging === undefined) ? undefined : Object.fromEntries(found) as Edgings;
}

/** What makes every length of the room wrong, since nothing is computed from it. */
function notSupported({ notComputed }: Room): Trouble[] {
    return notComputed.flatMap(({ at, words, spoils }): Trouble[] => (spoils !== 'nothing' && 'instead' in spoils ? [{ kind: 'not-supported', what: words, instead: spoils.instead, at }] : []));
}

interface Parts { room: Room; grid: Grid; sections: LineSections; step: Ticks; troubles: Trouble[] }

/** Divides one direction of the room, and stands its lines there, not yet running anywhere. */
function runOf(along: Direction, length: Ticks, ends: readonly [Edging | null, Edging | null], { room, grid, sections, step, troubles }: Parts): Run | undefined {
    const spacing = along === 'east-west' ? grid.north : grid.east;
    const feature = featureAt(grid.centeredOn, along === 'east-west' ? 'x' : 'y');
    if (!spacing || feature === undefined) return undefined;
    const runs = along === 'east-west' ? 'north-south' : 'east-west';
    const [before, after] = ends.map(edging => edging?.reach.ticks ?? 0) as [Ticks, Ticks];
    const division: Division = {
        along, spacing, start: before, end: length - after, ends: ends.map(edging => edging && (edging.kind === 'band' ? 'band' : 'half beam')), room: length, step, show: room.job.show.value, ...(feature && { feature }),
        name: index => lineName(runs, index),
        width: index => sections.whole(lineName(runs, index))?.outerWidth.ticks,
    };
    if (division.end <= division.start) {
        troubles.push({ kind: 'not-positive', what: 'the room inside the band', ticks: division.end - division.start, at: (ends[0] ?? ends[1])!.perimeter.at });
        return undefined;
    }
    const divided = divide(division, troubles);
    if (!divided) return undefined;
    const lines = linesOf(runs, divided, grid, sections);
    const faces = [before, ...lines.flatMap(line => [line.low, line.high]), division.end];
    const coffers = divided.sizes.map((_, i) => faces[2 * i + 1]! - faces[2 * i]!);
    return { along, spacing, start: before, end: division.end, lines, coffers, residue: residueOf(division, divided, grid.residue.value, step) };
}

function linesOf(runs: Direction, { lows, widths }: Divided, grid: Grid, sections: LineSections): Line[] {
    return lows.map((low, i) => {
        const name = lineName(runs, i);
        return {
            name, runs, section: sections.whole(name)!, low, high: low + widths[i]!, through: grid.through!.value === runs,
            start: 0, end: 0, splices: [], at: sections.spec(name)?.at ?? grid.beams?.at ?? grid.at,
        };
    });
}

/** Both directions together: lines that run somewhere, crossings, coffers, the band. Undefined where the beams do not go together. */
function assembled(parts: Parts & { rectangle: Shape; edging: Edgings; across: Run; down: Run }): Ceiling | undefined {
    const { room, grid, sections, rectangle, edging, troubles } = parts;
    const lines = [...parts.across.lines, ...parts.down.lines];
    const faults = [...depthTroubles(lines, sections, grid), ...cornerTroubles(parts.across.lines, parts.down.lines)];
    troubles.push(...faults, ...trimTroubles(lines, grid));
    if (faults.length > 0 || tooManySpacers(parts, lines, troubles)) return undefined;

    const across = withRunning(parts.across, parts.down, [edging.north, edging.south], rectangle.length, parts);
    const down = withRunning(parts.down, parts.across, [edging.west, edging.east], rectangle.width, parts);
    const depth = (across.lines[0] ?? down.lines[0])?.section.depth ?? sections.grid()?.depth;
    if (SIDES.some(side => edging[side]?.kind === 'band') && !depth) return undefined;
    const around = Object.fromEntries(SIDES.map(side => {
        const own = edging[side], splices = own && edgingSplices(side, edging, rectangle, across, down, parts);
        return [side, own && splices && (own.kind === 'band' ? hung(own, depth!, splices, troubles) : { ...own, splices })];
    })) as Around;
    const band = SIDES.map(side => around[side]).find(each => each?.kind === 'band') ?? null;
    const inside = { west: across.start, east: across.end, north: down.start, south: down.end };
    const placed = { room, width: rectangle.width, length: rectangle.length, around, band, inside, across, down, beams: sections.grid(), lines: [...across.lines, ...down.lines] };
    const ceiling: Ceiling = { ...placed, crossings: crossingsOf(across.lines, down.lines, grid.through!.value), coffers: coffersOf(across, down) };
    const unbuilt = arrangementTroubles(arrangedOf(ceiling).exact, ceiling);
    if (unbuilt.length > 0) { troubles.push(...unbuilt); return undefined; }
    troubles.push(...tooLongForBoards(ceiling));
    return ceiling;
}

/** Lines with their beginning, end and splices, which the other direction decides. */
function withRunning(run: Run, other: Run, [before, after]: readonly [Edging | null, Edging | null], length: Ticks, { room, grid, sections, step, troubles }: Parts): Run {
    let neighbor: readonly Splice[] = [];
    const lines = run.lines.map(line => {
        const running = { ...line, start: bottomEnd(before, line), end: length - bottomEnd(after, line) };
        const splices = splicesOf({
            line: running, crossing: other.lines, wall: length, spec: sections.spec(line.name), neighbor,
            splicing: (sections.spec(line.name)?.splicing ?? grid.splices).value, job: room.job, step,
        }, troubles);
        neighbor = splices;
        return { ...running, splices };
    });
    return { ...run, lines };
}

/** How far from a wall the bottom of a line ends: at the bottom of a half beam that is as deep, else at the face of what runs there. */
function bottomEnd(edging: Edging | null, line: Line): Ticks {
    if (edging?.kind === 'half-beam' && edging.section.depth.ticks === line.section.depth.ticks) return edging.width.ticks;
    return edging?.reach.ticks ?? 0;
}

/** The band of a wall, or the bottom and blocking of its half beam, is spliced on the centers of the lines that meet it. */
function edgingSplices(side: Side, edging: Edgings, rectangle: Shape, across: Run, down: Run, { room, step }: Parts): readonly Splice[] {
    const own = edging[side]!, level = side === 'north' || side === 'south';
    if (own.perimeter.splices.value === 'never') return [];
    const stocks = own.kind === 'band' ? [own.perimeter.stock] : [own.section.profile.bottom?.stock, own.section.profile.blocking?.stock];
    const most = Math.min(...stocks.map(stock => longestPiece(stock?.value, room.job)));
    const [first, last, run, length] = level ? [edging.west, edging.east, across, rectangle.width] as const : [edging.north, edging.south, down, rectangle.length] as const;
    const crossings = run.lines.map(line => ({ at: centerOf(line), place: `on line ${line.name}` }));
    return spliceOnCrossings({ from: standsOff(own, first, level), to: length - standsOff(own, last, level), most, crossings, neighbor: [], step }) ?? [];
}

/** Of two alike the one along the north or south wall runs to the other wall; a half beam ends at a band, and a band runs past it. */
function standsOff(own: Edging, other: Edging | null, level: boolean): Ticks {
    if (own.kind === other?.kind) return level ? 0 : other.kind === 'band' ? other.reach.ticks : other.width.ticks;
    return own.kind === 'half-beam' && other?.kind === 'band' ? other.reach.ticks : 0;
}

function unknownLines(specs: readonly LineSpec[], lines: readonly Line[]): Trouble[] {
    const has = lines.map(line => line.name);
    return specs.filter(spec => !has.includes(spec.name)).map(spec => ({ kind: 'unknown-line', name: spec.name, has, at: spec.at }));
}
