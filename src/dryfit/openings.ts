import type { Coffer as Face, CofferEdge } from '../arrangement/model.ts';
import type { Ceiling, WholeSection } from '../ceiling/model.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import { sideFootOf } from '../ceiling/section.ts';
import type { ShapedWall } from '../ceiling/shape.ts';
import type { Direction, Side } from '../job/model.ts';
import { extentOf } from '../plane/polygon.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Body } from './body.ts';
import { NEAR } from './meetings.ts';
import type { OffSize, Unflush } from './model.ts';

/** A coffer that differs by more than this from what was laid out is seen. Common practice, no source. */
const SEEN = TICKS_PER_INCH / 16;

/** Sides and bottoms end in one plane, the beam's depth; sides over a bottom that lies under them, all in one of their own. */
export function undersides(bodies: readonly Body[], ceiling: Ceiling): { looked: number; faults: Unflush[] } {
    const planes = ({ section }: { readonly section: WholeSection }) => ({ bottom: section.depth.ticks, side: sideFootOf(section) });
    const depths = new Map(ceiling.lines.map(line => [line.name, planes(line)]));
    for (const [wall, own] of Object.entries(ceiling.around)) if (own?.kind === 'half-beam') depths.set(wall, planes(own));
    let looked = 0;
    const faults: Unflush[] = [];
    for (const { is, blocks } of bodies) {
        if (typeof is === 'string' || (is.part !== 'side' && is.part !== 'bottom') || blocks.length === 0) continue;
        looked++;
        const ticks = depths.get(is.line ?? is.on!)![is.part] - Math.max(...blocks.map(block => block.foot));
        if (Math.abs(ticks) <= NEAR) continue;
        const same = faults.findIndex(other => other.piece.part === is.part && other.piece.source === is.source && other.ticks === ticks);
        if (same < 0) faults.push({ kind: 'underside', piece: is, ticks, alike: [] });
        else faults[same] = { ...faults[same]!, alike: [...faults[same]!.alike, is] };
    }
    return { looked, faults };
}

/** A face that looks into a coffer from one side of it, and the pieces that make it. */
interface Looking { readonly at: Ticks; readonly pieces: readonly Piece[] }
const OPPOSITE = { north: 'south', south: 'north', west: 'east', east: 'west' } as const;

/** Every coffer of four square corners, from face to face of what stands round it. A side that is missing is told as missing, and nothing is measured there. */
export function openings(bodies: readonly Body[], ceiling: Ceiling): { looked: number; faults: OffSize[] } {
    const around = new Map<string, Body[]>();
    for (const body of bodies) {
        if (typeof body.is === 'string' || body.blocks.length === 0) continue;
        const { part, line, coffer, on } = body.is;
        const key = part === 'side' ? `${line ?? on} ${coffer} ${line === null ? '' : on}` : part === 'band' ? `band ${on}` : part === 'timber' ? `timber ${line ?? on}` : undefined;
        if (key) around.set(key, [...around.get(key) ?? [], body]);
    }
    const walls = new Map(ceiling.walls.map(wall => [wall.name, wall]));
    const lines = new Map(ceiling.lines.map(line => [line.name, line]));
    const face = (number: number, { on, along: [of] }: CofferEdge): Looking | undefined => {
        const side = on as Side, low = side === 'west' || side === 'north', line = lines.get(of!), own = ceiling.around[of!], wall = walls.get(of!);
        if (line && !(line.section.profile.sides ?? line.section.profile.solid)?.stock) return undefined;
        if (!line && !own) return wall && { at: side === 'west' || side === 'east' ? wall.from.x : wall.from.y, pieces: [] };
        const there = around.get(line?.section.profile.solid ? `timber ${of}` : line ? `${of} ${number} ${OPPOSITE[side]}` : own!.kind === 'band' ? `band ${of}` : own!.section.profile.solid ? `timber ${of}` : `${of} ${number} `);
        if (!there) return undefined;
        const reach = there.flatMap(
            ({ blocks }) => blocks.map(block => ({ west: block.east, east: block.west, north: block.south, south: block.north })[side])
        );
        return { at: low ? Math.max(...reach) : Math.min(...reach), pieces: there.map(body => body.is as Piece) };
    };

    let looked = 0;
    const faults: OffSize[] = [];
    const { exact, asCut: afterCutting } = arrangedOf(ceiling);
    exact.coffers.forEach((coffer, i) => {
        if (!isRectangle(coffer)) return;
        const find = (side: Side): Looking | undefined => face(coffer.number, coffer.edges.find(edge => edge.on === side)!);
        const drawn = extentOf(coffer.outline), cut = sizesOf(afterCutting.coffers[i]!);
        const pairs = [['east-west', find('west'), find('east'), drawn.east - drawn.west, ceiling.across], ['north-south', find('north'), find('south'), drawn.south - drawn.north, ceiling.down]] as const;
        let whole = true;
        for (const [along, low, high, laidOut, { spacing, residue, wallEnds }] of pairs) {
            if (!low || !high) { whole = false; continue; }
            const is = high.at - low.at;
            // what is left of a run stands at the walls
            const asCut = cut[along] + coffer.edges.filter(edge => hasSpare(walls.get(edge.along[0]!), along, wallEnds)).length * residue.rest / 2;
            const planned = Math.abs(is - asCut) <= NEAR;
            // what the tape makes of coffers that are meant equal is said of the run as a whole, by rounding-left-over
            if (planned && (spacing.by !== 'lines' || Math.abs(is - laidOut) <= SEEN)) continue;
            const wanted = planned ? laidOut : Math.round(asCut);
            const same = faults.findIndex(other => other.along === along && other.is === is && other.wanted === wanted && other.planned === planned);
            if (same < 0) faults.push({ kind: 'coffer', coffer: coffer.number, along, is, wanted, planned, pieces: [...low.pieces, ...high.pieces], alike: [] });
            else faults[same] = { ...faults[same]!, alike: [...faults[same]!.alike, coffer.number] };
        }
        if (whole) looked++;
    });
    return { looked, faults };
}

/** Whether what is left of a run stands at this wall. */
function hasSpare(wall: ShapedWall | undefined, along: Direction, ends: readonly Ticks[]): boolean {
    const axis = along === 'east-west' ? 'x' : 'y';
    return wall !== undefined && wall.from[axis] === wall.to[axis] && ends.includes(wall.from[axis]);
}

function isRectangle({ edges, holes }: Face): boolean {
    return holes.length === 0 && edges.length === 4 && edges.every(({ angle, on }) => Math.abs(angle - 90) < 1e-9 && on in OPPOSITE);
}

function sizesOf({ edges: [first, second] }: Face): Readonly<Record<Direction, Ticks>> {
    const level = first!.on === 'north' || first!.on === 'south';
    return { 'east-west': (level ? first! : second!).length, 'north-south': (level ? second! : first!).length };
}
