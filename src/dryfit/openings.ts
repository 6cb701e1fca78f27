import type { Ceiling, Coffer } from '../ceiling/model.ts';
import { SIDES, type Side } from '../job/model.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Body } from './body.ts';
import { NEAR } from './meetings.ts';
import type { OffSize, Unflush } from './model.ts';
import type { Frame } from './frame.ts';

/** A coffer that differs by more than this from what was laid out is seen. Common practice, no source. */
const SEEN = TICKS_PER_INCH / 16;

/** Sides and bottoms end in one plane, the beam's depth. */
export function undersides(bodies: readonly Body[], ceiling: Ceiling): { looked: number; faults: Unflush[] } {
    const depths = new Map(ceiling.lines.map(line => [line.name, line.section.depth.ticks]));
    let looked = 0;
    const faults: Unflush[] = [];
    for (const { is, blocks } of bodies) {
        if (typeof is === 'string' || is.line === null || (is.part !== 'side' && is.part !== 'bottom') || blocks.length === 0) continue;
        looked++;
        const ticks = depths.get(is.line)! - Math.max(...blocks.map(block => block.foot));
        if (Math.abs(ticks) <= NEAR) continue;
        const same = faults.findIndex(other => other.piece.part === is.part && other.piece.source === is.source && other.ticks === ticks);
        if (same < 0) faults.push({ kind: 'underside', piece: is, ticks, alike: [] });
        else faults[same] = { ...faults[same]!, alike: [...faults[same]!.alike, is] };
    }
    return { looked, faults };
}

/** Every coffer, from face to face of what stands round it. A side that is missing is told as missing, and nothing is measured there. */
export function openings(bodies: readonly Body[], { coffers, lines, across, down, width, length, band }: Ceiling, frame: Frame): { looked: number; faults: OffSize[] } {
    const around = new Map<string, Body[]>();
    for (const body of bodies) {
        if (typeof body.is === 'string' || body.blocks.length === 0) continue;
        const { part, line, bay, on } = body.is;
        const key = part === 'side' ? `${line} ${bay} ${on}` : part === 'band' ? `band ${on}` : undefined;
        if (key) around.set(key, [...around.get(key) ?? [], body]);
    }
    const hasSides = new Set(lines.filter(line => line.section.profile.sides?.stock).map(line => line.name));
    const walls: Record<Side, Ticks> = { west: 0, north: 0, east: width, south: length };
    /** The face that looks into the coffer from one side of it. */
    const face = ({ bounds, column, row }: Coffer, side: Side): { at: Ticks; pieces: Piece[] } | undefined => {
        const line = bounds[side], low = side === 'west' || side === 'north';
        if (line && !hasSides.has(line.name)) return undefined;
        if (!line && !band) return { at: walls[side], pieces: [] };
        const facing: Side = ({ west: 'east', east: 'west', north: 'south', south: 'north' } as const)[side];
        const there = around.get(line ? `${line.name} ${line.runs === 'east-west' ? column : row} ${facing}` : `band ${side}`);
        if (!there) return undefined;
        const reach = there.flatMap(({ blocks }) => blocks.map(block => ({ west: block.east, east: block.west, north: block.south, south: block.north })[side]));
        return { at: low ? Math.max(...reach) : Math.min(...reach), pieces: there.map(body => body.is as Piece) };
    };

    let looked = 0;
    const faults: OffSize[] = [];
    for (const coffer of coffers) {
        const faces = Object.fromEntries(SIDES.map(side => [side, face(coffer, side)])) as Record<Side, ReturnType<typeof face>>;
        const pairs = [['east-west', faces.west, faces.east, frame['east-west'].bays[coffer.column - 1], across.coffers[coffer.column - 1], across.spacing],
            ['north-south', faces.north, faces.south, frame['north-south'].bays[coffer.row - 1], down.coffers[coffer.row - 1], down.spacing]] as const;
        let whole = true;
        for (const [along, low, high, bay, laidOut, spacing] of pairs) {
            if (!low || !high || !bay || laidOut === undefined) { whole = false; continue; }
            const is = high.at - low.at;
            const spare = (bay.before ? 0 : frame[along].spare) + (bay.after ? 0 : frame[along].spare);
            const asCut = bay.end - bay.start + spare;
            const planned = Math.abs(is - asCut) <= NEAR;
            // what the tape makes of coffers that are meant equal is said of the run as a whole, by rounding-left-over
            if (planned && (spacing.by !== 'lines' || Math.abs(is - laidOut) <= SEEN)) continue;
            const wanted = planned ? laidOut : Math.round(asCut);
            const same = faults.findIndex(other => other.along === along && other.is === is && other.wanted === wanted && other.planned === planned);
            if (same < 0) faults.push({ kind: 'coffer', coffer: coffer.number, along, is, wanted, planned, pieces: [...low.pieces, ...high.pieces], alike: [] });
            else faults[same] = { ...faults[same]!, alike: [...faults[same]!.alike, coffer.number] };
        }
        if (whole) looked++;
    }
    return { looked, faults };
}
