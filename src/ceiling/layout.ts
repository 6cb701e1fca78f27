import type { Direction, Grid, LineSpec, Room } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { bandBoardOf, hung, type BandBoard } from './band.ts';
import { centerOf } from './bays.ts';
import { tooLongForBoards } from './board-limits.ts';
import { coffersOf, crossingsOf } from './coffers.ts';
import { cornerTroubles } from './corners.ts';
import type { Divided, Division } from './division.ts';
import { cutStep, featureAt, tooMany, tooManySpacers } from './limits.ts';
import { lineName, LineSections } from './lines.ts';
import { longestPiece } from './longest.ts';
import type { Band, Ceiling, Layout, Line, Run, Splice, Trouble } from './model.ts';
import { arranged } from './plan.ts';
import { profileTroubles } from './profile-troubles.ts';
import { residueOf } from './residue.ts';
import { rectangleOf, type Rectangle } from './room-shape.ts';
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
    const { rectangle, troubles: shape } = rectangleOf(room);
    const unknown = notSupported(room);
    troubles.push(...shape, ...unknown);
    const grid = room.grid;
    const board = grid && bandBoardOf(grid, troubles);
    if (unknown.length > 0 || !step || !grid?.through || !rectangle || board === undefined || troubles.some(trouble => trouble.kind === 'not-positive')) return undefined;

    const p = board?.thickness.ticks ?? 0;
    const across = runOf('east-west', rectangle.width, p, { room, grid, sections, step, troubles });
    const down = runOf('north-south', rectangle.length, p, { room, grid, sections, step, troubles });
    if (!across || !down) return undefined;
    troubles.push(...unknownLines(room.lines, [...across.lines, ...down.lines]));
    if (room.lines.some(spec => spec.notComputed.length > 0) || tooMany({ across, down }, grid.at, troubles)) return undefined;
    return assembled({ room, grid, sections, rectangle, board, across, down, step, troubles });
}

/** What makes every length of the room wrong, since nothing is computed from it. */
function notSupported({ notComputed }: Room): Trouble[] {
    return notComputed.flatMap(({ at, words, spoils }): Trouble[] => (spoils !== 'nothing' && 'instead' in spoils ? [{ kind: 'not-supported', what: words, instead: spoils.instead, at }] : []));
}

interface Parts { room: Room; grid: Grid; sections: LineSections; step: Ticks; troubles: Trouble[] }

/** Divides one direction of the room, and stands its lines there, not yet running anywhere. */
function runOf(along: Direction, length: Ticks, band: Ticks, { room, grid, sections, step, troubles }: Parts): Run | undefined {
    const spacing = along === 'east-west' ? grid.north : grid.east;
    const feature = featureAt(grid.centeredOn, along === 'east-west' ? 'x' : 'y');
    if (!spacing || feature === undefined) return undefined;
    const runs = along === 'east-west' ? 'north-south' : 'east-west';
    const division: Division = {
        along, spacing, start: band, end: length - band, room: length, step, show: room.job.show.value, ...(feature && { feature }),
        name: index => lineName(runs, index),
        width: index => sections.whole(lineName(runs, index))?.outerWidth.ticks,
    };
    if (division.end <= division.start) {
        troubles.push({ kind: 'not-positive', what: 'the room inside the band', ticks: division.end - division.start, at: grid.perimeter!.at });
        return undefined;
    }
    const divided = divide(division, troubles);
    if (!divided) return undefined;
    const lines = linesOf(runs, divided, grid, sections);
    const faces = [band, ...lines.flatMap(line => [line.low, line.high]), division.end];
    const coffers = divided.sizes.map((_, i) => faces[2 * i + 1]! - faces[2 * i]!);
    return { along, spacing, start: band, end: division.end, lines, coffers, residue: residueOf(division, divided, grid.residue.value, step) };
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
function assembled(parts: Parts & { rectangle: Rectangle; board: BandBoard | null; across: Run; down: Run }): Ceiling | undefined {
    const { room, grid, sections, rectangle, board, troubles } = parts;
    const lines = [...parts.across.lines, ...parts.down.lines];
    const faults = [...depthTroubles(lines, sections, grid), ...cornerTroubles(parts.across.lines, parts.down.lines)];
    troubles.push(...faults, ...trimTroubles(lines, grid));
    if (faults.length > 0 || tooManySpacers(parts, lines, troubles)) return undefined;

    const across = withRunning(parts.across, parts.down, parts);
    const down = withRunning(parts.down, parts.across, parts);
    const depth = (across.lines[0] ?? down.lines[0])?.section.depth ?? sections.grid()?.depth;
    if (board && !depth) return undefined;
    const band = board && hung(board, depth!, bandSplices(board, rectangle, across, down, parts), troubles);
    const inside = { west: across.start, east: across.end, north: down.start, south: down.end };
    const placed = { room, width: rectangle.width, length: rectangle.length, band, inside, across, down, beams: sections.grid(), lines: [...across.lines, ...down.lines] };
    const ceiling: Ceiling = {
        ...placed, arranged: arranged(placed),
        crossings: crossingsOf(across.lines, down.lines, grid.through!.value), coffers: coffersOf(across, down),
    };
    troubles.push(...tooLongForBoards(ceiling));
    return ceiling;
}

/** Lines with their beginning, end and splices, which the other direction decides. */
function withRunning(run: Run, other: Run, { room, grid, sections, step, troubles }: Parts): Run {
    let neighbor: readonly Splice[] = [];
    const length = other.end + other.start;
    const lines = run.lines.map(line => {
        const running = { ...line, start: other.start, end: other.end };
        const splices = splicesOf({
            line: running, crossing: other.lines, wall: length, spec: sections.spec(line.name), neighbor,
            splicing: (sections.spec(line.name)?.splicing ?? grid.splices).value, job: room.job, step,
        }, troubles);
        neighbor = splices;
        return { ...running, splices };
    });
    return { ...run, lines };
}

/** North and south run full, west and east between them; each is spliced on the centers of the lines that meet it. */
function bandSplices(board: BandBoard, rectangle: Rectangle, across: Run, down: Run, { room, step }: Parts): Band['splices'] {
    if (board.perimeter.splices.value === 'never') return { north: [], south: [], east: [], west: [] };
    const most = longestPiece(board.perimeter.stock?.value, room.job);
    const onLines = (lines: readonly Line[], from: Ticks, to: Ticks): readonly Splice[] => {
        const crossings = lines.map(line => ({ at: centerOf(line), place: `on line ${line.name}` }));
        return spliceOnCrossings({ from, to, most, crossings, neighbor: [], step }) ?? [];
    };
    const full = onLines(across.lines, 0, rectangle.width), between = onLines(down.lines, down.start, down.end);
    return { north: full, south: full, east: between, west: between };
}

function unknownLines(specs: readonly LineSpec[], lines: readonly Line[]): Trouble[] {
    const has = lines.map(line => line.name);
    return specs.filter(spec => !has.includes(spec.name)).map(spec => ({ kind: 'unknown-line', name: spec.name, has, at: spec.at }));
}
