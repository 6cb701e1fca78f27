import { arrange } from '../arrangement/arrange.ts';
import type { Arrangement } from '../arrangement/model.ts';
import type { Trouble as Unbuilt } from '../arrangement/troubles.ts';
import type { BeamLine, BottomBoard, BoxBeam, Corners, HalfBeam as PlannedHalf, Perimeter, Plan, Trim, Wall } from '../arrangement/plan.ts';
import type { Spot } from '../job/outline.ts';
import type { Source } from '../provenance/source.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { keepFew, MOST_ROOMS } from './keep-few.ts';
import type { Arranged, Band, Ceiling, HalfBeam, Line, Run, Trouble } from './model.ts';
import { reliefOf } from './relief.ts';
import { isForward, type ShapedWall } from './shape.ts';
import { playOf } from './section.ts';

export type LaidOut = Pick<Ceiling, 'walls' | 'square' | 'width' | 'length' | 'around' | 'across' | 'down' | 'lines' | 'beams' | 'room'>;

/** Every piece of a ceiling with its place, and the joints. It is most of what there is to know of a room, so few are kept. */
export const arrangedOf: (ceiling: LaidOut) => Arranged = keepFew(MOST_ROOMS, arranged);

function arranged(ceiling: LaidOut): Arranged {
    const exact = arrange(planOf(ceiling, asDrawn));
    const moves = ceiling.square && [ceiling.across, ceiling.down].some(({ residue, coffers }) => residue.rest !== 0 || residue.cutCoffers.some((cut, i) => cut !== coffers[i]));
    let asCut = moves ? undefined : exact;
    // a keystroke needs the one as drawn alone
    return { exact, get asCut() { return asCut ??= arrange(planOf(ceiling, asItComesToStand)); } };
}

/** By how much the lines of a run stand to the east or south of where they are drawn, and what is left between the wall at an end of it and what runs along that. */
interface Stand { readonly moved: readonly number[]; readonly spare: number }

function asDrawn({ lines }: Run): Stand {
    return { moved: lines.map(() => 0), spare: 0 };
}

function asItComesToStand({ start, lines, residue: { cutCoffers, rest } }: Run): Stand {
    let at = start + rest / 2;
    const moved = lines.map((line, i) => {
        const width = line.high - line.low, low = at + cutCoffers[i]!;
        at = low + width;
        return low - line.low;
    });
    return { moved, spare: rest / 2 };
}

function planOf({ walls, around, across, down, lines, beams, room }: LaidOut, stand: (run: Run) => Stand): Plan {
    const stands = { 'north-south': stand(across), 'east-west': stand(down) };
    const moved = (line: Line): number => stands[line.runs].moved[(line.runs === 'north-south' ? across : down).lines.findIndex(({ low }) => low === line.low)] ?? 0;
    const trim = beams?.profile.trim, trims: Trim[] = trim && beams?.trimThickness && beams.trimHeight ? [{
        name: 'trim', thickness: beams.trimThickness.ticks, top: 0, foot: beams.trimHeight.ticks, corners: trim.corners.value,
        ...trim.spring && { spring: trim.spring.value },
    }] : [];
    return {
        walls: walls.map(wall => wallOf(wall, around[wall.name] ?? null, spareAt(wall, across, stands['north-south'].spare, 'x') + spareAt(wall, down, stands['east-west'].spare, 'y'))),
        lines: lines.map(line => lineOf(line, moved(line), line.through ? 0 : reliefOf(line, room.job))),
        through: room.grid!.through!.value, corners: cornersOf(lines, around, walls), clearance: CLEARANCE, trims,
    };
}

function wallOf({ name, from, to }: ShapedWall, own: Band | HalfBeam | null, spare: number): Wall {
    return { name, from, perimeter: perimeterOf(own, spare), splices: own?.splices.map(({ at }) => alongWall({ from, to }, at)) ?? [] };
}

/** So far along a wall from its west or north end. */
export function alongWall({ from, to }: Pick<ShapedWall, 'from' | 'to'>, at: Ticks): Spot {
    const [start, end] = isForward({ from, to }) ? [from, to] : [to, from], length = Math.hypot(end.x - start.x, end.y - start.y);
    return { x: start.x + (end.x - start.x) * at / length, y: start.y + (end.y - start.y) * at / length };
}

/** A wall at either end of a run has half of what is left of it. */
function spareAt({ from, to }: ShapedWall, { wallEnds }: Run, spare: number, axis: 'x' | 'y'): number {
    return from[axis] === to[axis] && wallEnds.includes(from[axis]) ? spare : 0;
}

/** What blocking stays clear of the face of a deeper beam, so that its side gets past. Common practice, no source. */
const CLEARANCE: Ticks = TICKS_PER_INCH / 8;

/** What is left of the run stands between the wall and what runs along it. */
function perimeterOf(own: Band | HalfBeam | null, spare: number): Perimeter {
    if (own?.kind === 'half-beam') return halfBeamOf(own, spare);
    const thickness = (own?.thickness.ticks ?? 0) + spare;
    return thickness === 0 ? { kind: 'bare' } : { kind: 'band', thickness, top: own ? own.lowerEdge.ticks - own.height.ticks : 0, foot: own?.lowerEdge.ticks ?? 0 };
}

function halfBeamOf({ width, section, perimeter: { scribe } }: HalfBeam, spare: number): PlannedHalf {
    const { depth, left, bottom, blocking, cleats } = beamOf(section, 0);
    return {
        kind: 'half-beam', inside: width.ticks + spare, depth, side: left, ...scribe && { scribe: scribe.value }, ...bottom && { bottom: { ...bottom, play: 0 } }, ...blocking && { blocking },
        ...cleats && { cleats, wallCleat: { width: cleats.width, height: cleats.height } },
    };
}

/** `moved`: square to it, to the east or south. */
function lineOf({ name, runs, from, to, spot: { x, y }, heading, section, splices }: Line, moved: number, relief: Ticks): BeamLine {
    const length = Math.hypot(heading.x, heading.y), way = { x: heading.x / length, y: heading.y / length }, along = x * way.x + y * way.y;
    const spot = runs === 'north-south' ? { x: x + moved, y } : { x, y: y + moved };
    return {
        name, family: runs, from, to, spot, heading, beam: beamOf(section, relief),
        splices: splices.map(({ at }) => ({ x: spot.x + way.x * (at - along), y: spot.y + way.y * (at - along) })),
    };
}

function beamOf(section: Line['section'], relief: Ticks): BoxBeam {
    const { innerWidth, depth, sideThickness, heldDown, blockingThickness, blockingWidth, cleatThickness, cleatHeight, profile } = section;
    const side = { thickness: sideThickness.ticks, heldDown: heldDown.value.ticks };
    return {
        kind: 'box', inside: innerWidth.ticks, depth: depth.ticks, left: side, right: side,
        bottom: bottomOf(section),
        ...profile.blocking && { blocking: { thickness: blockingThickness.ticks, narrower: innerWidth.ticks - blockingWidth.ticks, short: relief / 2 } },
        ...profile.cleats && cleatThickness && cleatHeight && { cleats: { width: cleatThickness.ticks, height: cleatHeight.ticks, short: profile.cleats.shortEachEnd.value } },
    };
}

function bottomOf({ bottomThickness, bottomWidth, outerWidth, profile: { bottom, sides }, ...section }: Line['section']): BottomBoard {
    const place = bottom?.place.value ?? 'between-sides', thickness = bottomThickness.ticks;
    switch (place) {
        case 'under-sides': return { place, by: (bottomWidth.ticks - outerWidth.ticks) / 2, play: 0, thickness };
        case 'in-rabbets': return { place, by: sides!.rabbet!.value.width.ticks, play: playOf(section), thickness };
        case 'between-sides': return { place, by: 0, play: playOf(section), thickness };
    }
}

/** Lines that cross have the same corners: corners.ts sees to it. Where nobody names the sides that run past, they do in the direction in which the bottoms run through. */
function cornersOf(lines: readonly Line[], around: Ceiling['around'], walls: readonly ShapedWall[]): Corners {
    const first = lines[0]?.section ?? walls.flatMap(({ name }) => { const own = around[name]; return own?.kind === 'half-beam' ? [own.section] : []; })[0];
    const said = first?.profile.sides;
    if (said?.corners.value !== 'butted') return { kind: 'mitered' };
    const through = lines.find(line => line.through)?.runs ?? (lines[0]?.runs === 'north-south' ? 'east-west' : 'north-south');
    return { kind: 'butted', past: said.past?.value ?? through };
}

/** Why the arrangement cannot be built, at the words of what stands in the way. */
export function arrangementTroubles({ troubles }: Arrangement, { around, lines }: LaidOut): Trouble[] {
    const at = (...names: readonly string[]): Source | undefined => names.flatMap(name => around[name]?.perimeter.kind.at ?? lines.find(line => line.name === name)?.at ?? [])[0];
    // what is wrong once is wrong at every line
    const first = troubles.filter((trouble, i) => troubles.findIndex(other => other.kind === trouble.kind) === i);
    return first.flatMap((trouble): Trouble[] => {
        const { what, instead, names } = unbuiltWords(trouble), place = at(...names) ?? lines[0]?.at;
        return place ? [{ kind: 'not-supported', what, instead, at: place }] : [];
    });
}

function unbuiltWords(trouble: Unbuilt): { what: string; instead: string; names: readonly string[] } {
    switch (trouble.kind) {
        case 'deeper-than-its-end': return { what: `line ${trouble.line}, which is deeper than the half beam along the ${trouble.at} wall that it meets`, instead: 'a half beam as deep as the lines, or deeper', names: [trouble.at] };
        case 'unlike-half-beams': return { what: `half beams of two depths along the ${trouble.walls[0]} and the ${trouble.walls[1]} wall, in one corner`, instead: 'half beams of one depth', names: trouble.walls };
        default: return { what: `these lines and walls together (${trouble.kind})`, instead: 'a rectangle of lines from wall to wall', names: [] };
    }
}
