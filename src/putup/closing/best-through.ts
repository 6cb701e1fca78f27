import { runsOf } from '../../arrangement/arrange.ts';
import { linesOfCrossing } from '../../ceiling/coffers.ts';
import { layOut } from '../../ceiling/layout.ts';
import { longestPiece } from '../../ceiling/longest.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { arrangedOf, meetingsIn } from '../../ceiling/plan.ts';
import type { CrossingSpec, Direction, Room } from '../../job/model.ts';
import { kept, MOST_ROOMS } from '../../plain/kept.ts';
import { takeOffOf } from '../../takeoff/take-off.ts';
import { bottomRuns, type BottomOrder } from '../../takeoff/closing/bottoms.ts';
import { waitingRing } from './first-piece.ts';
import { leastClosing } from './least.ts';
import { closingPieces } from './pieces.ts';
import { stickOut } from '../../takeoff/closing/stick-out.ts';
import { webOf } from './web-of.ts';
import { judge, type Web, type Which } from './web.ts';

/** The lines of a ceiling, and where which of two runs through. */
export function webOfCeiling(ceiling: Ceiling, { band = 'last' }: BottomOrder = {}): Web {
    const bottoms = new Map(ceiling.lines.map(line => [line.name, line.section.profile.bottom]));
    return webOf(runsOf(meetingsIn(ceiling)), arrangedOf(ceiling).exact.pieces, {
        stickOut: line => { const said = bottoms.get(line)?.biscuits?.value; return said && said.count > 0 ? stickOut(said.size) : 0; },
        roomBehind: ({ meets, angle }) => {
            const own = band === 'first' ? undefined : ceiling.around[meets];
            return own?.kind === 'band' ? own.thickness.ticks / Math.cos(angle * Math.PI / 180) : 0;
        },
        press: line => bottoms.get(line)?.press?.value ?? 0,
    });
}

/** A crossing that is turned: by its name in the text, with the line that is to run through. */
export interface Turned { readonly crossing: string; readonly lines: readonly [string, string]; readonly through: string; readonly spec?: CrossingSpec }

/** What may be said of the room so that fewer bottoms are closing pieces. */
export interface BestThrough {
    /** As it is said: null where it has no first piece. */
    readonly now: number | null;
    /** The least that any choice leaves, and the crossings to turn for it; none where it is as said. */
    readonly least: number; readonly turned: readonly Turned[];
    /** No choice leaves fewer; else none leaves fewer than `atLeast`. */
    readonly proved: boolean; readonly atLeast: number;
    /** The room with them turned, laid out; undefined where it cannot be, so that the choice is not to be offered. */
    readonly as?: Ceiling;
    /** The whole room with the other direction through, and nothing said of crossings, where that leaves fewer than now. */
    readonly otherWay?: { readonly through: Direction; readonly closing: number; readonly as: Ceiling };
}

/**
 * Which line runs through at each crossing so that fewest bottoms are closing pieces; see least.ts. At tees the bar runs through, or what is said
 * there, unless without turning one there is no first piece. Undefined where the text does not say enough, and of a ceiling without biscuits.
 * Splices are not counted, since they follow from what runs through; `as` has them. Kept as long as the ceiling is the same.
 */
export function bestThrough(ceiling: Ceiling, { band = 'last' }: BottomOrder = {}): BestThrough | undefined {
    return BEST[band](ceiling) ?? undefined;
}
const BEST = { first: kept((ceiling: Ceiling) => choose(ceiling, { band: 'first' }), MOST_ROOMS), last: kept((ceiling: Ceiling) => choose(ceiling, { band: 'last' }), MOST_ROOMS) };

/** Null, which is kept too, where there is nothing to choose. */
function choose(ceiling: Ceiling, order: BottomOrder): BestThrough | null {
    const web = webOfCeiling(ceiling, order);
    if (!web.strands.some(({ biscuits }) => biscuits) || web.meetings.length === 0) return null;
    const least = leastClosing(web) ?? leastClosing(web, { tees: 'free' });
    if (!least) return null;
    const { room, crossings } = ceiling;
    const turned = web.meetings.flatMap(({ of, now }, m): Turned[] => {
        if (least.throughs[m] === now) return [];
        const lines = [web.strands[of[0]]!.name, web.strands[of[1]]!.name] as const, isOf = sameTwo(lines);
        const spec = room.crossings.find(({ name }) => isOf(linesOfCrossing(name, ceiling.lines)));
        return [{ crossing: spec?.name ?? crossings.find(({ ns, ew }) => isOf([ns, ew]))?.name ?? lines.join('-'), lines, through: lines[least.throughs[m]!]!, ...spec && { spec } }];
    });
    const runs = bottomRuns(ceiling, takeOffOf(ceiling), order), now = waitingRing(runs) ? null : closingCount(ceiling, order);
    const asSaid = judge(web, web.meetings.map(meeting => meeting.now)), isBetter = asSaid.cycle !== null || least.closing < asSaid.closing;
    const as = turned.length > 0 && isBetter ? soundly({ ...room, crossings: withTurned(room.crossings, turned) }) : undefined;
    const other = now !== null ? otherWay(ceiling, web, order) : undefined;
    // what runs along the walls is as it is, whatever runs through at crossings
    const along = closingPieces(ceiling, order).filter(({ piece, onlySplice }) => piece.line === null && !onlySplice).length;
    return {
        now, least: least.closing + along, turned, proved: least.proved, atLeast: least.atLeast + along,
        ...as && { as }, ...other && { otherWay: other },
    };
}

/** Without those that only a splice makes. */
export function closingCount(ceiling: Ceiling, order: BottomOrder = {}): number {
    return closingPieces(ceiling, order).filter(({ onlySplice }) => !onlySplice).length;
}

function sameTwo([a, b]: readonly [string, string]): (both: readonly [{ readonly name: string }, { readonly name: string }] | undefined) => boolean {
    return both => both !== undefined && both.every(({ name }) => name === a || name === b);
}

function withTurned(crossings: readonly CrossingSpec[], turned: readonly Turned[]): CrossingSpec[] {
    const said = new Map(turned.flatMap(({ spec, through }) => (spec ? [[spec, through] as const] : [])));
    const kept = crossings.map((spec): CrossingSpec => {
        const through = said.get(spec);
        return through === undefined ? spec : { ...spec, through: { value: through, at: spec.through?.at ?? spec.at, said: true } };
    });
    const added = turned.filter(({ spec }) => !spec)
        .map(({ crossing, through }): CrossingSpec => ({ name: crossing, at: NOWHERE, through: { value: through, at: NOWHERE, said: true } }));
    return [...kept, ...added];
}
/** Of what nobody has said yet. */
const NOWHERE = { uri: '', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };

/** Laid out under a name of its own, so that what is kept of the room stays; nothing where that brings a trouble, or a piece no board is long enough for. */
function soundly(room: Room): Ceiling | undefined {
    const { ceiling, troubles } = layOut({ ...room, at: { ...room.at, uri: `${room.at.uri}#otherwise` } });
    if (!ceiling || troubles.length > 0) return undefined;
    const { pieces } = takeOffOf(ceiling);
    return pieces.every(({ part, overall, stock }) => part !== 'bottom' && part !== 'blocking' || overall <= longestPiece(stock, room.job)) ? ceiling : undefined;
}

/**
 * How many bottoms of lines are closing pieces where either direction runs through, by the layout of one of the two: as grids are told apart before all of
 * each is made. Splices, and what runs along the walls, are not counted. Infinity where there is no first piece; undefined where no bottom has biscuits.
 */
export function closingByThrough(ceiling: Ceiling): Readonly<Record<Direction, number>> | undefined {
    const web = webOfCeiling(ceiling);
    if (!web.strands.some(({ biscuits }) => biscuits)) return undefined;
    const count = (through: Direction): number => {
        const { closing, cycle } = judge(web, turnedTo(through, web, ceiling));
        return cycle ? Infinity : closing;
    };
    return { 'north-south': count('north-south'), 'east-west': count('east-west') };
}

/** Every crossing of lines of the two directions with that one through; the others as they are. */
function turnedTo(through: Direction, web: Web, { lines }: Ceiling): Which[] {
    const runs = new Map(lines.map(line => [line.name, line.runs]));
    return web.meetings.map(({ kind, of, now }): Which => {
        const [a, b] = of.map(i => runs.get(web.strands[i]!.name));
        return kind === 'tee' || a === b ? now : a === through ? 0 : 1;
    });
}

/** Where nobody says anything of single crossings: all of them turned at once, by one word. */
function otherWay(ceiling: Ceiling, web: Web, order: BottomOrder): BestThrough['otherWay'] {
    const { room } = ceiling, { grid } = room, { value } = grid.through;
    if (room.crossings.length > 0) return undefined;
    const through: Direction = value === 'north-south' ? 'east-west' : 'north-south';
    const { closing, cycle } = judge(web, turnedTo(through, web, ceiling)), asSaid = judge(web, web.meetings.map(meeting => meeting.now)).closing;
    const as = !cycle && closing < asSaid ? soundly({ ...room, grid: { ...grid, through: { ...grid.through, value: through } } }) : undefined;
    return as && { through, closing: closingCount(as, order), as };
}
