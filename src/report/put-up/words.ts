import type { Path, Placing, PutUp, Spot, Step, StepKind } from '../../putup/model.ts';
import { nameInRoom, withoutRoom } from '../../takeoff/ids.ts';
import { grouped } from '../../plain/groups.ts';
import { shortWay } from './closing-words.ts';
import { isBeside } from './way.ts';
import { counted, listed } from '../../plain/words.ts';
import { printMark, printRun, type Show, type Tape } from '../../quantity/print-length.ts';
import { Rational } from '../../quantity/rational.ts';
import { hoursText } from '../estimate/words.ts';
import type { RoomPutUp, StepTold } from './content.ts';
import { waitWords, type WaitTold } from './waits.ts';

const KIND: Readonly<Record<StepKind, string>> = {
    panel: 'panel', blocking: 'blocking', spacers: 'spacers', 'first-bay': 'first bay, dry', sides: 'sides and cleats', bottoms: 'bottoms', moldings: 'moldings', band: 'band', trim: 'ceiling trim',
};

/** How many steps, hours, days and moves of the ladder it takes. */
export function summaryWords({ putUp: { begin }, moves, steps, hours, waits }: RoomPutUp, show: Show): string {
    const all = hours && [hours.layout, ...hours.steps.values(), hours.finish].reduce((sum, each) => sum.add(each), new Rational(0));
    const days = Math.max(0, ...steps.map(({ shift }) => shift?.last ?? 0));
    const isHeld = waits.length > 0 || begin.notBefore !== null || steps.some(({ step: { notBefore } }) => notBefore !== null);
    return [
        `${counted(steps.length, 'step')}, ${all ? `${hoursText(all)} of one person with setting out, filling and sanding` : 'not timed: its labor says no times'}`,
        ...days > 0 ? [isHeld ? `the last of them ends on day ${days}` : `the steps alone take ${counted(days, 'day')}`] : [], `${steps.some(({ shift }) => shift && shift.crew > 1) ? 'the ladders of all crews are' : 'the ladder is'} moved ${counted(moves.count, 'time')}, ${printRun(moves.distance, show)} in all${leastWords(moves, show)}`,
    ].join('; ');
}

/** Whether there is a shorter way of the ladder, as far as that is known. */
function leastWords({ count, distance, atLeast }: RoomPutUp['moves'], show: Show): string {
    if (count === 0) return '';
    if (atLeast === null) return ', from each step to the nearest that can be done; a shorter way is not looked for';
    const inTurn = 'with each kind of work in its turn';
    return atLeast === distance ? `, and no order is shorter ${inTurn}` : `, the shortest found; no order is shorter than ${printRun(atLeast, show)} ${inTurn}`;
}

/** What others finish first, a sentence for each. */
export function waitsWords({ waits, putUp: { begin } }: Pick<RoomPutUp, 'waits' | 'putUp'>, fromDay: number | undefined): string[] {
    return [...fromDay === undefined || begin.notBefore === null ? [] : [`Begun on day ${fromDay} at the soonest, as the text says.`], ...waits.map(waitWords)];
}

/** Of each step those that no step before it waits for: so that each is told once. */
export function firstWaits(steps: readonly StepTold[]): ReadonlyMap<number, readonly WaitTold[]> {
    const told = new Set<WaitTold>();
    return new Map(steps.map(({ step: { number }, waits }) => {
        const own = waits.filter(wait => !told.has(wait));
        for (const wait of own) told.add(wait);
        return [number, own] as const;
    }));
}

/** What several crews keep in turn, beyond what has to be there before what. */
export function inTurnWords({ inTurn, steps }: Pick<PutUp, 'inTurn' | 'steps'>): string[] {
    const gate = steps.findLast(({ kind }) => kind === 'first-bay')?.number, others = [...grouped(inTurn.filter(({ why }) => why !== 'first-bay'), ({ first }) => first)];
    return [
        ...gate === undefined ? [] : [`No crew puts up more than blocking and spacers before step ${gate}, the first bay, is measured.`],
        ...others.length === 0 ? [] : [`Whoever does them, kept in turn: ${others.map(([first, then]) => `step ${first} before ${listed(then.map(each => String(each.then)))}`).join('; ')}. What comes first would not get past what comes then, or hold the biscuits for it.`],
    ];
}

/** `bottoms, line A`. */
export function stepWords({ kind, of }: Pick<Step, 'kind' | 'of'>): string {
    return `${KIND[kind]}, ${spotWords(of)}`;
}
function spotWords({ kind, name }: Spot): string {
    return kind === 'wall' ? `${name} wall` : `${kind} ${name}`;
}

/** How pieces of a step go in that are not lifted straight up: their names, and the way. */
export function waysIn(placings: readonly Placing[], tape: Tape): (readonly [pieces: string, way: string])[] {
    const aside = placings.filter(({ path }) => path && !path.over && !path.around && isBeside(path)), over = placings.filter(({ path }) => path?.over);
    const none = placings.filter(({ path }) => !path), around = placings.filter(({ path }) => path?.around);
    const names = (all: readonly Placing[]): string => listed(all.map(({ piece }) => nameInRoom(piece)));
    return [
        ...[...new Set(aside.map(one => heldOff(one.path!, tape)))]
            .map(how => [names(aside.filter(one => heldOff(one.path!, tape) === how)), `up ${how}, then pushed onto the biscuits`] as const),
        ...[...grouped(around, one => aroundWords(one, tape)).entries()].map(([way, own]) => [names(own), way] as const),
        ...[...grouped(over, ({ path }) => shortWay(path!.by!)).entries()]
            .map(([way, own]) => [names(own), `${own.length > 1 ? 'closing pieces, each' : 'a closing piece'} ${way}`] as const),
        ...none.length > 0 ? [[names(none), `no way in was found: ${listed([...new Set(none.flatMap(({ blockedBy }) => blockedBy))].map(withoutRoom))} in the way`] as const] : [],
    ];
}

/** `up 9/16" to the south, 1 9/16" low, then pushed in over bottom-1, then up to its place`. */
function aroundWords({ piece: { box }, path, blockedBy }: Placing, tape: Tape): string {
    const moves = path!.moves, [{ to: { shape, angle, low, below } }] = moves as [Path['moves'][number]], degrees = Math.round(Math.abs(angle) * 180 / Math.PI);
    const over = `over ${listed(blockedBy.map(withoutRoom))}`, last = below > 0 ? `, then up the last ${printMark(below, tape)}` : '';
    const ends = box.east - box.west > box.south - box.north ? ['west', 'east'] : ['north', 'south'];
    const beside = isBeside(path!) ? `${heldOff(path!, tape)} of its place` : '';
    switch (shape) {
        case 'turned': return `turned ${degrees}° on the plan in the middle of its coffer and lifted past what hangs there, turned straight and pushed in ${over}${last}`;
        case 'tipped': return `its ${ends[1 - low]} end first, the other hanging (${degrees}°)${beside && `, ${beside}`}, swung up ${beside ? `and pushed in ${over}` : over}${last}`;
        default: return `up ${beside}, then pushed in ${over}${last}`;
    }
}

/** `1/2" to the west`. */
function heldOff({ aside: { x, y } }: Path, tape: Tape): string {
    const mark = printMark(Math.round(Math.hypot(x, y)), tape), level = Math.abs(x) >= Math.abs(y);
    return `${mark} to the ${level ? x < 0 ? 'west' : 'east' : y < 0 ? 'north' : 'south'}`;
}

/** `4 pieces`. */
export function piecesWords(placings: readonly Placing[]): string {
    return counted(placings.length, 'piece');
}
