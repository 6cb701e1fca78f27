import { runsOf } from '../arrangement/arrange.ts';
import { lineName } from '../job/line-names.ts';
import type { LineRun } from '../arrangement/model.ts';
import type { CrossingSpec, Direction, Grid, Perimeter, Room } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { edgingOf, hung, type Edging } from './band.ts';
import { chordsOf, crossingPlace } from './chords.ts';
import { cofferOf, crossingsOf, linesOfCrossing } from './coffers.ts';
import { cornerTroubles } from './corners.ts';
import type { Division } from './division.ts';
import { flanksOf, lowReach, otherSideOf } from './flanks.ts';
import { layingOf, type Stretch } from './laying.ts';
import { acrossAt, standingLines, type Divided, type Standing, type StandingLine } from './lines-by-hand.ts';
import { cutStep, featureAt, tooMany, tooManySpacers, tooMuchOfFile } from './limits.ts';
import { splicesOf } from './line-splices.ts';
import { LineSections } from './lines.ts';
import type { Around, Ceiling, Coffer, Derived, DividedRoom, LaidOut, Layout, Line, Run, Splice, Trouble } from './model.ts';
import { arrangedOf, arrangementTroubles, meetingsIn, type Outlined } from './plan.ts';
import { panelTroubles } from './panel.ts';
import { profileTroubles } from './profile-troubles.ts';
import { residueOf } from './residue.ts';
import { shapeOf } from './room-shape.ts';
import { withTrimOfRoom } from './section.ts';
import type { Shape } from './shape.ts';
import { divide } from './spacing.ts';
import { oncePerPlace, trimTroubles } from './troubles.ts';
import { withSideSplices, type Spliced } from './side-splices.ts';
import { uselessSplices, wallSplicesOf, withCleatSplices } from './wall-splices.ts';

/**
 * Lays out one room: walls, band, lines, crossings, coffers, splices, and what rounding leaves. Never throws. Where the
 * text does not say enough there is no `ceiling`, silently; where what it says cannot be built or is not computed, a
 * trouble says so, and there is a ceiling only as far as its figures would still be right.
 */
export function layOut(room: Room): Layout {
    const troubles: Trouble[] = [];
    const sections = new LineSections(room);
    for (const section of [...sections.all.values()].flatMap(flanksOf)) troubles.push(...profileTroubles(section));
    const ceiling = ceilingOf(room, sections, troubles);
    return { room, sections: sections.all, ...(ceiling && { ceiling }), troubles: oncePerPlace(troubles) };
}

export function isLaidOut(layout: Layout): layout is LaidOut {
    return layout.ceiling !== undefined;
}

function ceilingOf(room: Room, sections: LineSections, troubles: Trouble[]): Ceiling | undefined {
    const step = cutStep(room.job, troubles);
    const { shape, troubles: walls } = shapeOf(room);
    const unknown = notSupported(room);
    troubles.push(...walls, ...unknown);
    const grid = room.grid;
    const edging = grid && shape && edgingsOf(grid, shape, sections, troubles);
    if (tooMuchOfFile(room, troubles) || unknown.length > 0 || !step || !isDivided(room) || !shape || !edging || troubles.some(trouble => trouble.kind === 'not-positive')) return undefined;

    const parts = { room, grid: room.grid, shape, edging, sections, step, troubles };
    const across = runOf('east-west', parts), down = runOf('north-south', parts);
    if (!across || !down) return undefined;
    if (tooMany({ across: across.run, down: down.run }, room.grid.at, troubles)) return undefined;
    const standing = standingLines(across, down, parts);
    return standing && !troubles.some(({ kind }) => kind === 'no-other-side') ? assembled(parts, standing) : undefined;
}

function isDivided(room: Room): room is DividedRoom {
    return room.grid?.through !== undefined;
}

/** What runs along each wall, by its name. */
type Edgings = ReadonlyMap<string, Edging | null>;

function edgingsOf({ around }: Grid, { walls }: Shape, sections: LineSections, troubles: Trouble[]): Edgings | undefined {
    const read = new Map<Perimeter | null, Edging | null | undefined>();
    for (const { name } of walls) {
        const own = around[name] ?? null;
        if (!read.has(own)) read.set(own, edgingOf(own, sections, troubles));
        if (read.get(own) === undefined) return undefined;
    }
    return new Map(walls.map(({ name }) => [name, read.get(around[name] ?? null)!]));
}

/** What makes every length of the room wrong, since nothing is computed from it. */
function notSupported({ notComputed }: Room): Trouble[] {
    return notComputed.flatMap(({ at, words, spoils }): Trouble[] => (typeof spoils !== 'string' && 'instead' in spoils ? [{ kind: 'not-supported', what: words, instead: spoils.instead, at }] : []));
}

interface Parts { room: DividedRoom; grid: DividedRoom['grid']; shape: Shape; edging: Edgings; sections: LineSections; step: Ticks; troubles: Trouble[] }

/** Divides one direction of the room, and stands its lines there, each to the walls that it reaches. */
function runOf(along: Direction, { room, grid, shape, edging, sections, step, troubles }: Parts): Divided | undefined {
    const spacing = along === 'east-west' ? grid.north : grid.east, runs = along === 'east-west' ? 'north-south' : 'east-west';
    const laid = layingOf(runs, grid, shape, troubles), feature = featureAt(grid.centeredOn, along === 'east-west' ? 'x' : 'y');
    if (!spacing || !laid || feature === undefined) return undefined;
    const { origin, room: length } = laid.over, asked = feature && { ...feature, position: feature.position - origin };
    const beamOf = (index: number): Pick<StandingLine, 'section' | 'runs' | 'otherSide'> => {
        const name = lineName(runs, index), section = sections.whole(name)!, other = otherSideOf(name, runs, section, sections.spec(name), troubles);
        return { section, runs, ...other && { otherSide: other } };
    };
    const divisionOf = ({ room: whole, ends }: Stretch): Division => {
        const own = ends.map(name => (name === undefined ? undefined : edging.get(name)));
        const [before, after] = own.map(each => each?.reach.ticks ?? 0) as [Ticks, Ticks];
        return {
            along, spacing, start: before, end: whole - after, ends: own.map(each => (each ? each.kind === 'band' ? 'band' : 'half beam' : null)), room: whole, step,
            show: room.job.show.value, byCenters: laid.byCenters, ...asked && { feature: asked },
            name: index => lineName(runs, index), width: index => sections.whole(lineName(runs, index))?.outerWidth.ticks,
            toCenter: index => lowReach(beamOf(index)),
        };
    };
    const division = divisionOf(laid.over), divided = inside(division, grid, troubles) ? divide(division, troubles) : undefined;
    const far = laid.far && divided ? divide(divisionOf(laid.far), troubles) : divided;
    if (!divided || !far) return undefined;
    const straight = shape.square && laid.alongCompass, all: StandingLine[] = [], lines: StandingLine[] = [];
    divided.lows.forEach((low, i) => {
        const width = divided.widths[i]!, beam = beamOf(i), toCenter = lowReach(beam), placed = laid.lineAt(low + toCenter, far.lows[i]! + toCenter);
        const chords = chordsOf(placed, shape.walls);
        chords.forEach((chord, k) => {
            const own = lineName(runs, i), name = k === 0 ? own : `${own}-${k + 1}`;
            const at = straight ? origin + low : Math.round(acrossAt(placed, chord, runs) - toCenter);
            all.push({
                name, ...beam, low: at, high: at + width, ...placed, from: chord.from.name, to: chord.to.name, byHand: false,
                reach: [Math.round(chord.start), Math.round(chord.end)], at: sections.spec(own)?.at ?? grid.beams?.at ?? grid.at,
            });
            if (k === 0) lines.push(all.at(-1)!);
        });
    });
    const [start, end] = [origin + division.start, origin + division.end];
    const faces = [division.start, ...divided.lows.flatMap((low, i) => [low, low + divided.widths[i]!]), division.end];
    const coffers = divided.sizes.map((_, i) => faces[2 * i + 1]! - faces[2 * i]!);
    const residue = straight ? residueOf(division, divided, grid.residue.value, step) : { ticks: 0, place: grid.residue.value, cutCoffers: coffers, rest: 0 };
    return { run: { along, spacing, start, end, wallEnds: [origin, origin + length], lines, coffers, residue }, all };
}

function inside(division: Division, { at }: Grid, troubles: Trouble[]): boolean {
    if (division.end > division.start) return true;
    troubles.push({ kind: 'not-positive', what: 'the room inside the band', ticks: division.end - division.start, at });
    return false;
}

/** Lines that run somewhere, crossings, coffers, what runs round the walls. Undefined where the beams do not go together. */
function assembled(parts: Parts, { across: over, down: under, lines: standing }: Standing): Ceiling | undefined {
    const { room, grid, shape, sections, edging, step, troubles } = parts;
    const before = troubles.length;
    troubles.push(...unknownCrossings(room.crossings, standing));
    const beams = sections.grid(), halves = [...edging.values()].flatMap(own => (own?.kind === 'half-beam' ? [own.section.depth] : []));
    const depths = [...standing.map(line => line.section.depth), ...halves];
    const deepest = depths.reduce<Derived | undefined>((a, b) => (a && a.ticks >= b.ticks ? a : b), undefined) ?? beams?.depth;
    if (troubles.length > before || [...edging.values()].some(own => own?.kind === 'band') && !deepest) return undefined;
    const hanging = Object.fromEntries([...edging].map(([wall, own]) => [wall, own && (own.kind === 'band' ? hung(own, deepest!, troubles) : own)]));
    const outlined: Outlined = { room, walls: shape.walls, around: hanging, beams, lines: standing };
    const meetings = meetingsIn(outlined), runs = runsOf(meetings);
    if (meetings.troubles.length > 0) { troubles.push(...arrangementTroubles(meetings, outlined)); return undefined; }
    const met = standing.map((line, i) => meeting(line, runs[i]!, grid));
    const faults = [...uselessSplices(room, edging), ...cornerTroubles(met, grid.through.value),
        ...panelTroubles(beams, met), ...meetNowhere(room.crossings, met)];
    troubles.push(...faults, ...room.trim ? [] : trimTroubles(met, grid));
    if (faults.length > 0 || tooManySpacers(met, troubles)) return undefined;

    const lines = splicedLines(met, parts);
    const around: Around = Object.fromEntries(shape.walls.map(({ name }, i) => {
        const own = hanging[name]!;
        const spliced = own && { ...own, splices: wallSplicesOf(i, lines, parts, troubles) };
        return [name, spliced?.kind === 'half-beam' ? withCleatSplices(spliced, i, lines, parts) : spliced];
    }));
    const { walls, width, length } = shape, square = shape.square && ![grid.layNorthSouth, grid.layEastWest].some(laying => laying && laying.how !== 'by-wall');
    const inside = { west: over.start, east: over.end, north: under.start, south: under.end };
    const made = ({ around, lines, trimSplices }: Spliced): Ceiling => {
        let coffers: readonly Coffer[] | undefined;
        const named = new Map(lines.map(line => [line.name, line]));
        const ofGrid = (run: Run<StandingLine>): Run => ({ ...run, lines: run.lines.map(line => named.get(line.name)!) });
        const ceiling: Ceiling = {
            room, walls, square, width, length, around, band: walls.map(({ name }) => around[name]).find(each => each?.kind === 'band') ?? null, inside,
            across: ofGrid(over), down: ofGrid(under), ...trimSplices && { trimSplices },
            beams: beams && withTrimOfRoom(beams, room), lines, crossings: crossingsOf(lines),
            get coffers() { return coffers ??= arrangedOf(ceiling).exact.coffers.map(coffer => cofferOf(coffer)); },
        };
        return ceiling;
    };
    const ceiling = made({ around, lines }), { exact } = arrangedOf(ceiling, meetings);
    if (exact.troubles.length > 0) { troubles.push(...arrangementTroubles(exact, ceiling)); return undefined; }
    // only what the pieces come to tells which are longer than their boards
    const spliced = withSideSplices(ceiling, exact, step);
    return spliced ? made(spliced) : ceiling;
}

type MeetingLine = Omit<Line, 'splices'> & Pick<StandingLine, 'reach'>;

/** A line with what it meets. Where nothing crosses it, it runs through if its direction does. */
function meeting(line: StandingLine, { start, end, passes }: LineRun, grid: DividedRoom['grid']): MeetingLine {
    return {
        ...line, passes, through: passes.length > 0 ? !passes.some(pass => pass.cuts) : grid.through.value === line.runs,
        start: Math.round(start.bottom), end: Math.round(end.bottom), faces: [Math.round(start.face), Math.round(end.face)], leans: [start.lean, end.lean],
    };
}

/** Lines with their splices; a line keeps its splices away from those of the one before it that runs its way. */
function splicedLines(lines: readonly MeetingLine[], { room, grid, sections, step, troubles }: Parts): Line[] {
    const neighbor = new Map<Direction, readonly Splice[]>();
    return lines.map(({ reach, ...line }) => {
        const spec = sections.spec(line.name);
        const splices = splicesOf({
            line, ends: endsOf({ ...line, reach }, lines), names: [line.from, line.to], spec, neighbor: neighbor.get(line.runs) ?? [],
            splicing: (spec?.splicing ?? grid.splices).value, job: room.job, step,
        }, troubles);
        neighbor.set(line.runs, splices);
        return { ...line, splices };
    });
}

/** Where a tape along its center begins and ends: at a wall, or at the center of the line that it stops at. */
function endsOf(line: MeetingLine, lines: readonly MeetingLine[]): [number, number] {
    const place = (name: string, wall: Ticks): number => {
        const other = lines.find(one => one.name === name);
        return (other && crossingPlace(line, other)) ?? wall;
    };
    return [place(line.from, line.reach[0]), place(line.to, line.reach[1])];
}

/** Crossings of lines that are not there, or at which the line that is to run through is none of the two. */
function unknownCrossings(specs: readonly CrossingSpec[], lines: readonly StandingLine[]): Trouble[] {
    return specs.flatMap(({ name, at, through }): Trouble[] => {
        const both = linesOfCrossing(name, lines)?.map(line => line.name);
        if (!both) return [{ kind: 'unknown-meeting', of: 'a crossing', name, has: lines.map(line => line.name), at }];
        return through && !both.includes(through.value) ? [{ kind: 'unknown-meeting', of: `crossing ${name}`, name: through.value, has: both, at: through.at }] : [];
    });
}

/** Crossings of lines that do not come to each other. */
function meetNowhere(specs: readonly CrossingSpec[], lines: readonly MeetingLine[]): Trouble[] {
    return specs.flatMap(({ name, at }): Trouble[] => {
        const [a, b] = linesOfCrossing(name, lines)!;
        const meets = (one: MeetingLine, other: MeetingLine): boolean => [one.from, one.to, ...one.passes.map(pass => pass.of)].includes(other.name);
        return meets(a, b) || meets(b, a) ? [] : [{ kind: 'unknown-meeting', of: 'a crossing', name, has: crossingsOf(lines).map(one => one.name), at }];
    });
}
