import { lengthOf } from '../plane/point.ts';
import type { Direction, LineSpec, Room } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { onLine, unitOf } from './along.ts';
import { asPlaced, chordsOf, crossingPlace, type Chord } from './chords.ts';
import { lowReach, otherSideOf } from './flanks.ts';
import type { Placed } from './laying.ts';
import type { LineSections } from './lines.ts';
import type { Line, Run, Trouble } from './model.ts';
import { isForward, isLevel, type Shape, type ShapedWall } from './shape.ts';

/** A line that stands somewhere, between two walls or lines. `reach`: from wall to wall along it. */
export type StandingLine = Omit<Line, 'passes' | 'through' | 'start' | 'end' | 'faces' | 'leans' | 'splices'> & { readonly reach: readonly [Ticks, Ticks] };
/** A division of the room, and its lines; one that leaves the room and enters it again is as many as it has parts. */
export interface Divided { readonly run: Run<StandingLine>; readonly all: readonly StandingLine[] }
/** The divisions, and all lines, those that run north-south first. */
export interface Standing { readonly across: Run<StandingLine>; readonly down: Run<StandingLine>; readonly lines: readonly StandingLine[] }

interface Parts { readonly room: Room; readonly shape: Shape; readonly sections: LineSections; readonly troubles: Trouble[] }

/**
 * The lines that the grid's divisions make, and those that the text sets by hand: one of the grid's moved to another place, or one of any name
 * beside them; and what each runs between. Undefined where something is missing or wrong, then with a trouble.
 */
export function standingLines(across: Divided, down: Divided, parts: Parts): Standing | undefined {
    const lines = new Map([...across.all, ...down.all].map(line => [line.name, line]));
    const placed = setByHand(lines, parts);
    const all = placed && endedAsSaid([...lines.values()], parts);
    if (!all) return undefined;
    const of = (runs: Direction): StandingLine[] => all.filter(line => line.runs === runs), standing = new Map(all.map(line => [line.name, line]));
    const overlaps = [...inEachOther(of('north-south'), parts), ...inEachOther(of('east-west'), parts)];
    parts.troubles.push(...overlaps);
    if (overlaps.length > 0) return undefined;
    return { across: withMoved(across.run, standing), down: withMoved(down.run, standing), lines: [...of('north-south'), ...of('east-west')] };
}

/** Puts the lines that are set by hand among the others; false where one cannot be placed. */
function setByHand(lines: Map<string, StandingLine>, { room, shape, sections, troubles }: Parts): boolean {
    const has = [...lines.keys()];
    let isSound = true;
    for (const { name, at, place } of room.lines) {
        if (!place) {
            if (!lines.has(name)) troubles.push({ kind: 'unknown-line', name, has, at });
            continue;
        }
        const section = sections.whole(name), { from, by } = place;
        if (!section || !from) return false;
        const placed = alongside(from, by.value, lines, shape, troubles), moved = lines.get(name);
        if (placed && moved && moved.runs !== placed.runs) {
            troubles.push({ kind: 'not-supported', what: `line ${name}, which runs ${moved.runs}, set ${placed.runs}`, because: 'a name has one direction', instead: 'a line of another name', at });
        }
        const chord = placed && chordsOf(placed, shape.walls)[0];
        if (!placed || moved && moved.runs !== placed.runs) { isSound = false; continue; }
        if (!chord) {
            troubles.push({ kind: 'line-goes-nowhere', line: name, why: { kind: 'leaves-the-room', to: wallNamed(from.value, shape)?.name ?? from.value }, at: by.at });
            isSound = false;
            continue;
        }
        const other = otherSideOf(name, placed.runs, section, sections.spec(name), troubles);
        const beam = { section, runs: placed.runs, ...other && { otherSide: other } };
        const width = section.outerWidth.ticks, low = Math.round(acrossAt(placed, chord, placed.runs) - lowReach(beam));
        lines.set(name, { name, ...placed, ...beam, low, high: low + width, ...between(chord), byHand: true, at });
    }
    return isSound;
}

function between({ from, to, start, end }: Chord): Pick<StandingLine, 'from' | 'to' | 'reach'> {
    return { from: from.name, to: to.name, reach: [Math.round(start), Math.round(end)] };
}

/** Where its center stands, across its direction, at its beginning. */
export function acrossAt(line: Placed, { start }: Pick<Chord, 'start'>, runs: Direction): number {
    return onLine(line, start)[runs === 'north-south' ? 'x' : 'y'];
}

/** A line that runs along a wall, so far into the room; or along a line, so far to the east or south of it. */
function alongside(
    from: Given<string>, by: Ticks, lines: ReadonlyMap<string, StandingLine>, shape: Shape, troubles: Trouble[],
): Placed & { readonly runs: Direction } | undefined {
    const line = lines.get(from.value), wall = line ? undefined : wallNamed(from.value, shape);
    if (line) {
        const { spot, heading, runs } = line, u = unitOf(line), way = runs === 'north-south' ? by : -by;
        return { runs, heading, spot: { x: spot.x + u.y * way, y: spot.y - u.x * way } };
    }
    if (!wall) {
        troubles.push({ kind: 'unknown-meeting', of: 'a line', name: from.value, has: [...wallWords(shape), ...lines.keys()], at: from.at });
        return undefined;
    }
    // the room lies to the right of a wall
    const dx = wall.to.x - wall.from.x, dy = wall.to.y - wall.from.y, length = lengthOf({ x: dx, y: dy }), way = isForward(wall) ? 1 : -1;
    const heading = dx === 0 || dy === 0 ? { x: Math.sign(dx) * way + 0, y: Math.sign(dy) * way + 0 } : { x: dx * way, y: dy * way };
    const level = isLevel(wall), spot = { x: wall.from.x - dy / length * by, y: wall.from.y + dx / length * by };
    return { runs: level ? 'east-west' : 'north-south', heading, spot };
}

/** `wall-south`, or `south`. */
function wallNamed(name: string, { walls }: Pick<Shape, 'walls'>): ShapedWall | undefined {
    return walls.find(wall => `wall-${wall.name}` === name) ?? walls.find(wall => wall.name === name);
}
function wallWords({ walls }: Shape): string[] {
    return walls.map(({ name }) => `wall-${name}`);
}

/** Lines that stop at a line, or run part way, end there; the others run from wall to wall. Undefined where one cannot. */
function endedAsSaid(lines: readonly StandingLine[], { room, shape, troubles }: Parts): StandingLine[] | undefined {
    const specs = new Map(room.lines.map(spec => [spec.name, spec]));
    const ended = lines.map(line => {
        const spec = specs.get(line.name), isSaid = Boolean(spec?.from ?? spec?.until);
        if (!spec || !isSaid && !line.byHand) return line;
        const chords = chordsOf(line, shape.walls);
        if (!isSaid) return chords.length > 1 ? saidTooLittle(line, chords, troubles) : line;
        return endedAt(line, spec, chords, lines, shape, troubles);
    });
    return ended.every(line => line !== undefined) ? ended : undefined;
}

function saidTooLittle(line: StandingLine, chords: readonly Chord[], troubles: Trouble[]): undefined {
    const { from, to } = chords[0]!;
    troubles.push({
        kind: 'not-supported', what: `line ${line.name}, which leaves the room and comes back into it`,
        because: 'nobody says in which of its stretches it is wanted', instead: `a line that is given its ends: \`from wall-${from.name}\`, \`until wall-${to.name}\``, at: line.at,
    });
}

function endedAt(
    line: StandingLine, spec: LineSpec, chords: readonly Chord[], lines: readonly StandingLine[], shape: Shape, troubles: Trouble[],
): StandingLine | undefined {
    const named = (given: Given<string> | undefined): { name: string; place: number | undefined } | null | undefined => {
        if (!given) return undefined;
        const other = lines.find(one => one.name === given.value && one !== line), wall = other ? undefined : wallNamed(given.value, shape);
        if (other) return { name: other.name, place: crossingPlace(line, other) };
        if (wall) return { name: wall.name, place: crossingPlace(line, asPlaced(wall)) };
        const has = [...wallWords(shape), ...lines.filter(one => one.runs !== line.runs).map(one => one.name)];
        troubles.push({ kind: 'unknown-meeting', of: `line ${line.name}`, name: given.value, has, at: given.at });
        return null;
    };
    const from = named(spec.from), until = named(spec.until);
    if (from === null || until === null) return undefined;
    // one that is said from south to north is the same line
    const [first, last] = from && until && (from.place ?? 0) > (until.place ?? 0) ? [until, from] : [from, until];
    const within = (place: number | undefined): Chord | undefined => {
        return chords.find(({ start, end }) => place !== undefined && place > start - 1 && place < end + 1);
    };
    // it was set where it runs through the room
    const chord = within(first?.place) ?? within(last?.place) ?? chords[0]!;
    return { ...line, ...between(chord), from: first?.name ?? chord.from.name, to: last?.name ?? chord.to.name };
}

/** Lines of one direction that stand in each other where both run along the compass, unless they run on different stretches: the arrangement looks at those. */
function inEachOther(lines: readonly StandingLine[], { room }: Parts): Trouble[] {
    const partWay = new Set(room.lines.filter(({ from, until }) => from || until).map(({ name }) => name));
    const sorted = lines.filter(({ heading }) => heading.x === 0 || heading.y === 0).sort((a, b) => a.low - b.low);
    return sorted.slice(1).flatMap((line, i): Trouble[] => {
        const before = sorted[i]!;
        if (line.low > before.high || !line.byHand && !before.byHand || partWay.has(line.name) && partWay.has(before.name)) return [];
        return [{ kind: 'lines-overlap', lines: [before.name, line.name], by: before.high - line.low, at: (line.byHand ? line : before).at }];
    });
}

/** Where one of its lines is set by hand, the division's sizes hold no longer: coffers are what lies between the lines, and cut as they lie. */
function withMoved(run: Run<StandingLine>, standing: ReadonlyMap<string, StandingLine>): Run<StandingLine> {
    const lines = run.lines.map(line => standing.get(line.name)!);
    if (!lines.some(line => line.byHand)) return { ...run, lines };
    const sorted = [...lines].sort((a, b) => a.low - b.low), faces = [run.start, ...sorted.flatMap(({ low, high }) => [low, high]), run.end];
    const coffers = run.coffers.map((_, i) => faces[2 * i + 1]! - faces[2 * i]!);
    return { ...run, lines: sorted, coffers, residue: { ...run.residue, ticks: 0, cutCoffers: coffers, rest: 0 } };
}
