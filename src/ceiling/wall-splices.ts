import type { Turn } from '../arrangement/wall-ends.ts';
import type { Room, SaidSplice } from '../job/model.ts';
import { printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { onLine, placeAlong } from './along.ts';
import type { Edging } from './band.ts';
import { asPlaced } from './chords.ts';
import { longestPiece } from './longest.ts';
import { relationOfBeams } from './meeting.ts';
import type { HalfBeam, Line, Splice, Tape, Trouble } from './model.ts';
import { endsOfWall, isForward, isLevel, type Shape, type ShapedWall } from './shape.ts';
import { areWithin, spliceAnywhere, spliceOnCrossings } from './splices.ts';

interface Walls { readonly shape: Shape; readonly edging: ReadonlyMap<string, Edging | null>; readonly room: Room; readonly step: Ticks }

/**
 * Where the band of a wall, or the bottom and blocking of its half beam, is spliced: where the wall says so, else on the centers of the lines that meet it.
 * From the wall's west or north end.
 */
export function wallSplicesOf(index: number, lines: readonly Line[], { shape: { walls }, edging, room, step }: Walls, troubles: Trouble[]): readonly Splice[] {
    const wall = walls[index]!, own = edging.get(wall.name)!, said = room.wallSplices?.[wall.name];
    const off = endsOfWall(walls, index).map(({ wall: other, turn }) => standsOff(own, edging.get(other.name) ?? null, wall, turn));
    const [from, to] = [off[0]!, wall.length - off[1]!], crossings = crossingsOn(wall, lines);
    if (said) return saidSplices(said, { wall, from, to, crossings, room }, troubles);
    if (own.perimeter.splices.value === 'never') return [];
    const stocks = own.kind === 'band' ? [own.perimeter.stock] : [own.section.profile.bottom?.stock, own.section.profile.blocking?.stock, own.section.profile.solid?.stock];
    const most = Math.min(...stocks.map(stock => longestPiece(stock?.value, room.job)));
    return spliceOnCrossings({ from, to, most, crossings: crossings.map(spotOf), neighbor: [], step }) ?? [];
}

/**
 * A cleat on the wall is spliced where the bottom is, whose edge bears on it. Where its boards are too short for that, it comes in pieces as long as they
 * are, which nobody sees.
 */
export function withCleatSplices(own: HalfBeam, index: number, lines: readonly Line[], { shape: { walls }, room, step }: Walls): HalfBeam {
    const wall = walls[index]!, { splices, section: { profile: { cleats } } } = own, most = cleats ? longestPiece(cleats.stock?.value, room.job) : Infinity;
    const stops = [0, ...splices.map(({ at }) => at), wall.length];
    if (areWithin(stops, most)) return own;
    const crossings = crossingsOn(wall, lines), place = (at: Ticks): string => placeOf(at, crossings);
    const cleatSplices = spliceAnywhere({ from: 0, to: wall.length, most, neighbor: splices, step, isClear: () => true, place });
    return cleatSplices ? { ...own, cleatSplices } : own;
}

/** A splice of what runs along a wall where nothing does. */
export function uselessSplices({ wallSplices = {} }: Room, edging: Walls['edging']): Trouble[] {
    return Object.entries(wallSplices).flatMap(([name, [said]]): Trouble[] => (said && edging.get(name) === null
        ? [{ kind: 'not-supported', what: `a splice along the ${name} wall, along which nothing runs`, because: 'nothing is joined there', instead: 'a splice of a band or a half beam', at: said.at }] : []));
}

/** The lines that end at a wall, in order along it. */
export function crossingsOn(wall: ShapedWall, lines: readonly Line[]): (Splice & { readonly line: Line })[] {
    return lines.flatMap(line => {
        const end = line.from === wall.name ? line.start : line.to === wall.name ? line.end : undefined;
        return end === undefined ? [] : [{ at: Math.floor(placeOn(wall, line, end)), place: `on line ${line.name}`, line }];
    }).sort((a, b) => a.at - b.at);
}

export function spotOf({ at, place }: Splice): Splice {
    return { at, place };
}

interface Said { readonly wall: ShapedWall; readonly from: Ticks; readonly to: Ticks; readonly crossings: ReturnType<typeof crossingsOn>; readonly room: Room }

function saidSplices(said: readonly SaidSplice[], { wall, from, to, crossings, room: { job } }: Said, troubles: Trouble[]): readonly Splice[] {
    const size = (ticks: Ticks): string => printLength(ticks, job.show.value), sides = isLevel(wall) ? ['west', 'east'] : ['north', 'south'];
    const onLines = crossings.map(({ at, line }): [string, Tape] => [line.name, { at, way: 1 }]);
    const hooks = new Map<string, Tape>([[sides[0]!, { at: 0, way: 1 }], [sides[1]!, { at: wall.length, way: -1 }], ...onLines]);
    const splices = said.flatMap((one): Splice[] => {
        const hook = hooks.get((one.from ?? sides[0]!).replace(/^wall-/, ''));
        if (!hook) {
            troubles.push({ kind: 'unknown-meeting', of: `the splices along the ${wall.name} wall to be measured from`, name: one.from!, has: [...hooks.keys()], at: one.at });
            return [];
        }
        const at = hook.at + hook.way * one.value;
        if (at > from && at < to) return [{ at, place: placeOf(at, crossings), said: one.at, tape: hook }];
        const most = hook.way > 0 ? to - hook.at : hook.at - from;
        troubles.push({ kind: 'not-supported', what: `a splice at ${size(one.value)} along the ${wall.name} wall`, because: 'nothing is joined there', instead: `a place between its ends, less than ${size(most)}`, at: one.at });
        return [];
    });
    return splices.sort((a, b) => a.at - b.at).filter(({ at }, i, all) => at !== all[i - 1]?.at);
}

export function placeOf(at: Ticks, crossings: Said['crossings']): string {
    const over = crossings.find(({ at: center, line }) => Math.abs(center - at) * 2 < line.high - line.low);
    if (over) return over.place;
    const before = crossings.findLast(one => one.at < at)?.line.name, after = crossings.find(one => one.at > at)?.line.name;
    if (before === undefined && after === undefined) return 'between the walls';
    if (before !== undefined && after !== undefined) return `between lines ${before} and ${after}`;
    return before === undefined ? `between the wall and line ${after}` : `between line ${before} and the wall`;
}

/** How far from the wall's west or north end a line stands that ends at it. */
function placeOn(wall: ShapedWall, line: Line, end: Ticks): number {
    return placeOnWall(wall, onLine(line, end));
}

export function placeOnWall({ from, to }: ShapedWall, spot: Parameters<typeof placeAlong>[1]): number {
    const wall = asPlaced(isForward({ from, to }) ? { from, to } : { from: to, to: from });
    return placeAlong(wall, spot) - placeAlong(wall, wall.spot);
}

/**
 * Of two alike the one along the north or south wall runs to the other wall; a half beam ends at a band, and a band runs past it.
 * Round an outside corner both run on, if they are alike; what ends beside something else along a wall in line with its own ends where they join.
 */
function standsOff(own: Edging, other: Edging | null, wall: ShapedWall, turn: Turn): Ticks {
    const level = isLevel(wall);
    if (turn === 'straight') return 0;
    const relation = own.kind === 'half-beam' && other?.kind === 'half-beam' ? relationOfBeams(own, other) : 'flush';
    if (turn === 'outside') return own.kind === other?.kind && relation === 'flush' && (own.kind === 'band' || level) ? -other.reach.ticks : 0;
    // of two depths the deeper runs to the wall, and the shallower ends at its face
    if (relation !== 'flush') return relation === 'dies' ? other!.reach.ticks : 0;
    if (own.kind === other?.kind) return level ? 0 : other.kind === 'band' ? other.reach.ticks : other.width.ticks;
    return own.kind === 'half-beam' && other?.kind === 'band' ? other.reach.ticks : 0;
}
