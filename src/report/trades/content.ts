import { unitOf as wayOf, placeAlong } from '../../ceiling/along.ts';
import type { Ceiling, Coffer } from '../../ceiling/model.ts';
import type { Fixture } from '../../job/model.ts';
import { listed } from '../../plain/words.ts';
import { printMark } from '../../quantity/print-length.ts';
import { inches } from '../../quantity/rational.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { footOf, hits, placed, reachThatWay, type BothWays, type Placed } from '../../rules/support/in-the-way.ts';
import { tapeOf } from '../../job/tape.ts';
import { holdingOf, type Held } from '../../takeoff/holding.ts';
import type { TakeOff } from '../../takeoff/model.ts';

export type Trade = 'electrician' | 'electrician, low voltage' | 'alarm contractor' | 'sprinkler contractor' | 'HVAC contractor' | 'drywall' | 'framer';
/** The step of the work on the ceiling before which it has to be done. */
export type Step = 'the ceiling is closed' | 'the blocking goes up' | 'the panel goes up' | 'the bottoms go up' | 'the trim goes up';

/** What one of the other trades has to do, or has to leave as it is. Places on the plan from the room's north-west corner. */
export interface TradeTask {
    readonly trade: Trade;
    /** The fixture's name, or the beam that wants backing. */
    readonly of: string;
    readonly kind: string;
    readonly at: { readonly x: Ticks; readonly y: Ticks } | null;
    readonly does: 'moves' | 'brings it out' | 'wires it through' | 'puts backing in' | 'leaves it';
    readonly to: { readonly x: Ticks; readonly y: Ticks } | null;
    /** In words: how far which way, how much. */
    readonly what: string;
    readonly why: string;
    readonly before: Step;
    readonly fixture: Fixture | null;
}

const TRADE: Readonly<Record<string, Trade>> = {
    'light': 'electrician', 'fan': 'electrician', 'junction-box': 'electrician', 'speaker': 'electrician, low voltage', 'smoke-alarm': 'alarm contractor',
    'sprinkler': 'sprinkler contractor', 'register': 'HVAC contractor', 'access-panel': 'drywall',
};
/** What has a box or a can that has to come out to the face of a panel, and what is wired through a beam to its bottom. */
const WIRED: ReadonlySet<string> = new Set(['light', 'fan', 'junction-box', 'speaker', 'smoke-alarm']);
/** What an eye takes for the middle: as fixture-off-center. */
const PASSES = inches('1/2');

/** Who moves what, to where, by which step; in the order of the trades above, then of the text. */
export function tradesContent(ceiling: Ceiling, takeOff: TakeOff): TradeTask[] {
    const all = [...placed(ceiling.room.fixtures).flatMap(one => taskOf(one, ceiling) ?? []), ...backingOf(ceiling, takeOff)];
    const order = [...new Set(Object.values(TRADE)), 'framer'];
    return all.sort((a, b) => order.indexOf(a.trade) - order.indexOf(b.trade));
}

function taskOf(one: Placed, ceiling: Ceiling): TradeTask | undefined {
    const { fixture, x, y, half } = one, { name, kind, keepClear, wants, reachedBy } = fixture, trade = TRADE[kind];
    if (!trade) return undefined;
    const base = { trade, of: name, kind, at: { x, y }, fixture };
    const moved = (to: TradeTask['to'], why: string): TradeTask => ({ ...base, does: 'moves', to, what: to ? movedWords({ x, y }, to, ceiling) : 'clear of it', why, before: 'the blocking goes up' });
    const reach = half + (keepClear?.value ?? 0), back = ceiling.beams?.profile.back?.thickness?.value.ticks ?? 0;
    if (wants?.value === 'beam-center') {
        const to = onBeam(one, ceiling);
        if (to && isOff({ x, y }, to)) return moved(to, 'it is to be in the middle of the beam');
        return WIRED.has(kind) || kind === 'sprinkler' ? { ...base, does: kind === 'sprinkler' ? 'brings it out' : 'wires it through', to: null, what: kind === 'sprinkler' ? 'to the face of the bottom' : 'with enough length to reach the bottom', why: 'it is in the beam', before: 'the bottoms go up' }
            : { ...base, does: 'leaves it', to: null, what: '', why: 'it is in the beam', before: 'the bottoms go up' };
    }
    const blades = fixture.hangs && kind === 'fan' ? fixture.hangs.value : undefined;
    const near = hits(one, reach, ceiling).filter(hit => blades === undefined || footOf(hit) >= blades);
    if (wants?.value === 'coffer-center') {
        const to = centerOf(cofferOf({ x, y }, ceiling));
        if (to && (isOff({ x, y }, to) || near.length > 0)) return moved(to, 'it is to be in the middle of its coffer');
    } else if (near.length > 0 && !reachedBy) {
        const on = listed([...new Set(near.map(hit => hit.name))]);
        return moved(nearestClear(one, { x: reachThatWay(one, reach, { x: 1, y: 0 }), y: reachThatWay(one, reach, { x: 0, y: 1 }) }, ceiling), kind === 'junction-box' ? `${on} would bury it` : hits(one, half, ceiling).length > 0 ? `${on} ${near.length > 1 ? 'go' : 'goes'} there` : `it is nearer to ${on} than it is to be`);
    }
    if (back > 0 && WIRED.has(kind)) return { ...base, does: 'brings it out', to: null, what: `by ${printMark(back, tapeOf(ceiling.room.job))}, to the face of the panel`, why: 'a panel covers the coffers', before: 'the panel goes up' };
    return { ...base, does: 'leaves it', to: null, what: '', why: reachedBy ? `reached by ${reachedBy.value}` : 'it is clear', before: 'the trim goes up' };
}

function isOff(at: { x: Ticks; y: Ticks }, to: { x: Ticks; y: Ticks }): boolean {
    return Math.abs(at.x - to.x) > PASSES || Math.abs(at.y - to.y) > PASSES;
}

function movedWords(at: { x: Ticks; y: Ticks }, to: { x: Ticks; y: Ticks }, { room: { job } }: Ceiling): string {
    const told = (by: Ticks, [less, more]: readonly [string, string]): string[] => {
        const text = printMark(Math.abs(by), tapeOf(job));
        return Math.abs(by) < job.cutTo.value / 2 ? [] : [`${text} ${by < 0 ? less : more}`];
    };
    return listed([...told(to.x - at.x, ['west', 'east']), ...told(to.y - at.y, ['north', 'south'])]);
}

const NOWHERE: BothWays = { x: 0, y: 0 };

/** The coffer that a place is in, or that is nearest to it. */
function cofferOf(at: { x: Ticks; y: Ticks }, { coffers }: Ceiling): Coffer | undefined {
    return coffers.reduce<Coffer | undefined>((best, one) => (!best || apart(at, one, NOWHERE) < apart(at, best, NOWHERE) ? one : best), undefined);
}

function centerOf(coffer: Coffer | undefined): { x: Ticks; y: Ticks } | null {
    return coffer && isBox(coffer) ? { x: Math.round((coffer.west + coffer.east) / 2), y: Math.round((coffer.north + coffer.south) / 2) } : null;
}

/** How far a place is from what of a coffer lies so far inside of its sides. */
function apart({ x, y }: BothWays, { west, east, north, south }: Coffer, inside: BothWays): number {
    return Math.hypot(Math.max(0, west + inside.x - x, x - east + inside.x), Math.max(0, north + inside.y - y, y - south + inside.y));
}

/** The nearest place in a coffer where it is clear on all sides, rounded away from the sides; null where no coffer that is a rectangle has one. */
function nearestClear({ x, y }: Placed, reach: BothWays, { coffers, room: { job } }: Ceiling): { x: Ticks; y: Ticks } | null {
    const wide = coffers.filter(coffer => isBox(coffer) && coffer.east - coffer.west >= 2 * reach.x && coffer.south - coffer.north >= 2 * reach.y);
    const far = (coffer: Coffer): number => apart({ x, y }, coffer, reach);
    const best = wide.reduce<Coffer | undefined>((nearest, one) => (!nearest || far(one) < far(nearest) ? one : nearest), undefined);
    if (!best) return null;
    const step = job.cutTo.value, up = (at: Ticks): Ticks => Math.ceil(at / step) * step, down = (at: Ticks): Ticks => Math.floor(at / step) * step;
    const within = (at: Ticks, low: Ticks, high: Ticks): Ticks => (at < low ? Math.min(up(low), high) : at > high ? Math.max(down(high), low) : at);
    return { x: within(x, best.west + reach.x, best.east - reach.x), y: within(y, best.north + reach.y, best.south - reach.y) };
}

function isBox({ west, east, north, south, outline }: Coffer): boolean {
    const isOn = (at: Ticks, ...edges: readonly Ticks[]): boolean => edges.some(edge => Math.abs(at - edge) <= 1);
    return outline.length === 4 && outline.every(({ x, y }) => isOn(x, west, east) && isOn(y, north, south));
}

/** The nearest place on the middle of a beam. */
function onBeam({ x, y }: Placed, { lines }: Ceiling): { x: Ticks; y: Ticks } | undefined {
    const all = lines.map(line => {
        const u = wayOf(line), aside = (x - line.spot.x) * u.y - (y - line.spot.y) * u.x, along = placeAlong(line, { x, y });
        const off = Math.max(0, line.start - along, along - line.end);
        return { to: { x: Math.round(x - aside * u.y), y: Math.round(y + aside * u.x) }, by: Math.hypot(aside, off) };
    });
    return all.sort((a, b) => a.by - b.by)[0]?.to;
}

/** Backing for blocking that finds no joist, and for stretches where one is missing. */
function backingOf(ceiling: Ceiling, { pieces }: TakeOff): TradeTask[] {
    const holding = holdingOf(ceiling, pieces);
    if (!holding || holding.joists.all.length === 0) return [];
    const tape = tapeOf(ceiling.room.job), print = (ticks: Ticks): string => printMark(Math.round(ticks), tape);
    const task = ({ piece }: Held, what: string, why: string): TradeTask => {
        const middle = (axis: 'x' | 'y'): Ticks => Math.round(piece.corners.reduce((sum, corner) => sum + corner[axis], 0) / 4);
        return { trade: 'framer', of: piece.line === null ? `half beam, ${piece.on} wall` : `line ${piece.line}${piece.bay === null ? '' : `, bay ${piece.bay}`}`, kind: 'backing', at: { x: middle('x'), y: middle('y') }, does: 'puts backing in', to: null, what, why, before: 'the ceiling is closed', fixture: null };
    };
    return holding.held.flatMap((held): TradeTask[] => {
        const { piece, finds, isFarApart, open: { from, to } } = held, long = print(piece.back), wide = print(piece.width);
        if (finds.length === 0) return [task(held, `along its middle, ${long} long, for blocking ${wide} wide`, 'its blocking finds no joist')];
        return isFarApart && finds.every(({ along }) => !along) ? [task(held, `from ${print(from)} to ${print(to)} along it, counted from its west or north end, for blocking ${wide} wide`, 'its blocking is too far from one joist to the next')] : [];
    });
}
