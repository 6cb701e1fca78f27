import type { Ceiling } from '../../ceiling/model.ts';
import { tapeOf } from '../../job/tape.ts';
import { drawStepsPlan, stepNumber, toPaneSvg } from '../../drawing/index.ts';
import { pieceTitle } from '../../drawing/plan/pieces.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { grouped } from '../../plain/groups.ts';
import { kept, MOST_ROOMS } from '../../plain/kept.ts';
import type { Tape } from '../../quantity/print-length.ts';
import { Rational } from '../../quantity/rational.ts';
import { closingsTold, closingTimeWords } from '../../report/put-up/closing-words.ts';
import { putUpContent as tellOf, type RoomPutUp, type StepTold } from '../../report/put-up/content.ts';
import { howOf, type How } from '../../report/put-up/how.ts';
import type { LeafSection } from '../../report/leaf.ts';
import { cycleWords, HOW, measureRow, pressedSection } from '../../report/put-up/leaf.ts';
import { putUpCautions, stepCautions } from '../../report/put-up/step-cautions.ts';
import { afterWords } from '../../report/put-up/waits.ts';
import { firstWaits, inTurnWords, stepWords, summaryWords, waitsWords, waysIn } from '../../report/put-up/words.ts';
import { hoursText } from '../../report/estimate/words.ts';
import { withoutRoom } from '../../takeoff/ids.ts';
import { LEAST_LETTERS, type PageContent, type RoomOnPage, type Wishes } from '../page.ts';
import { Sources } from '../shared/sources.ts';

/** How a room's ceiling is put up, step by step. */
export interface PutUpContent extends PageContent {
    /** It is worked out, and not there yet. */
    readonly isLooking: boolean;
    readonly summary: string;
    /** Why some pieces are in no step; empty where all are. */
    readonly cycle: string;
    /** The plan with a group for each step: markup that src/drawing made. */
    readonly plan: { readonly svg: string; readonly width: number; readonly height: number } | null;
    /** What others finish first, and what several crews keep in turn, a sentence for each. */
    readonly waits: readonly string[];
    /** What is done before the first step. */
    readonly before: string;
    readonly days: readonly DayOnPage[];
    /** How each kind of step is done, by its kind, told once. */
    readonly how: readonly { readonly kind: How['kind']; readonly head: string; readonly words: string }[];
    /** What an extra mark of the tape a piece does along a row of bottoms. */
    readonly pressed: readonly LeafSection[];
    readonly cautions: readonly string[];
}
export interface DayOnPage {
    /** Null where it is not known how many people work. */
    readonly day: number | null;
    readonly hours: string;
    readonly steps: readonly StepOnPage[];
}
export interface StepOnPage {
    readonly number: number;
    /** `bottoms, line A`. */
    readonly what: string;
    readonly kind: How['kind'];
    /** `2 to 3` where it goes on the next day; the crew where there are several. */
    readonly days: string; readonly crew: number | null;
    readonly people: number;
    readonly hours: string;
    readonly pieces: readonly { readonly key: string; readonly name: string; readonly title: string; readonly at: number; readonly isUp: boolean }[];
    readonly fasteners: readonly string[];
    /** What others finish before it, where no step before it waits for that: `room pantry and "painter"`; empty where nothing is. */
    readonly after: string;
    /** What is not lifted straight up: names, and the way. */
    readonly ways: readonly (readonly [pieces: string, way: string])[];
    /** Closing pieces of it, with what they lack and their ways in, the best first; those that get in alike together. */
    readonly closing: readonly { readonly names: string; readonly wanted: string; readonly ways: readonly string[] }[];
    /** What getting these in takes. */
    readonly closingTime: readonly string[];
    /** A joint is glued in it. */
    readonly isGlued: boolean;
    readonly cautions: readonly string[];
    /** Set on the step after which nothing is cut before what is measured is in the text. */
    readonly gate?: GateOnPage;
}
export interface GateOnPage { readonly coffer: number; readonly rows: readonly (readonly string[])[] }

/** How a room is put up; kept as long as its ceiling is the same. */
export const putUpOnPage: { (ceiling: Ceiling): RoomPutUp; has(ceiling: Ceiling): boolean } = kept(
    (ceiling: Ceiling) => tellOf(ceiling, takeOffOf(ceiling)), MOST_ROOMS,
);

const NOTHING = { summary: '', cycle: '', plan: null, waits: [], before: '', days: [], how: [], pressed: [], cautions: [], sources: [] };

export function putUpContent(room: RoomOnPage, wishes: Wishes): PutUpContent {
    const { ceiling, takeOff, layout, order } = room, { job } = layout.room;
    if (order === 'looking') return { ...NOTHING, isLooking: true };
    const told = order ?? putUpOnPage(ceiling), { putUp, steps } = told, sources = new Sources(), tape = tapeOf(job);
    const how = howOf(told, ceiling, tape).map(({ kind, words }) => ({ kind, head: HOW[kind], words }));
    const hasCrews = steps.some(({ shift }) => shift && shift.crew > 1), firsts = firstWaits(steps), gate = steps.findLast(({ step }) => step.kind === 'first-bay')?.step.number;
    const onPage = steps.map(step => ({ day: step.shift?.first ?? null, minutes: step.minutes, step: stepOnPage(step, told, {
        tape, sources, gate: step.step.number === gate, after: afterWords(firsts.get(step.step.number)!),
        hasCrews, show: job.show.value, ceiling,
    }) }));
    return {
        isLooking: false, summary: summaryWords(told, job.show.value), cycle: putUp.cycle ? cycleWords(putUp.cycle, putUp.stuck.length) : '',
        waits: [...waitsWords(told, layout.room.putUp?.fromDay?.value), ...hasCrews ? inTurnWords(putUp) : []],
        plan: planOf(ceiling, takeOff, told, wishes, sources), before: how.find(({ kind }) => kind === 'layout')?.words ?? '',
        days: [...grouped(onPage, ({ day }) => day)].sort(([a], [b]) => (a ?? 0) - (b ?? 0)).map(([day, all]) => ({
            day, steps: all.map(({ step }) => step),
            hours: hoursOf(day === null ? all.flatMap(({ minutes }) => minutes ?? []) : told.byDay.flatMap(load => (load.day === day ? load.minutes : []))),
        })),
        how, pressed: pressedSection(layout.room.name, told, tape), cautions: putUpCautions(takeOff.pieces),
        sources: sources.list,
    };
}

function hoursOf(minutes: readonly Rational[]): string {
    return minutes.length === 0 ? '' : hoursText(minutes.reduce((sum, each) => sum.add(each), new Rational(0)));
}

interface Told {
    readonly tape: Tape; readonly sources: Sources; readonly gate: boolean; readonly after: string; readonly hasCrews: boolean;
    readonly show: Parameters<typeof pieceTitle>[1]; readonly ceiling: Ceiling;
}

function stepOnPage(told: StepTold, all: RoomPutUp, { tape, sources, gate, after, hasCrews, show, ceiling }: Told): StepOnPage {
    const { step, people, minutes, shift, fasteners, joints, up } = told, ids = new Set(step.placings.map(({ piece }) => piece.id));
    const own = all.closings.filter(({ closing: { piece } }) => ids.has(piece.id)), closings = closingsTold(own, tape);
    return {
        number: step.number, kind: step.kind, what: stepWords(step), people, after, hours: minutes ? hoursText(minutes) : '',
        days: !shift || shift.first === shift.last ? '' : `${shift.first} to ${shift.last}`, crew: hasCrews ? shift?.crew ?? null : null,
        pieces: step.placings.map(({ piece }) =>
            ({ key: piece.id, name: withoutRoom(piece.id), title: pieceTitle(piece, show), at: sources.number(piece.source), isUp: up.has(piece) })),
        fasteners: fasteners.map(({ count, what }) => `${count} ${what}`), ways: waysIn(step.placings, tape), isGlued: joints.length > 0 && step.kind !== 'first-bay',
        closing: closings.map(({ names, wanted, ways }) => ({ names, wanted, ways })), closingTime: closingTimeWords(own, ceiling),
        cautions: stepCautions(told, closings.some(({ bends }) => bends)),
        ...gate && all.putUp.firstBay ? { gate: { coffer: all.putUp.firstBay.coffer, rows: all.measures.map(measure => measureRow(measure, tape)) } } : {},
    };
}

/** The pane beside its list, or over it in a narrow one: see style.ts. Pixels; a point of the drawing is one. */
const NARROW = 760, SIZE_UNSAID = { width: 900, height: 680 };

function planOf(ceiling: Ceiling, takeOff: RoomOnPage['takeOff'], { steps }: RoomPutUp, wishes: Wishes, sources: Sources): PutUpContent['plan'] {
    const width = wishes.width ?? SIZE_UNSAID.width, height = wishes.height ?? SIZE_UNSAID.height;
    const size = width < NARROW ? { width: width - 24, height: Math.max(170, height * 0.4) }
        : { width: width * 0.52 - 24, height: Math.max(240, height - 130) };
    const at = new Map(takeOff.pieces.map(({ id, source }) => [id, source]));
    const ids = steps.map(({ step: { number, placings } }) => ({ number, pieces: placings.map(({ piece }) => piece.id) }));
    const plan = drawStepsPlan(ceiling, takeOff, ids, { ...size, letters: LEAST_LETTERS + 1 });
    const svg = toPaneSvg(plan, (group): Readonly<Record<string, string>> => {
        const { piece } = group;
        if (piece !== undefined) return { 'class': 'part', 'data-key': piece, 'data-at': String(sources.number(at.get(piece)!)) };
        const number = stepNumber(group);
        return number === undefined ? {} : { 'data-step': String(number) };
    });
    return { svg, width: plan.paper.width, height: plan.paper.height };
}
