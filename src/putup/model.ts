import type { WaitSaid } from '../job/model.ts';
import type { Point } from '../plane/point.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Way } from '../takeoff/closing/ways.ts';

/**
 * How a ceiling is put up: what has to be there before what, the steps in their order, and the way on which every piece gets to its
 * place. x runs east, y south, z down from the ceiling; ticks.
 */

/**
 * Why one piece has to be there before another.
 *
 * - `carries`: the other is fastened to it.
 * - `in-the-way`: the other, once it is up, hangs under it, and it would not get past.
 * - `runs-through`: the other butts against its edge, with biscuits that go in from the side.
 * - `custom`: the other butts against its edge, and is fitted to it as a rule.
 * - `spliced`: the other is pushed onto the biscuits of their splice: towards the piece of a run that goes up last.
 * - `ends-at`: the other ends at its face, and is fitted to it.
 * - `last`: the other goes up last where nothing else is said: a band, behind which what is cut too long has room.
 * - `said`: the text wants it so.
 */
export type Reason = 'carries' | 'in-the-way' | 'runs-through' | 'custom' | 'spliced' | 'ends-at' | 'last' | 'said';

/**
 * `first` has to be there before `then`: pieces by their names in the cut list. Of what the text says of many pieces one of the two is no piece but
 * stands for all of them: `order 0 before`, which is there when they are.
 */
export interface Before { readonly first: string; readonly then: string; readonly why: Reason; readonly at?: Source }

/**
 * How a piece stands on its way, against how it stands in the end. `aside`: so far beside its place on the plan, and so far `below` it; ticks. `angle` in
 * radians:
 *
 * - `turned`: level, turned on the plan about its middle, from east towards south.
 * - `tipped`: its end `low` (0: that to the west or north) hangs lower, the other end is where it belongs.
 * - `leaning`: the same, but held off at its high end, and low where it belongs.
 * - `bowed`: by one push in its middle, which hangs; the angle is that of its ends. `arched`: as part of a circle, by kerfs across its back.
 * - `kneed`: in two halves that hang where they meet in its middle.
 *
 * What that makes it shorter to the eye is taken off alike at both ends, at its high end where it leans, at its low one where it is tipped: see
 * motion/pose.ts, which says of every place in a piece where it is.
 */
export interface Pose {
    readonly aside: Point; readonly below: Ticks;
    readonly shape: 'straight' | 'turned' | 'tipped' | 'leaning' | 'bowed' | 'kneed' | 'arched';
    readonly angle: number; readonly low: 0 | 1;
}

/** `lift`: straight up. `push`: level. `turn`: level, straight to how it lies. `swing`: its low end up. `straighten`: what is bent, or in halves. */
export interface Move { readonly kind: 'lift' | 'push' | 'turn' | 'swing' | 'straighten'; readonly from: Pose; readonly to: Pose }

/**
 * The way a piece takes to its place: its moves one after the other, the last of which ends there. It is lifted straight up, `aside` from its place (ticks on
 * the plan; nothing: right under it), and then pushed there; past what hangs in the way turned or tipped too, and lower than its place: see
 * motion/around.ts. `over`: not past the biscuits that stand out at its ends but over them: `by` what way in. `around`: not onto biscuits but round what
 * hangs in the way.
 */
export interface Path { readonly aside: Point; readonly over: boolean; readonly by?: Way; readonly around?: true; readonly moves: readonly Move[] }

/** A piece that is put up, and how. Null: there is no way to its place that was found. */
export interface Placing {
    readonly piece: Piece; readonly path: Path | null;
    /** What stands in the way of a straight lift, by name. */
    readonly blockedBy: readonly string[];
    /** Of the last piece of a run that is spliced: the names of all of it. */
    readonly run?: readonly string[];
    /** Where it does not get in as the text says: the ways in on which it does. */
    readonly instead?: readonly Way[];
}

/** What is done in one go, at one place. */
export interface Step {
    /** From 1. */
    readonly number: number;
    readonly kind: StepKind;
    /** What the step is about: a line, a coffer, a wall; by its name. */
    readonly of: Spot;
    readonly placings: readonly Placing[];
    /** The middle of its pieces on the plan. */
    readonly at: Point;
    /** The day before which it is not begun, as the text says; null where it says nothing. */
    readonly notBefore: number | null;
    /** What others finish before it, where not all of the room waits for that. */
    readonly waits: readonly WaitSaid[];
}
export type StepKind = 'panel' | 'blocking' | 'spacers' | 'first-bay' | 'sides' | 'bottoms' | 'moldings' | 'band' | 'trim';
export interface Spot { readonly kind: 'line' | 'coffer' | 'wall'; readonly name: string }

/**
 * Two steps, by their numbers, that several crews keep in this order: for what is needed alone the second could be done before the first.
 *
 * - `in-the-way`: a piece of the second, were it up, would be in the way of one of the first.
 * - `biscuits`: a piece of the second comes onto biscuits of one of the first, and not the other way round.
 * - `first-bay`: nothing that is cut beyond the first bay goes up before that is measured.
 */
export interface InTurn { readonly first: number; readonly then: number; readonly why: 'in-the-way' | 'biscuits' | 'first-bay' }

/** Pieces each of which has to be there before the next, and the last before the first: none of them can be put up. */
export type Cycle = readonly Before[];

export interface PutUp {
    readonly steps: readonly Step[];
    /** What all of the room waits for, setting out too. */
    readonly begin: Pick<Step, 'notBefore' | 'waits'>;
    readonly before: readonly Before[];
    /** Steps that several crews keep in their order besides: see in-turn.ts. None where the text says one crew, which does all in their order. */
    readonly inTurn: readonly InTurn[];
    /** Where there is one, nothing that follows from its pieces is in the steps. */
    readonly cycle: Cycle | null;
    /** Names of pieces that no step puts up: those of the cycle, and what has to wait for them. */
    readonly stuck: readonly string[];
    /** Names in what is said of the order that nothing in the room has. */
    readonly unknown: readonly Given<string>[];
    /** The coffer that is tried first, dry; null where there is none. */
    readonly firstBay: FirstBay | null;
    /** Whether some band is up before some bottom: then what ends at bands has no room behind it. */
    readonly band: 'first' | 'last';
    /**
     * How far the ladder is moved, from the middle of a step to that of the next, and how often. `atLeast`: no order of these steps is shorter, while each kind
     * of work is done in its turn; the distance itself where it is proved to be the least. Null where that was not worked out.
     */
    readonly moves: { readonly count: number; readonly distance: Ticks; readonly atLeast: Ticks | null };
}

/** The coffer that is built dry before anything else is cut, and measured. */
export interface FirstBay {
    readonly coffer: number;
    /** Pieces that are cut for it; everything but these and the blocking waits. */
    readonly pieces: readonly string[];
    readonly at?: Source;
}
