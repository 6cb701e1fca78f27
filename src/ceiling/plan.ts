import { distance } from '../plane/point.ts';
import { arrange, meet, type Met } from '../arrangement/arrange.ts';
import type { Arrangement } from '../arrangement/model.ts';
import type { Beam, BeamLine, BottomBoard, BoxBeam, Corners, HalfBeam as PlannedHalf, MeetingChoice, Perimeter, Plan, Trim, Wall } from '../arrangement/plan.ts';
import type { Spot } from '../job/outline.ts';
import type { Direction, JobSettings } from '../job/model.ts';
import { kept, keptByName, MOST_ROOMS } from '../plain/kept.ts';
import type { Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { onLine } from './along.ts';
import { linesOfCrossing } from './coffers.ts';
import type { Arranged, Band, Ceiling, HalfBeam, Line, Run, Splice, Trouble } from './model.ts';
import { sectionAt } from './flanks.ts';
import { longestPiece } from './longest.ts';
import { clearanceOf, reliefOf } from './relief.ts';
import { panelOver } from './panel.ts';
import { isForward, type ShapedWall } from './shape.ts';
import { moldingOf, playOf } from './section.ts';

export type LaidOut = Pick<Ceiling, 'walls' | 'square' | 'width' | 'length' | 'around' | 'across' | 'down' | 'lines' | 'beams' | 'room' | 'trimSplices'>;

/** A line that has a beginning and an end, and of which nobody knows yet what it meets. */
type RunningLine = Omit<Line, 'passes' | 'through' | 'start' | 'end' | 'faces' | 'leans' | 'splices' | 'sideSplices'>;
/** Before anybody knows what its lines meet. */
export type Outlined = Pick<LaidOut, 'walls' | 'beams' | 'room' | 'trimSplices'> & {
    readonly lines: readonly RunningLine[];
    readonly around: Readonly<Record<string, Omit<Band, 'splices'> | Omit<HalfBeam, 'splices'> | null>>;
};

/** What every line meets, and where. */
export function meetingsIn(ceiling: Outlined): Met {
    return metAsBefore(nameOf(ceiling), planOf(ceiling, AS_DRAWN));
}
const metAsBefore = keptByName(meet, MOST_ROOMS), drawnAsBefore = keptByName(arrange, MOST_ROOMS);

/** What a room is known by from one change of its file to the next. */
function nameOf({ room: { at: { uri }, name } }: Pick<LaidOut, 'room'>): string {
    return `${uri} ${name}`;
}

/**
 * Every piece of a ceiling with its place, and the joints. It is most of what there is to know of a room, so few are kept. `met`: its
 * meetings, where they are known.
 */
export const arrangedOf: (ceiling: LaidOut, met?: Met) => Arranged = kept(arranged, MOST_ROOMS);

function arranged(ceiling: LaidOut, met?: Met): Arranged {
    const exact = drawnAsBefore(nameOf(ceiling), planOf(ceiling, AS_DRAWN), { met });
    const moves = ceiling.square
        && [ceiling.across, ceiling.down].some(({ residue, coffers }) => residue.rest !== 0 || residue.cutCoffers.some((cut, i) => cut !== coffers[i]));
    let asCut = moves ? undefined : exact;
    // a keystroke needs the one as drawn alone
    return { exact, get asCut() { return asCut ??= arrange(planOf(ceiling, asItComesToStand(ceiling)), { like: exact }); } };
}

/** By how much a line stands to the east or south of where it is drawn, and what is left between a wall and what runs along it. */
interface Stand { moved(line: RunningLine): number; spare(wall: ShapedWall): number }
const AS_DRAWN: Stand = { moved: () => 0, spare: () => 0 };

/** Lines stand where the coffers put them that are cut before them, and those that are set by hand where they are set. */
function asItComesToStand({ across, down }: LaidOut): Stand {
    const runs = { 'north-south': across, 'east-west': down };
    const moved = { 'north-south': movedIn(across), 'east-west': movedIn(down) };
    return {
        // a line in two parts, on either side of something, is at one place of its run
        moved: line => moved[line.runs][runs[line.runs].lines.findIndex(({ low }) => low === line.low)] ?? 0,
        spare: wall => spareAt(wall, across, across.residue.rest / 2, 'x') + spareAt(wall, down, down.residue.rest / 2, 'y'),
    };
}

function movedIn({ start, lines, residue: { cutCoffers, rest } }: Run): readonly number[] {
    let at = start + rest / 2;
    if (lines.some(line => line.byHand)) return [];
    return lines.map((line, i) => {
        const width = line.high - line.low, low = at + cutCoffers[i]!;
        at = low + width;
        return low - line.low;
    });
}

function planOf({ walls, around, lines, beams, room, trimSplices }: Outlined | LaidOut, { moved, spare }: Stand): Plan {
    const trim = beams?.profile.trim, thickness = beams?.trimThickness?.ticks, foot = beams?.trimHeight?.ticks;
    // what is no number makes no corner of a piece
    const trims: Trim[] = trim && Number.isFinite(thickness) && Number.isFinite(foot) ? [{
        name: 'trim', thickness: thickness!, top: 0, foot: foot!, corners: trim.corners.value,
        ...trim.spring && { spring: trim.spring.value }, ...trimSplices && { splices: trimSplices },
    }] : [];
    const through = room.grid.through.value, panel = panelOver({ beams, lines, room });
    return {
        walls: walls.map(wall => wallOf(wall, around[wall.name] ?? null, room.job, spare(wall))),
        lines: lines.map(line => lineOf(line, moved(line), room.job, { relief: 'through' in line && line.through ? 0 : reliefOf(line, room.job), clearance: clearanceOf(line, room.job) })),
        through, corners: cornersOf(lines, around, walls, through), meetings: choicesOf(room, lines, walls, around), trims, ...panel && { panel },
    };
}

/** What the text says of crossings, and of lines that die into others as deep as they. */
function choicesOf({ crossings, lines: specs }: LaidOut['room'], lines: readonly RunningLine[], walls: readonly ShapedWall[], around: Outlined['around']): MeetingChoice[] {
    const through = crossings.flatMap((spec): MeetingChoice[] => {
        const both = linesOfCrossing(spec.name, lines);
        return both && spec.through ? [{ of: [both[0].name, both[1].name], through: spec.through.value }] : [];
    });
    const dying = specs.filter(spec => spec.meets?.value === 'dies-into').flatMap(({ name }) => [
        ...lines.filter(line => line.name !== name).map(line => line.name), ...walls.flatMap(({ name: wall }) => (around[wall]?.kind === 'half-beam' ? [wall] : [])),
    ].map((other): MeetingChoice => ({ of: [name, other], dies: name })));
    const choices = new Map<string, MeetingChoice>();
    for (const choice of [...dying, ...through]) {
        const key = [...choice.of].sort().join('\n');
        choices.set(key, { ...choices.get(key), ...choice });
    }
    return [...choices.values()];
}

function wallOf({ name, from, to }: ShapedWall, own: Outlined['around'][string], job: JobSettings, spare: number): Wall {
    const { splices = [], cleatSplices, sideSplices } = (own ?? {}) as Partial<Pick<HalfBeam, 'splices' | 'cleatSplices' | 'sideSplices'>>;
    const spots = (all: readonly Splice[]): Spot[] => all.map(({ at }) => alongWall({ from, to }, at));
    return {
        name, from, perimeter: perimeterOf(own, job, spare), splices: spots(splices), ...cleatSplices && { cleatSplices: spots(cleatSplices) },
        ...sideSplices && { sideSplices: spots(sideSplices) },
    };
}

/** So far along a wall from its west or north end. */
export function alongWall({ from, to }: Pick<ShapedWall, 'from' | 'to'>, at: Ticks): Spot {
    const [start, end] = isForward({ from, to }) ? [from, to] : [to, from], length = distance(end, start);
    return { x: start.x + (end.x - start.x) * at / length, y: start.y + (end.y - start.y) * at / length };
}

/** A wall at either end of a run has half of what is left of it. */
function spareAt({ from, to }: ShapedWall, { wallEnds }: Run, spare: number, axis: 'x' | 'y'): number {
    return from[axis] === to[axis] && wallEnds.includes(from[axis]) ? spare : 0;
}

/** What is left of the run stands between the wall and what runs along it. */
function perimeterOf(own: Outlined['around'][string], job: JobSettings, spare: number): Perimeter {
    if (own?.kind === 'half-beam') return own.section.profile.solid ? halfTimberOf(own, spare) : halfBeamOf(own, job, spare);
    const thickness = (own?.thickness.ticks ?? 0) + spare;
    return thickness === 0 ? { kind: 'bare' } : { kind: 'band', thickness, top: own ? own.lowerEdge.ticks - own.height.ticks : 0, foot: own?.lowerEdge.ticks ?? 0 };
}

function halfTimberOf({ width, section: { depth }, perimeter: { scribe } }: Pick<HalfBeam, 'width' | 'section' | 'perimeter'>, spare: number): Perimeter {
    return { kind: 'half-timber', width: width.ticks + spare, depth: depth.ticks, ...scribe && { scribe: scribe.value } };
}

function halfBeamOf({ width, section, perimeter: { scribe } }: Pick<HalfBeam, 'width' | 'section' | 'perimeter'>, job: JobSettings, spare: number): PlannedHalf {
    const { depth, left, bottom, blocking, cleats, molding } = beamOf({ section }, job, { relief: 0, clearance: clearanceOf({ section }, job) });
    return {
        kind: 'half-beam', inside: width.ticks + spare, depth, side: left, ...scribe && { scribe: scribe.value }, ...bottom && { bottom: { ...bottom, play: 0 } }, ...blocking && { blocking },
        ...molding && { molding }, ...cleats && { cleats, wallCleat: { width: cleats.width, height: cleats.height } },
    };
}

/** `moved`: square to it, to the east or south. */
function lineOf(line: RunningLine, moved: number, job: JobSettings, { relief, clearance }: Off): BeamLine {
    const { name, runs, from, to, spot: { x, y }, heading, section } = line;
    const spot = runs === 'north-south' ? { x: x + moved, y } : { x, y: y + moved }, sides = 'sideSplices' in line ? (line as Pick<Line, 'sideSplices'>).sideSplices : undefined;
    const spots = (splices: readonly Splice[]): Spot[] => splices.map(({ at }) => onLine({ spot, heading }, at));
    return {
        name, family: runs, from, to, spot, heading, beam: section.profile.solid ? solidOf(section) : beamOf(line, job, { relief, clearance }),
        splices: spots('splices' in line ? (line as Pick<Line, 'splices'>).splices : []), ...sides && { sideSplices: { left: spots(sides.left), right: spots(sides.right) } },
    };
}

/** What blocking is shorter where it goes in between others, in all, and how far it stays off a deeper beam. That of a half beam does neither. */
interface Off { readonly relief: Ticks; readonly clearance: Ticks }

function beamOf(line: Pick<Line, 'section' | 'otherSide'>, job: JobSettings, { relief, clearance }: Off): BoxBeam {
    const { section } = line, { innerWidth, depth, blockingThickness, blockingWidth, cleatThickness, cleatHeight, profile } = section;
    const molding = moldingOf(section), [left, right] = FLANKS.map(flank => sideOf(sectionAt(line, flank))) as [BoxBeam['left'], BoxBeam['right']];
    return {
        kind: 'box', inside: innerWidth.ticks, depth: depth.ticks, left, right,
        bottom: bottomOf(section), ...molding && { molding },
        ...profile.blocking
            && { blocking: { thickness: blockingThickness.ticks, narrower: innerWidth.ticks - blockingWidth.ticks, short: relief / 2, clearance } },
        ...profile.wraps && { wraps: true },
        ...profile.cleats && cleatThickness && cleatHeight
            && { cleats: {
                width: cleatThickness.ticks, height: cleatHeight.ticks, short: profile.cleats.shortEachEnd.value,
                longest: longestPiece(profile.cleats.stock?.value, job),
            } },
    };
}

const FLANKS = ['left', 'right'] as const;

/** `letIn`: what a bottom in rabbets goes into it. */
function sideOf({ sideThickness, heldDown, profile: { bottom, sides } }: Line['section']): BoxBeam['left'] {
    const letIn = bottom?.place.value === 'in-rabbets' ? sides?.rabbet?.value.width.ticks : undefined;
    return { thickness: sideThickness.ticks, heldDown: heldDown.value.ticks, ...letIn !== undefined && { letIn } };
}

function solidOf({ outerWidth, depth }: Line['section']): Beam {
    return { kind: 'solid', width: outerWidth.ticks, depth: depth.ticks };
}

function bottomOf({ bottomThickness, bottomWidth, outerWidth, profile: { bottom }, ...section }: Line['section']): BottomBoard {
    const place = bottom?.place.value ?? 'between-sides', thickness = bottomThickness.ticks;
    switch (place) {
        case 'under-sides': return { place, by: (bottomWidth.ticks - outerWidth.ticks) / 2, play: 0, thickness };
        case 'in-rabbets': return { place, by: 0, play: playOf(section), thickness };
        case 'between-sides': return { place, by: 0, play: playOf(section), thickness };
    }
}

/**
 * Lines that cross have the same corners: corners.ts sees to it. Where nobody names the sides that run past, they do in the direction
 * in which the bottoms run through.
 */
function cornersOf(lines: readonly RunningLine[], around: Outlined['around'], walls: readonly ShapedWall[], through: Direction): Corners {
    const first = lines.find(({ section: { profile } }) => !profile.solid)?.section ?? walls.flatMap(({ name }) => { const own = around[name]; return own?.kind === 'half-beam' ? [own.section] : []; })[0];
    const said = first?.profile.sides;
    return said?.corners.value === 'butted' ? { kind: 'butted', past: said.past?.value ?? through } : { kind: 'mitered' };
}

/** Why the arrangement cannot be built, at the words of what stands in the way. */
export function arrangementTroubles({ troubles }: Pick<Arrangement, 'troubles'>, { around, lines, room }: Pick<Outlined, 'around' | 'lines' | 'room'>): Trouble[] {
    const specs = new Map(room.lines.map(spec => [spec.name, spec]));
    const at = (...names: readonly string[]): Source | undefined =>
        names.flatMap(name => around[name]?.perimeter.kind.at ?? lines.find(line => line.name === name)?.at ?? [])[0];
    const ofLine = (name: string): Source => { const spec = specs.get(name); return (spec?.until ?? spec?.from ?? spec?.place?.by)?.at ?? at(name)!; };
    // what is wrong once is wrong at every line
    const first = troubles.filter((trouble, i) => troubles.findIndex(other => other.kind === trouble.kind) === i);
    return first.flatMap((trouble): Trouble[] => {
        switch (trouble.kind) {
            case 'never-gets-there': case 'misses': return [{ kind: 'line-goes-nowhere', line: trouble.line, why: { kind: trouble.kind, to: trouble.to }, at: ofLine(trouble.line) }];
            case 'leaves-the-room': return [{ kind: 'line-goes-nowhere', line: trouble.line, why: { kind: trouble.kind, to: trouble.at }, at: ofLine(trouble.line) }];
            case 'on-a-wall': return [{
                kind: 'line-goes-nowhere', line: trouble.line, at: ofLine(trouble.line),
                why: { kind: trouble.kind, to: trouble.wall, by: (lines.find(line => line.name === trouble.line)?.section.outerWidth.ticks ?? 0) / 2 },
            }];
            case 'grazes': return [{ kind: 'line-goes-nowhere', line: trouble.line, why: { kind: trouble.kind, to: trouble.wall, by: trouble.by }, at: ofLine(trouble.line) }];
            case 'sticks-out': return [{ kind: 'line-goes-nowhere', line: trouble.line, why: { kind: trouble.kind, to: trouble.through, other: trouble.other, by: trouble.by }, at: ofLine(trouble.line) }];
            case 'outside': return [{ kind: 'line-goes-nowhere', line: trouble.line, why: { kind: trouble.kind }, at: ofLine(trouble.line) }];
            case 'crowds': return [{ kind: 'line-goes-nowhere', line: trouble.line, why: { kind: trouble.kind, to: trouble.wall, leaves: trouble.leaves, wants: trouble.wants }, at: ofLine(trouble.line) }];
            case 'shortens': return [{ kind: 'line-goes-nowhere', line: trouble.line, why: { kind: trouble.kind, to: trouble.along, leaves: trouble.leaves, wants: trouble.wants }, at: ofLine(trouble.line) }];
            case 'deeper-than-its-end': return [{ kind: 'line-goes-nowhere', line: trouble.line, why: { kind: trouble.kind, to: trouble.at, deep: trouble.deep, has: trouble.has }, at: around[trouble.at]?.perimeter.kind.at ?? ofLine(trouble.line) }];
            case 'in-the-way': {
                const [a, b] = trouble.between, line = [b, a].find(name => lines.some(one => one.name === name)) ?? trouble.on;
                return [{ kind: 'line-goes-nowhere', line, why: { kind: trouble.kind, on: trouble.on, other: line === a ? b : a, by: trouble.by }, at: ofLine(line) }];
            }
            default: return [{ kind: 'not-supported', what: `these lines and walls together (${trouble.kind})`, instead: 'a rectangle of lines from wall to wall', at: lines[0]?.at ?? room.at }];
        }
    });
}
