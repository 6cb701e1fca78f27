import { arrange } from '../arrangement/arrange.ts';
import type { BeamLine, BoxBeam, Corners, Perimeter, Plan, Trim, Wall } from '../arrangement/plan.ts';
import type { Direction, Side } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Arranged, Ceiling, Line, Run } from './model.ts';

type LaidOut = Pick<Ceiling, 'width' | 'length' | 'band' | 'across' | 'down' | 'lines' | 'beams' | 'room'>;

export function arranged(ceiling: LaidOut): Arranged {
    const exact = arrange(planOf(ceiling, asDrawn));
    const moves = [ceiling.across, ceiling.down].some(({ residue, coffers }) => residue.rest !== 0 || residue.cutCoffers.some((cut, i) => cut !== coffers[i]));
    return { exact, asCut: moves ? arrange(planOf(ceiling, asItComesToStand)) : exact };
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

function planOf({ width, length, band, across, down, lines, beams, room }: LaidOut, stand: (run: Run) => Stand): Plan {
    const stands = { 'north-south': stand(across), 'east-west': stand(down) };
    const around = (spare: number): Perimeter => {
        const thickness = (band?.thickness.ticks ?? 0) + spare;
        return thickness === 0 ? { kind: 'bare' } : { kind: 'band', thickness, top: band ? band.lowerEdge.ticks - band.height.ticks : 0, foot: band?.lowerEdge.ticks ?? 0 };
    };
    const [ends, sides] = [around(stands['east-west'].spare), around(stands['north-south'].spare)];
    const wall = (name: Side, x: Ticks, y: Ticks, perimeter: Perimeter, spots: readonly { x: Ticks; y: Ticks }[]): Wall => ({ name, from: { x, y }, perimeter, splices: spots });
    const splices = (side: Side): readonly Ticks[] => band?.splices[side].map(splice => splice.at) ?? [];
    const trim = beams?.profile.trim, trims: Trim[] = trim?.corners.value === 'mitered' && beams?.trimThickness && beams.trimHeight
        ? [{ name: 'trim', thickness: beams.trimThickness.ticks, top: 0, foot: beams.trimHeight.ticks, corners: 'mitered' }] : [];
    return {
        walls: [
            wall('north', 0, 0, ends, splices('north').map(x => ({ x, y: 0 }))), wall('east', width, 0, sides, splices('east').map(y => ({ x: width, y }))),
            wall('south', width, length, ends, splices('south').map(x => ({ x, y: length }))), wall('west', 0, length, sides, splices('west').map(y => ({ x: 0, y }))),
        ],
        lines: [across, down].flatMap(run => run.lines.map((line, i) => lineOf(line, stands[line.runs].middles[i]!))),
        through: room.grid!.through!.value, corners: cornersOf(lines), clearance: 0, trims,
    };
}

function lineOf(line: Line, middle: number): BeamLine {
    const { name, runs, section, splices } = line;
    const upright = runs === 'north-south';
    const spot = (along: Ticks): { x: number; y: number } => (upright ? { x: middle, y: along } : { x: along, y: middle });
    return {
        name, family: runs, from: upright ? 'north' : 'west', to: upright ? 'south' : 'east', spot: spot(0), heading: upright ? { x: 0, y: 1 } : { x: 1, y: 0 },
        beam: beamOf(section), splices: splices.map(({ at }) => spot(at)),
    };
}

function beamOf({ innerWidth, depth, sideThickness, heldDown, bottomThickness, blockingThickness, fit, cleatThickness, cleatHeight, profile }: Line['section']): BoxBeam {
    const side = { thickness: sideThickness.ticks, heldDown: heldDown.value.ticks };
    return {
        kind: 'box', inside: innerWidth.ticks, depth: depth.ticks, left: side, right: side,
        bottom: { place: 'between-sides', by: 0, play: fit.ticks, thickness: bottomThickness.ticks },
        blocking: { thickness: blockingThickness.ticks, narrower: 0 },
        ...profile.cleats && cleatThickness && cleatHeight && { cleats: { width: cleatThickness.ticks, height: cleatHeight.ticks, short: profile.cleats.shortEachEnd.value } },
    };
}

/** Lines that cross have the same corners: corners.ts sees to it. Where nobody names the sides that run past, they do in the direction in which the bottoms run through. */
function cornersOf(lines: readonly Line[]): Corners {
    const said = lines[0]?.section.profile.sides;
    if (said?.corners.value !== 'butted') return { kind: 'mitered' };
    const through = lines.find(line => line.through)?.runs ?? opposite(lines[0]!.runs);
    return { kind: 'butted', past: said.past?.value ?? through };
}

function opposite(runs: Direction): Direction {
    return runs === 'north-south' ? 'east-west' : 'north-south';
}
