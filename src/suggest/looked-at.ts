import type { Ceiling } from '../ceiling/model.ts';
import { planBoards } from '../cutting/first-plan.ts';
import { ROUGHLY } from '../cutting/shop.ts';
import { findingOf, type Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import type { Grid, Room } from '../job/model.ts';
import { withinLimits } from '../job/said-much.ts';
import { inspectClosely, stepsOf } from '../pipeline/inspect-closely.ts';
import { atOnce, type Steps } from '../plain/steps.ts';
import { inspect, layoutOf, takeOffOf } from '../pipeline/inspect.ts';
import { price } from '../pipeline/price.ts';
import { cofferOffSize } from '../rules/coffer-off-size.ts';
import { jointOpens } from '../rules/joint-opens.ts';
import { notLaidOut } from '../rules/not-laid-out.ts';
import { closingByThrough, closingCount } from '../putup/closing/best-through.ts';
import { byBeam, holdingOf, type Held } from '../takeoff/holding.ts';
import type { Candidate } from './candidates.ts';
import type { Figures } from './model.ts';
import { shapeOf } from './shape.ts';

/** A grid that was laid out and checked as the room itself is: `wrong` where it is not to be offered. */
interface Look { readonly room: Room; readonly ceiling?: Ceiling; readonly found: readonly Finding[]; readonly wrong: readonly Finding[] }

/** What the dry fit finds open because the tape has no finer mark is a warning; a grid that has it is not offered where nobody allows it. */
const OF_ROUNDING: ReadonlySet<string> = new Set([jointOpens.name, cofferOffSize.name]);

/** More coffers than this are taken off in steps. */
const LARGE = 64;

/** The room with another grid. What stands in its text stands where it did. */
export function roomWith(room: Room, grid: Grid, { across, down, through }: Candidate): Room {
    return { ...room, grid: { ...grid, north: across.spacing, east: down.spacing, through: { ...grid.through, value: through } as Grid['through'] } };
}

/** Everything that the checker finds in a room, or in another one in its place. */
export function lookAt(room: Room, instead: Room, file: FileContent): Look {
    return atOnce(lookInSteps(room, instead, file));
}

/** The same step by step. */
export function* lookInSteps(room: Room, instead: Room, file: FileContent): Steps<Look> {
    const own: FileContent = { ...file, rooms: [room], alternates: [], stocks: [], profiles: [] };
    const laidOut = layoutOf(room).ceiling;
    yield;
    // rules of large rooms ask for its pieces
    if (laidOut && laidOut.coffers.length > LARGE) yield* takeOffOf.inSteps(laidOut);
    yield;
    const soon = inspect(own).findings;
    yield;
    yield* stepsOf(own, room);
    const told = [...soon, ...inspectClosely(own)].filter(finding => !finding.allowed && !isOfAnother(finding, room));
    const { ceiling } = layoutOf(room), errors = told.filter(({ severity }) => severity === 'error');
    const causes = errors.filter(({ rule }) => rule !== notLaidOut.name);
    const open = ceiling && errors.length === 0 ? told.filter(({ rule }) => OF_ROUNDING.has(rule)) : [];
    const limited = withinLimits(file.rooms.map(each => (each === instead ? room : each))).some(({ tooMuch }, i) => tooMuch && !file.rooms[i]!.tooMuch);
    const beside: Finding[] = limited ? [tooMuch(room)] : [];
    return { room, ...ceiling && { ceiling }, found: told, wrong: [...causes.length > 0 ? causes : errors, ...open, ...beside] };
}

/** A mistake in the text of another room of the file. */
function isOfAnother({ room: of }: Finding, room: Room): boolean {
    return of !== undefined && of !== room.name;
}

function tooMuch({ at, name }: Room): Finding {
    return findingOf({ rule: 'too-many-coffers', at, message: 'The rooms of its file would come to more than is laid out.', room: name });
}

function hasBiscuits({ lines }: Ceiling): boolean {
    return lines.some(({ section }) => (section.profile.bottom?.biscuits?.value.count ?? 0) > 0);
}

/** What a room comes to. Its boards are those of a rough plan for it alone: plans are only held against each other here. */
export function* figuresInSteps({ room, found }: Look, ceiling: Ceiling): Steps<Figures> {
    const boxes = ceiling.coffers.map(({ west, east, north, south }) => ({ width: east - west, length: south - north }));
    const takeOff = takeOffOf(ceiling), holding = holdingOf(ceiling, takeOff.pieces);
    yield;
    const { plan, estimate } = price([room], room.job, planBoards(takeOff.pieces, room.job, [], ROUGHLY));
    yield;
    const spread = (sizes: readonly number[]): Figures['width'] => ({ least: Math.round(Math.min(...sizes)), most: Math.round(Math.max(...sizes)) });
    const joistsOf = (held: readonly Held[]): number => new Set(held.flatMap(({ finds }) => finds.map(({ joist }) => joist.center))).size;
    const hits = holding && [...byBeam(holding).values()].reduce((sum, held) => sum + joistsOf(held), 0);
    return {
        across: ceiling.across.coffers.length, down: ceiling.down.coffers.length, through: ceiling.room.grid.through.value,
        width: spread(boxes.map(({ width }) => width)), length: spread(boxes.map(({ length }) => length)), coffers: boxes.length, ...shapeOf(boxes),
        errors: found.filter(({ severity }) => severity === 'error').length, conflicts: found.filter(({ severity }) => severity === 'warning').length,
        ...hits !== undefined && { joists: hits }, ...hasBiscuits(ceiling) && { closing: closingCount(ceiling) },
        boards: plan.stocks.flatMap(({ buy }) => buy).reduce((sum, { count }) => sum + count, 0), costs: plan.costs, unpriced: plan.unpriced.length > 0,
        ...estimate.labor.length > 0 && { minutes: estimate.minutes }, untimed: estimate.missing.some(({ rate }) => rate.startsWith('labor')),
    };
}

/**
 * Closing pieces of a grid with either direction through, by one layout of it and nothing more; undefined where no bottom has biscuits, it cannot be laid out,
 * or what is said of single crossings makes another count of it.
 */
export function closingIn(room: Room): ReturnType<typeof closingByThrough> {
    const { ceiling } = layoutOf(room);
    return ceiling && room.crossings.length === 0 ? closingByThrough(ceiling) : undefined;
}
