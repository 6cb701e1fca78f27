import { lowReach } from '../../ceiling/flanks.ts';
import type { Ceiling, Run } from '../../ceiling/model.ts';
import type { Show, Tape } from '../../quantity/print-length.ts';
import { roundTo } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { DimensionString } from '../dimensions/dimension-string.ts';
import { layStack, type Stack } from '../dimensions/stack.ts';
import { figure } from '../figures.ts';
import { runsAskew } from './line-ends.ts';
import { isRectangle } from './wall-dimensions.ts';

const SIZE = 8.6;

/**
 * Three strings for each direction: coffers and beams, centers of the beams, and the room; each adds up to the room.
 * @param clear how far the first stands off the inner face of the wall at least.
 * @param few only the first, summed up, and the last.
 * @param least points that a figure has at least.
 */
export function planStack(ceiling: Ceiling, direction: 'across' | 'down', show: Show, place: (ticks: Ticks) => number, clear: number, few = false, least = 0): Stack {
    const run = ceiling[direction];
    const whole = direction === 'across' ? ceiling.width : ceiling.length;
    const wall = direction === 'across' ? 'north wall' : 'west wall';
    const make = (id: string, title: string, { stops, figures }: Marks): DimensionString => ({ id: `dimensions.${direction}.${id}`, title, stops: stops.map(place), figures });
    const strings: (readonly DimensionString[])[] = [];
    if (!isDividedSo(ceiling, run)) return layStack(direction === 'across' ? 'top' : 'left', byPlaces(ceiling, direction, { show, few, make }), SIZE, clear, least);
    if (run.lines.length > 0 || run.start > 0) {
        strings.push([
            ...few ? [] : [make('parts', `Coffers and beams along the ${wall}`, partMarks(run, whole, show))],
            make('parts', `Coffers and beams along the ${wall}, summed up`, summedMarks(run, whole, show)),
        ]);
    }
    if (run.lines.length > 0 && !few) {
        const centers = centerMarks(run, whole, { show, step: ceiling.room.job.cutTo.value });
        const ends = make('centers', `First and last beam along the ${wall}`, { stops: [centers.stops[0]!, centers.stops[1]!, centers.stops.at(-2)!, whole], figures: [centers.figures[0]!, figure(centers.cut.at(-2)! - centers.cut[1]!, show), centers.figures.at(-1)!] });
        strings.push([make('centers', `Centers of the beams along the ${wall}`, centers), ...(run.lines.length > 2 ? [ends] : [])]);
    }
    strings.push([make('room', `The room along the ${wall}`, { stops: [0, whole], figures: [figure(whole, show)] })]);
    return layStack(direction === 'across' ? 'top' : 'left', strings, SIZE, clear, least);
}

/** A rectangle in which this way all lines are those of the division, each alone at its place. */
function isDividedSo(ceiling: Ceiling, { along, lines }: Run): boolean {
    const own = ceiling.lines.filter(line => line.runs !== along);
    return ceiling.square && isRectangle(ceiling) && own.length === lines.length && own.every(line => lines.some(({ low }) => low === line.low));
}

interface Making { readonly show: Show; readonly few: boolean; readonly make: (id: string, title: string, marks: Marks) => DimensionString }

/** The same three, by all places at which lines stand this way, of a room along the compass; of lines that run askew none: the walls tell where they begin. */
function byPlaces(ceiling: Ceiling, direction: 'across' | 'down', { show, few, make }: Making): readonly (readonly DimensionString[])[] {
    const run = ceiling[direction], whole = direction === 'across' ? ceiling.width : ceiling.length, step = ceiling.room.job.cutTo.value;
    const own = ceiling.lines.filter(line => line.runs !== run.along);
    const isTold = !ceiling.lines.some(runsAskew) && ceiling.walls.every(({ from, to }) => from.x === to.x || from.y === to.y);
    const room = isTold ? [[make('room', direction === 'across' ? 'The room, east to west' : 'The room, north to south', { stops: [0, whole], figures: [figure(whole, show)] })]] : [];
    if (own.some(runsAskew)) return room;
    const places = [...new Map(own.map(line => [`${line.low} ${line.high}`, { low: line.low, high: line.high, center: line.low + lowReach(line) }])).values()].sort((a, b) => a.low - b.low || a.high - b.high);
    const [start, end] = [run.wallEnds[0] === 0 ? run.start : 0, run.wallEnds[1] === whole ? run.end : whole];
    const faces = [start, ...places.flatMap(({ low, high }) => [low, high]), end], isClear = faces.every((face, i) => i === 0 || face >= faces[i - 1]!);
    const edges = (inner: readonly Ticks[]) => [...new Set([0, ...inner, whole])];
    const between = (stops: readonly Ticks[]) => {
        const cut = stops.map((stop, i) => (i === 0 || i === stops.length - 1 ? stop : roundTo(stop, step)));
        return { stops, figures: cut.slice(1).map((stop, i) => figure(stop - cut[i]!, show)) };
    };
    const words = direction === 'across' ? 'east to west' : 'north to south';
    const summed = make('parts', `Inside what runs along the walls, ${words}`, between(edges([start, end])));
    const parts = make('parts', `Faces of the lines, ${words}`, between(edges(faces)));
    const centers = make('centers', `Centers of the lines, ${words}`, between([0, ...places.map(({ center }) => center), whole]));
    return [
        ...places.length > 0 && isClear && !few ? [[parts, summed]] : start > 0 || end < whole ? [[summed]] : [],
        ...places.length > 0 && !few ? [[centers]] : [], ...room,
    ];
}

interface Marks { readonly stops: readonly Ticks[]; readonly figures: readonly string[] }

/** Wall, band, coffer, beam, coffer, …, band, wall: ticked where they are, with the figures they are cut to. */
function partMarks({ start, end, lines, coffers, residue }: Run, whole: Ticks, show: Show): Marks {
    const faces = [start, ...lines.flatMap(line => [line.low, line.high]), end];
    const sizes = coffers.flatMap((_, i) => (i === 0 ? [residue.cutCoffers[i]!] : [lines[i - 1]!.high - lines[i - 1]!.low, residue.cutCoffers[i]!]));
    const figures = [
        ...(start > 0 ? [figure(start, show)] : []), ...sizes.map(size => figure(size, show)), ...(end < whole ? [figure(whole - end, show)] : []),
    ];
    return { stops: [...(start > 0 ? [0] : []), ...faces, ...(end < whole ? [whole] : [])], figures: withRest(figures, residue.rest, show) };
}

/** What no coffer takes stands by the last figure, so that the string adds up: `3⁄4" + 1⁄64"`. */
function withRest(figures: readonly string[], rest: Ticks, show: Show): readonly string[] {
    if (rest === 0) return figures;
    return [...figures.slice(0, -1), `${figures.at(-1)!} ${rest < 0 ? '−' : '+'} ${figure(Math.abs(rest), show)}`];
}

/** The same for a run of many small coffers: `50 × 1' + 49 × 5 1⁄2"`. */
function summedMarks({ start, end, lines, residue }: Run, whole: Ticks, show: Show): Marks {
    const counted = (sizes: readonly Ticks[]) => {
        const counts = new Map<Ticks, number>();
        for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
        return [...counts].map(([size, count]) => `${count} × ${figure(size, show)}`);
    };
    const terms = [...counted(residue.cutCoffers), ...counted(lines.map(line => line.high - line.low))];
    const inner = terms.length <= 6 ? terms.join(' + ') : `${residue.cutCoffers.length} coffers, ${lines.length} beams`;
    const figures = [...(start > 0 ? [figure(start, show)] : []), inner, ...(end < whole ? [figure(whole - end, show)] : [])];
    return { stops: [...(start > 0 ? [0] : []), start, end, ...(end < whole ? [whole] : [])], figures: withRest(figures, residue.rest, show) };
}

/** Centers at their nearest marks, so that the string adds up to the room. */
function centerMarks({ start, lines, residue }: Run, whole: Ticks, { show, step }: Tape): Marks & { readonly cut: readonly Ticks[] } {
    let at = start;
    const cut = [0, ...lines.map((line, i) => {
        const width = line.high - line.low;
        at += residue.cutCoffers[i]! + width;
        return roundTo(at - width + lowReach(line), step);
    }), whole];
    return {
        cut, stops: [0, ...lines.map(line => line.low + lowReach(line)), whole],
        figures: cut.slice(1).map((position, i) => figure(position - cut[i]!, show)),
    };
}
