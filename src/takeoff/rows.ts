import { diesByChoice } from '../ceiling/along.ts';
import { breaks, centerOf } from '../ceiling/bays.ts';
import { sideReach } from '../ceiling/corners.ts';
import { bottomReachAt, flankOf, sidesOf, thicknessOfSides } from '../ceiling/flanks.ts';
import { playOf } from '../ceiling/section.ts';
import type { Band, Ceiling, HalfBeam, Line, Run } from '../ceiling/model.ts';
import { isLevel } from '../ceiling/shape.ts';
import { relationOfBeams } from '../ceiling/meeting.ts';
import { clearanceOf, reliefOf } from '../ceiling/relief.ts';
import type { Side } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Part, Piece } from './model.ts';
import { grouped } from '../plain/groups.ts';

/** Pieces that stand one after the other from wall to wall, with what stands between them, and the room they have. */
export interface Row {
    readonly part: Part;
    readonly pieces: readonly Piece[];
    /** Cut lengths and what stands between the pieces, together; and from wall to wall or band to band. In ticks. */
    readonly sum: Ticks; readonly room: Ticks;
    /** What the text lets it be longer (press) or shorter (rounding, play, relief, residue at the band): both positive. */
    readonly longer: Ticks; readonly shorter: Ticks;
}

const IN_ROWS: ReadonlySet<Part> = new Set<Part>(['blocking', 'bottom', 'side', 'cleat', 'band']);

/** Half a tick of play on either side of a bottom. */
const HAIR: Ticks = 2;

/**
 * Every row of a cut list, added up from cut lengths, walls and the sections of the crossing lines alone: nothing that the take-off
 * or the layout works out of positions or coffers is used. A row that lacks a piece is none: that is told as a missing piece.
 */
export function rowsOf(ceiling: Ceiling, pieces: readonly Piece[]): Row[] {
    const groups = grouped(
        pieces.filter(({ part }) => IN_ROWS.has(part)),
        ({ part, line, bay, on }) => `${part} ${line} ${part === 'band' || bay !== null ? on : ''}`,
    );
    return [...groups.values()].flatMap(group => rowOf(ceiling, group) ?? []);
}

/** Rows that come to more, or to less, than the text allows. */
export function rowsOff(ceiling: Ceiling, pieces: readonly Piece[]): Row[] {
    return rowsOf(ceiling, pieces).filter(({ sum, room, longer, shorter }) => sum > room + longer + HAIR || sum < room - shorter - HAIR);
}

function rowOf(ceiling: Ceiling, pieces: readonly Piece[]): Row | undefined {
    const { part, on } = pieces[0]!;
    const { width, length, walls, around, square, room: { job } } = ceiling;
    // in a room of other walls the dry fit looks at them
    if (!square || walls.length !== 4) return undefined;
    const at = (level: boolean): ReturnType<typeof outerWalls> => outerWalls(ceiling, level);
    const cut = pieces.reduce((sum, piece) => sum + piece.cutBack, 0), rounding = pieces.length * job.cutTo.value;
    if (part === 'band') {
        // those along the east and west walls stand between those of the other two
        const between = at(true).reduce((sum, own) => sum + (own?.kind === 'band' ? own.thickness.ticks : 0), 0), wall = walls.find(({ name }) => name === on);
        const room = wall && isLevel(wall) ? width : length - between;
        return { part, pieces, sum: cut, room, longer: 0, shorter: rounding };
    }
    const line = ceiling.lines.find(one => one.name === pieces[0]!.line), isOfSides = part === 'side' || part === 'cleat';
    if (!line) return undefined;
    const run = line.runs === 'east-west' ? ceiling.across : ceiling.down, others = new Map(ceiling.lines.map(one => [one.name, one]));
    const room = line.end - line.start + (part === 'blocking' ? beyondBottom(line, ceiling, others) : 0);
    // sides are mitered round to those of what a line ends at where that is as deep: the dry fit looks at them
    if (isOfSides && [line.from, line.to].some(name => around[name]?.kind === 'half-beam' || others.has(name))) return undefined;
    const press = part === 'bottom' ? pieces.length * (line.section.profile.bottom?.press?.value ?? 0) : 0;
    if (line.through && !isOfSides && [line.from, line.to].some(name => others.has(name))) return undefined;
    if (line.through && pieces.every(piece => piece.bay === null)) return { part, pieces, sum: cut, room, longer: press, shorter: rounding + (part === 'blocking' ? clearOfHalfBeams(line, ceiling) : 0) };
    const flank = isOfSides ? flankOf(on as Side) : 'bottom', met = line.passes.filter(pass => breaks(pass, flank)).map(pass => ({ ...pass, other: others.get(pass.of)! }));
    // so many sides there are; a cleat may come in several
    const sides = met.length + 1 + (flank === 'bottom' ? 0 : line.sideSplices?.[flank].length ?? 0);
    if (!isOfSides && line.splices.length > 0 || (part === 'cleat' ? pieces.length < sides : pieces.length !== sides)) return undefined;
    const short = part === 'cleat' ? 2 * sides * (line.section.profile.cleats?.shortEachEnd.value ?? 0) : 0;
    const relief = part === 'blocking' ? pieces.length * Math.max(reliefOf(line, job), 2 * clearanceOf(line, job)) : 0;
    const flush = met.filter(({ relation }) => relation === 'flush').map(({ other }) => other);
    // a line that it stops at comes to stand where coffers cut to the tape put it
    const moved = [line.from, line.to].some(name => others.has(name)) ? run.coffers.length * job.cutTo.value / 2 : 0;
    const play = part === 'bottom' ? flush.reduce((sum, other) => sum + Math.max(0, playOf(other.section)), 0) : 0;
    return {
        part, pieces, room, sum: cut + short + met.reduce((sum, { relation, other }) => sum + between(line, other, part, relation === 'dies', ceiling), 0),
        longer: press - Math.min(0, ...flush.map(other => playOf(other.section))) * flush.length + moved,
        shorter: rounding + play + relief + stated(run, job.cutTo.value) + moved,
    };
}

/** Blocking ends at the blocking of the half beam or the line that it meets where that is as deep: it may lie farther back than the edge of its bottom. */
function beyondBottom(line: Line, ceiling: Ceiling, others: ReadonlyMap<string, Line>): number {
    return [line.from, line.to].reduce((sum, name, i) => {
        const own = ceiling.around[name], other = others.get(name), section = own?.kind === 'half-beam' ? own.section : other?.section;
        if (section?.depth.ticks !== line.section.depth.ticks || section.profile.solid || diesByChoice(line, ceiling)) return sum;
        if (own?.kind === 'half-beam') return sum + own.bottomWidth.ticks - own.width.ticks;
        // on the near side of its center, or where it runs on beneath it on the far one
        const isNear = i === 0 ? line.start > centerOf(other!) : line.end < centerOf(other!), [low, high] = sidesOf(other!.runs);
        const back = bottomReachAt(other!, flankOf((i === 0) === isNear ? high : low)) - section.blockingWidth.ticks / 2;
        return sum + (isNear ? back : 0 - back);
    }, 0);
}

/** What blocking stays clear of in all, at both its ends, where its line dies into a half beam. */
function clearOfHalfBeams(line: Line, { around, room: { job } }: Ceiling): Ticks {
    const dies = [line.from, line.to].map(wall => around[wall]).some(own => own?.kind === 'half-beam' && relationOfBeams(line, own) === 'dies');
    return dies ? 2 * clearanceOf(line, job) : 0;
}

/** What runs along the walls that lie east-west, or north-south. */
function outerWalls({ walls, around }: Ceiling, level: boolean): (Band | HalfBeam | null)[] {
    return walls.filter(wall => isLevel(wall) === level).map(({ name }) => around[name] ?? null);
}

/** What one crossing line takes of a row: measured at the backs of sides and cleats, and at the edges of bottoms and blocking; all of a deeper one. */
function between(line: Line, { section }: Line, part: Part, dies: boolean, { room }: Ceiling): Ticks {
    const wide = section.innerWidth.ticks + thicknessOfSides(section);
    if (dies) return wide;
    if (part === 'bottom') return section.bottomWidth.ticks;
    if (part === 'blocking') return section.blockingWidth.ticks;
    return wide - sideReach(line, { section }, room.grid.through.value);
}

/** What the text itself leaves open in a run: all that the band is said to take, or less than a step that no coffer can take. */
function stated({ residue: { place }, coffers }: Run, step: Ticks): Ticks {
    return place === 'band' ? coffers.length * step : step;
}
