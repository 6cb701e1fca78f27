import { lineBetween, lineThrough, offset, turnedRound, type Line } from '../plane/line.ts';
import type { Point, Vector } from '../plane/point.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { offsetsOfBeam, offsetsOfWall, type Offsets } from './offsets.ts';
import type { Beam, BeamLine, Perimeter, Wall } from './plan.ts';
import { relationByDepth } from './relation.ts';
import { pointOf, type Unit } from './unit.ts';

/**
 * A wall or a line, as an infinite line with a direction. Its flank is what looks into a coffer: a wall has one, a line has two. Every
 * flank is walked so that the coffer lies on its right; so a coffer is walked clockwise, and somebody who stands in it and faces
 * the flank has its start on the left and its end on the right.
 */
export interface Flank {
    /** Counts all flanks of a plan. */
    readonly id: number;
    readonly of: Carrier;
    /** Of a line: the side of somebody who walks along the line. */
    readonly side: 'left' | 'right';
    /** Of what runs along a wall: the end that it closes. Its base is no wall. */
    readonly closes?: 'start' | 'end';
    /** The wall or the center line, walked the flank's way, and its parallels towards the coffer. */
    readonly base: Line;
    readonly face: Line; readonly back: Line; readonly bottom: Line; readonly blocking: Line;
    readonly offsets: Offsets;
}

export interface WallCarrier {
    readonly kind: 'wall';
    readonly name: string; readonly index: number; readonly family: string;
    readonly wall: Wall; readonly perimeter: Perimeter;
    readonly start: Point; readonly end: Point;
    readonly right: Flank;
    /** Where what runs along it ends by itself though the room goes on: see wall-ends.ts. */
    readonly closes: { start?: Flank; end?: Flank };
}
export interface LineCarrier {
    readonly kind: 'line';
    readonly name: string; readonly index: number; readonly family: string;
    readonly line: BeamLine; readonly beam: Beam;
    readonly center: Line;
    readonly direction: Vector;
    readonly left: Flank; readonly right: Flank;
}
export type Carrier = WallCarrier | LineCarrier;

/** Walls first, then lines, in the plan's order. A wall of no length has no carrier: troubles.ts tells of it. */
export function carriersOf(walls: readonly Wall[], lines: readonly BeamLine[], unit: Unit): { walls: WallCarrier[]; lines: LineCarrier[] } {
    let id = 0;
    const flank = (of: Carrier, side: Flank['side'], base: Line, offsets: Offsets): Flank => {
        const at = (ticks: number): Line => offset(base, Math.round(ticks * unit.perTick));
        return {
            id: id++, of, side, base, offsets, face: at(offsets.face), back: at(offsets.back), bottom: at(offsets.bottom), blocking: at(offsets.blocking),
        };
    };
    const starts = walls.map(wall => pointOf(wall.from, unit));
    const wallCarriers = walls.flatMap((wall, index): WallCarrier[] => {
        const start = starts[index]!, end = starts[(index + 1) % starts.length]!;
        const base = lineBetween(start, end);
        if (!base) return [];
        const carrier = { kind: 'wall' as const, name: wall.name, index, family: familyOfWall(base), wall, perimeter: wall.perimeter, start, end, closes: {} } as Mutable<WallCarrier>;
        carrier.right = flank(carrier, 'right', base, offsetsOfWall(wall.perimeter));
        return [carrier];
    });
    const lineCarriers = lines.map((line, i): LineCarrier => {
        const center = lineThrough(pointOf(line.spot, unit), line.heading);
        const carrier = {
            kind: 'line' as const, name: line.name, index: walls.length + i, family: line.family, line, beam: line.beam, center,
            direction: { x: center.b, y: 0 - center.a },
        } as Mutable<LineCarrier>;
        carrier.left = flank(carrier, 'left', turnedRound(center), offsetsOfBeam(line.beam, 'left'));
        carrier.right = flank(carrier, 'right', center, offsetsOfBeam(line.beam, 'right'));
        return carrier;
    });
    return { walls: wallCarriers, lines: lineCarriers };
}
type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A half beam round the walls counts with the lines that run its way. */
function familyOfWall({ a, b }: Line): string {
    return Math.abs(b) >= Math.abs(a) ? 'east-west' : 'north-south';
}

export function flanksOf(carrier: Carrier): readonly Flank[] {
    return carrier.kind === 'wall' ? [carrier.right] : [carrier.left, carrier.right];
}

/** Whether the flank looks this way: 1, against it -1, along it 0. */
export function looks({ base }: Flank, way: Vector): number {
    const over = base.a * way.x + base.b * way.y;
    return Math.sign(over) + 0;
}

/** The flank of a line, or of a wall if it has one there, that looks this way. */
export function flankLooking(carrier: Carrier, way: Vector): Flank | undefined {
    return flanksOf(carrier).find(flank => looks(flank, way) > 0);
}

export function depthOf(carrier: Carrier): number | undefined {
    if (carrier.kind === 'line') return carrier.beam.depth;
    return isBeam(carrier.perimeter) ? carrier.perimeter.depth : undefined;
}

/** Half of a box or of a timber: a beam along the wall, and no band. */
export function isBeam(perimeter: Perimeter): perimeter is Extract<Perimeter, { readonly depth: Ticks }> {
    return perimeter.kind === 'half-beam' || perimeter.kind === 'half-timber';
}

/** Of two half beams in one corner; one that lies over the other runs on to the wall. Beside anything else a half beam dies. */
export function relationInCorner({ perimeter: own }: WallCarrier, { perimeter: other }: WallCarrier): 'flush' | 'dies' | 'over' {
    if (!isBeam(own) || !isBeam(other)) return 'dies';
    const meeting = ({ depth, kind }: typeof own) => ({ depth, isSolid: kind === 'half-timber' });
    return relationByDepth(meeting(own), meeting(other));
}

export function isSolid(carrier: Carrier): boolean {
    return carrier.kind === 'line' ? carrier.beam.kind === 'solid' : carrier.perimeter.kind === 'half-timber';
}
