import type { Piece as Strip } from '../../arrangement/model.ts';
import { arrangedOf } from '../../ceiling/plan.ts';
import { flankOf, sidesOf } from '../../ceiling/flanks.ts';
import type { Line } from '../../ceiling/model.ts';
import type { Biscuits, Side } from '../../job/model.ts';
import { kept } from '../../plain/kept.ts';
import { lengthOf, type Point } from '../../plane/point.ts';
import { roundDown, roundUp } from '../../quantity/round.ts';
import { placeAlong } from '../lie.ts';
import type { Stretch } from '../runs.ts';
import { endsOf, type Setting } from '../setting.ts';
import type { Work } from '../work.ts';
import { leftOut, type SaidWay } from './said.ts';

/** What is said of closing pieces, by the words of where each stands. */
export type SaidWays = ReadonlyMap<string, SaidWay>;

/** Where biscuits are left out: `A 2 1`, the second end of a bottom of line A, which meets line 2. */
type LeftOut = ReadonlySet<string>;
const leftOutOf = kept((said: SaidWays): LeftOut => new Set([...said.values()].flatMap(one => leftOut(one).flatMap((is, i) => {
    const { piece: { line, on }, ends } = one.closing;
    return is ? [`${line ?? on} ${ends[i]!.meets} ${i}`] : [];
}))));

/** A bottom of a line or a half beam, and what it takes for biscuits. */
interface Own {
    readonly of: string; readonly where: string; readonly biscuits: Biscuits | undefined; readonly stretch: Stretch;
    /** All that it is spliced of, this one with them, in their order. */
    readonly stretches: readonly Stretch[];
}

/** Slots for biscuits in a bottom: in the ends that butt or are spliced, and in the edges where others meet it; and what else its way in wants of it. */
export function slotsOf(own: Own, said: SaidWays, setting: Setting): Work[] {
    const left = leftOutOf(said), line = setting.ceiling.lines.find(({ name }) => name === own.of);
    const ends = endSlots(own, said.get(own.where), setting), edges = line ? edgesOfLine(line, own, left, setting) : edgesAtWall(own, left, setting);
    return [...ends, ...edges, ...wanted(said.get(own.where), own, setting)];
}

function cut({ count, size }: Biscuits, places: number, where: string, more: Pick<Extract<Work, { kind: 'slots' }>, 'opened' | 'wider'> = {}): Work {
    return { kind: 'slots', count, size, places, where, ...more };
}

function endSlots({ of, stretch: { lie }, biscuits }: Own, said: SaidWay | undefined, setting: Setting): Work[] {
    const ends = endsOf(setting.runsOf(of)), left = said ? leftOut(said) : [false, false];
    const wider = said && ('slotWider' in said.way ? said.way.slotWider : said.way.kind === 'leave-out' ? said.way.swing?.slotWider : undefined);
    const { way } = said ?? {};
    const more = way?.kind === 'open-slots' ? { opened: { long: roundUp(way.long, setting.step), deep: roundUp(way.deep, setting.step), leaves: roundDown(way.leaves, setting.step) } } : wider ? { wider: roundUp(wider, setting.step) } : {};
    const inEnds = (how: 'between' | 'splice'): Work[] => {
        const found = ends.filter((_, i) => lie.cuts[i] === how && !(how === 'between' && left[i]));
        return biscuits && biscuits.count > 0 && found.length > 0 ? [cut(biscuits, found.length, `in the ${found.join(' and the ')} end`, more)] : [];
    };
    return [...inEnds('between'), ...inEnds('splice')];
}

/** Of a line's bottom, at the crossings that it runs through, and at the tees. */
function edgesOfLine(line: Line, own: Own, left: LeftOut, setting: Setting): Work[] {
    const { from, to } = own.stretch, sides = sidesOf(line.runs);
    return line.passes.flatMap(({ of, relation, cuts, stem, at, low, high }): Work[] => {
        const biscuits = setting.beam(of)!.section.profile.bottom?.biscuits?.value;
        if (!biscuits?.count || cuts || relation !== 'flush' || high <= from || low >= to) return [];
        // what lies to the west or north of it meets it with its second end
        const met = sides.filter((side, i) => (stem === null || flankOf(side) === stem) && !left.has(`${of} ${line.name} ${1 - i}`));
        if (met.length === 0) return [];
        const where = placeIn(own, { of, low, at, high, centered: Math.floor(at) - from }, setting);
        return where === null ? [] : [cut(biscuits, met.length, `in ${met.length === 2 ? 'both edges' : `the ${met[0]} edge`}${where}`)];
    });
}

/** Where another bottom meets an edge: from, in the middle, to; `centered`: so far from this piece's own end. */
interface Meeting { readonly of: string; readonly low: number; readonly at: number; readonly high: number; readonly centered: number }

/**
 * The words for slots there. What lies across a splice is cut once, when both pieces are together: it counts for the piece that its middle lies on, the first
 * one where that is at the splice itself, and is null for the other.
 */
function placeIn({ of: own, stretch, stretches }: Own, { of, low, at, high, centered }: Meeting, setting: Setting): string | null {
    const [first] = endsOf(setting.runsOf(own)), { from, to } = stretch, plain = `, centered ${setting.size(centered)} from the ${first} end`;
    if (low >= from && high <= to) return plain;
    if (stretch !== (stretches.find(other => other.to >= at) ?? stretches.at(-1))) return null;
    const i = stretches.indexOf(stretch), others = [low < from ? stretches[i - 1] : undefined, high > to ? stretches[i + 1] : undefined];
    const letters = others.flatMap(other => (other?.letter ? [other.letter] : []));
    if (letters.length === 0) return plain;
    const met = setting.ceiling.lines.some(({ name }) => name === of) ? `line ${of}` : `the ${of} half beam`;
    return ` at ${met}, once ${letters.length > 1 ? `pieces ${letters.join(' and ')} are` : `piece ${letters[0]} is`} spliced on`;
}

/** Of a half beam's bottom, where lines and other half beams meet it: in the edge to the room. */
function edgesAtWall(own: Own, left: LeftOut, setting: Setting): Work[] {
    const { of, stretch: { lie, from, to } } = own, { exact } = arrangedOf(setting.ceiling);
    return exact.joints.flatMap(({ kind, pieces }): { work: Work; at: number }[] => {
        const [butting, passing] = pieces.map(i => exact.pieces[i]!) as [Strip, Strip];
        if (kind !== 'butt' || passing.part !== 'bottom' || passing.of !== of) return [];
        const biscuits = setting.beam(butting.of)!.section.profile.bottom!.biscuits?.value;
        const [low, high] = endAt(butting, passing).map(p => placeAlong(lie.way, p)).sort((a, b) => a - b) as [number, number], at = (low + high) / 2;
        const both = setting.pairs.of('bottom', butting.of).map(({ exact: met }) => met).find(({ strip }) => strip === butting);
        if (!biscuits?.count || high <= from || low >= to || both && [0, 1].some(i => both.meets[i] === of && left.has(`${butting.of} ${of} ${i}`))) return [];
        const where = placeIn(own, { of: butting.of, low, at, high, centered: Math.round(at - from) }, setting);
        return where === null ? [] : [{ at, work: cut(biscuits, 1, `in the edge to the room${where}`) }];
    }).sort((a, b) => a.at - b.at).map(({ work }) => work);
}

/** The corners of the end with which a piece meets another. */
function endAt({ corners: [a, b, c, d] }: Strip, { corners }: Strip): readonly [Point, Point] {
    const off = ([p, q]: readonly [Point, Point]): number => {
        const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
        return Math.min(...corners.map((from, i) => apart(middle, from, corners[(i + 1) % corners.length]!)));
    };
    const ends = [[a, d], [b, c]] as const;
    return off(ends[0]) <= off(ends[1]) ? ends[0] : ends[1];
}
/** How far a point is from the line through two others. */
function apart(p: Point, a: Point, b: Point): number {
    const dx = b.x - a.x, dy = b.y - a.y, long = lengthOf({ x: dx, y: dy });
    return long === 0 ? Infinity : Math.abs((p.x - a.x) * dy - (p.y - a.y) * dx) / long;
}

/** What is done to a closing piece besides. */
function wanted(said: SaidWay | undefined, { of }: Own, setting: Setting): Work[] {
    if (!said) return [];
    const { way } = said, ends: readonly Side[] = endsOf(setting.runsOf(of));
    switch (way.kind) {
        case 'leave-out': return leftOut(said).flatMap((is, i): Work[] => (is ? [{ kind: 'block', end: ends[i]!, width: way.block }] : []));
        case 'knee': return [{ kind: 'halve', relieved: roundUp(way.binds, setting.step) }, { kind: 'block', end: 'middle', width: way.block }];
        case 'kerfs': return way.pattern ? [{ kind: 'kerfs', count: way.pattern.count, apart: roundDown(way.pattern.apart, setting.step), depth: roundDown(way.pattern.depth, setting.step), hangs: way.hangs }] : [];
        default: return [];
    }
}
