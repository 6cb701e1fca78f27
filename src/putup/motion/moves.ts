import { biscuitOf } from '../../data/biscuits.ts';
import type { Point } from '../../plane/point.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../quantity/ticks.ts';
import type { Closing } from '../../takeoff/closing/pieces.ts';
import type { Way } from '../../takeoff/closing/ways.ts';
import type { Move, Pose } from '../model.ts';
import { RIGHT_UNDER } from '../stood.ts';
import type { Frame } from './pose.ts';

/** From so far below its place a piece is told to come; to look at it needs an end. */
const FROM: Ticks = 5 * TICKS_PER_FOOT;

function straight(aside: Point, below: Ticks): Pose {
    return { aside, below, shape: 'straight', angle: 0, low: 1 };
}
/** Where it ends. */
const HOME = straight(RIGHT_UNDER, 0);

/** Up beside its place, and from there to it. */
export function besideMoves(aside: Point): [Move, ...Move[]] {
    const lift: Move = { kind: 'lift', from: straight(aside, FROM), to: straight(aside, 0) };
    return aside.x === 0 && aside.y === 0 ? [lift] : [lift, { kind: 'push', from: straight(aside, 0), to: HOME }];
}

/** Up so as it is held, then straight, level to its place or right under it, and up to it. */
export function aroundMoves(held: Pose): [Move, ...Move[]] {
    const level = straight(held.aside, held.below), under = straight(RIGHT_UNDER, held.below);
    const isAside = held.aside.x !== 0 || held.aside.y !== 0;
    return [
        { kind: 'lift', from: { ...held, below: FROM }, to: held },
        ...held.shape === 'straight' ? [] : [{ kind: held.shape === 'turned' ? 'turn' : 'swing', from: held, to: { ...held, angle: 0 } } as const],
        ...isAside ? [{ kind: 'push', from: level, to: under } as const] : [],
        ...held.below > 0 ? [{ kind: 'lift', from: under, to: HOME } as const] : [],
    ];
}

/** What a way in makes of a piece and of the joints at its ends, and how it is moved. */
export interface Plan {
    readonly moves: readonly [Move, ...Move[]];
    /** Whether there is a biscuit at each end, and whether its own slots there are open to its back. */
    readonly biscuits: readonly [boolean, boolean]; readonly open: boolean;
    /** So much wider than the biscuit its slots are, towards its back; and so much its back edges are eased, at its low end or in its middle. */
    readonly wider: Ticks; readonly eased: Ticks;
}

/**
 * The plans of a way in: none of a run that is joined before it goes up, and of what has to be cut
 * anew. Where biscuits are left out at one end it is the second.
 */
export function plansOf(way: Way, closing: Closing, frame: Frame): Plan[] {
    const { ends } = closing;
    const has: readonly [boolean, boolean] = [ends[0].sticksOut > 0, ends[1].sticksOut > 0];
    const up = { moves: besideMoves(RIGHT_UNDER), open: false, wider: 0, eased: 0 };
    switch (way.kind) {
        case 'join-first': case 'splice': return [];
        case 'open-slots': return [{ ...up, biscuits: has, open: true }];
        case 'swing': return [swing(way, has[0] ? 1 : 0)];
        case 'leave-out': return way.swing ? [swing(way.swing, 1)] : [{ ...up, biscuits: [false, false] }];
        case 'spring': return [bent('bowed', 3 * way.bow / frame.length, way, { closing, frame })];
        case 'knee': return [{ ...bent('kneed', radians(way.angle), way, { closing, frame }), eased: way.binds }];
        case 'kerfs': return [bent('arched', radians(way.angle), way, { closing, frame })];
    }
}

/** The end with the biscuits stays up, the other one is swung up. */
function swing({ angle, binds, slotWider }: { readonly angle: number; readonly binds: Ticks; readonly slotWider: Ticks }, low: 0 | 1): Plan {
    return { ...gettingStraight({ aside: RIGHT_UNDER, below: 0, shape: 'leaning', angle: radians(angle), low }, 'swing'), biscuits: [low === 1, low === 0], wider: slotWider, eased: binds };
}

/** Bent or in halves, and straightened. With a biscuit at one end only it comes off the middle, towards the other. */
function bent(shape: 'bowed' | 'kneed' | 'arched', angle: number, { slotWider }: { readonly slotWider: Ticks }, { closing: { ends, biscuits }, frame: { way } }: Bent): Plan {
    const leans = angle * (biscuitOf(biscuits!.size)?.thickness ?? 0) / 2;
    const [first, second] = ends.map(({ sticksOut, room }) => (sticksOut > 0 ? sticksOut + leans : 0 - room)), off = shape === 'kneed' ? 0 : (first! - second!) / 2;
    const pose: Pose = { aside: { x: way.x * off, y: way.y * off }, below: 0, shape, angle, low: 1 };
    return { ...gettingStraight(pose, 'straighten'), biscuits: [ends[0].sticksOut > 0, ends[1].sticksOut > 0], wider: slotWider, eased: 0 };
}
interface Bent { readonly closing: Closing; readonly frame: Frame }

function gettingStraight(pose: Pose, kind: Move['kind']): Pick<Plan, 'moves' | 'open'> {
    return { moves: [{ kind: 'lift', from: { ...pose, below: FROM }, to: pose }, { kind, from: pose, to: { ...pose, aside: RIGHT_UNDER, angle: 0 } }], open: false };
}

function radians(degrees: number): number {
    return degrees * Math.PI / 180;
}
