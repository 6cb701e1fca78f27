import { arrange } from '../arrangement/arrange.ts';
import type { Arrangement } from '../arrangement/model.ts';
import type { Trouble as Unbuilt } from '../arrangement/troubles.ts';
import type { BeamLine, BottomBoard, BoxBeam, Corners, HalfBeam as PlannedHalf, Perimeter, Plan, Trim, Wall } from '../arrangement/plan.ts';
import { SIDES, type Side } from '../job/model.ts';
import type { Source } from '../provenance/source.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { keepFew, MOST_ROOMS } from './keep-few.ts';
import type { Arranged, Band, Ceiling, HalfBeam, Line, Run, Trouble } from './model.ts';
import { reliefOf } from './relief.ts';
import { playOf } from './section.ts';

export type LaidOut = Pick<Ceiling, 'width' | 'length' | 'around' | 'across' | 'down' | 'lines' | 'beams' | 'room'>;

/** Every piece of a ceiling with its place, and the joints. It is most of what there is to know of a room, so few are kept. */
export const arrangedOf: (ceiling: LaidOut) => Arranged = keepFew(MOST_ROOMS, arranged);

function arranged(ceiling: LaidOut): Arranged {
    const exact = arrange(planOf(ceiling, asDrawn));
    const moves = [ceiling.across, ceiling.down].some(({ residue, coffers }) => residue.rest !== 0 || residue.cutCoffers.some((cut, i) => cut !== coffers[i]));
    let asCut = moves ? undefined : exact;
    // a keystroke needs the one as drawn alone
    return { exact, get asCut() { return asCut ??= arrange(planOf(ceiling, asItComesToStand)); } };
}

/** Where the lines of a run stand, by their middles, and what is left between a wall and what ends there. */
interface Stand { readonly middles: readonly number[]; readonly spare: number }

function asDrawn({ lines }: Run): Stand {
    return { middles: lines.map(line => (line.low + line.high) / 2), spare: 0 };
}

function asItComesToStand({ start, lines, residue: { cutCoffers, rest } }: Run): Stand {
    let at = start + rest / 2;
    const middles = lines.map((line, i) => {
        const width = line.high - line.low, low = at + cutCoffers[i]!;
        at = low + width;
        return low + width / 2;
    });
    return { middles, spare: rest / 2 };
}

function planOf({ width, length, around, across, down, lines, beams, room }: LaidOut, stand: (run: Run) => Stand): Plan {
    const stands = { 'north-south': stand(across), 'east-west': stand(down) };
    const wall = (name: Side, x: Ticks, y: Ticks): Wall => {
        const level = name === 'north' || name === 'south', own = around[name];
        return {
            name, from: { x, y }, perimeter: perimeterOf(own, stands[level ? 'east-west' : 'north-south'].spare),
            splices: own?.splices.map(({ at }) => ({ north: { x: at, y: 0 }, east: { x: width, y: at }, south: { x: at, y: length }, west: { x: 0, y: at } })[name]) ?? [],
        };
    };
    const trim = beams?.profile.trim, trims: Trim[] = trim?.corners.value === 'mitered' && beams?.trimThickness && beams.trimHeight
        ? [{ name: 'trim', thickness: beams.trimThickness.ticks, top: 0, foot: beams.trimHeight.ticks, corners: 'mitered' }] : [];
    return {
        walls: [wall('north', 0, 0), wall('east', width, 0), wall('south', width, length), wall('west', 0, length)],
        lines: [across, down].flatMap(run => run.lines.map((line, i) => {
            return lineOf(line, stands[line.runs].middles[i]!, line.through ? 0 : reliefOf(line, room.job));
        })),
        through: room.grid!.through!.value, corners: cornersOf(lines, around), clearance: CLEARANCE, trims,
    };
}

/** What blocking stays clear of the face of a deeper beam, so that its side gets past. Common practice, no source. */
const CLEARANCE: Ticks = TICKS_PER_INCH / 8;

/** What is left of the run stands between the wall and what runs along it. */
function perimeterOf(own: Band | HalfBeam | null, spare: number): Perimeter {
    if (own?.kind === 'half-beam') return halfBeamOf(own, spare);
    const thickness = (own?.thickness.ticks ?? 0) + spare;
    return thickness === 0 ? { kind: 'bare' } : { kind: 'band', thickness, top: own ? own.lowerEdge.ticks - own.height.ticks : 0, foot: own?.lowerEdge.ticks ?? 0 };
}

function halfBeamOf({ width, section }: HalfBeam, spare: number): PlannedHalf {
    const { depth, left, bottom, blocking, cleats } = beamOf(section, 0);
    return {
        kind: 'half-beam', inside: width.ticks + spare, depth, side: left, ...bottom && { bottom: { ...bottom, play: 0 } }, ...blocking && { blocking },
        ...cleats && { cleats, wallCleat: { width: cleats.width, height: cleats.height } },
    };
}

function lineOf(line: Line, middle: number, relief: Ticks): BeamLine {
    const { name, runs, section, splices } = line;
    const upright = runs === 'north-south';
    const spot = (along: Ticks): { x: number; y: number } => (upright ? { x: middle, y: along } : { x: along, y: middle });
    return {
        name, family: runs, from: upright ? 'north' : 'west', to: upright ? 'south' : 'east', spot: spot(0), heading: upright ? { x: 0, y: 1 } : { x: 1, y: 0 },
        beam: beamOf(section, relief), splices: splices.map(({ at }) => spot(at)),
    };
}

function beamOf(section: Line['section'], relief: Ticks): BoxBeam {
    const { innerWidth, depth, sideThickness, heldDown, blockingThickness, blockingWidth, cleatThickness, cleatHeight, profile } = section;
    const side = { thickness: sideThickness.ticks, heldDown: heldDown.value.ticks };
    return {
        kind: 'box', inside: innerWidth.ticks, depth: depth.ticks, left: side, right: side,
        bottom: bottomOf(section), blocking: { thickness: blockingThickness.ticks, narrower: innerWidth.ticks - blockingWidth.ticks, short: relief / 2 },
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
function cornersOf(lines: readonly Line[], around: Ceiling['around']): Corners {
    const first = lines[0]?.section ?? SIDES.flatMap(side => { const own = around[side]; return own?.kind === 'half-beam' ? [own.section] : []; })[0];
    const said = first?.profile.sides;
    if (said?.corners.value !== 'butted') return { kind: 'mitered' };
    const through = lines.find(line => line.through)?.runs ?? (lines[0]?.runs === 'north-south' ? 'east-west' : 'north-south');
    return { kind: 'butted', past: said.past?.value ?? through };
}

/** Why the arrangement cannot be built, at the words of what stands in the way. */
export function arrangementTroubles({ troubles }: Arrangement, { around, lines }: LaidOut): Trouble[] {
    const at = (...names: readonly string[]): Source | undefined => names.flatMap(name => around[name as Side]?.perimeter.kind.at ?? lines.find(line => line.name === name)?.at ?? [])[0];
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
