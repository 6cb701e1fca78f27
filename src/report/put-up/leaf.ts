import type { Ceiling } from '../../ceiling/model.ts';
import { tapeOf } from '../../job/tape.ts';
import type { JobSettings } from '../../job/model.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import type { Measure } from '../../putup/measures.ts';
import type { Cycle } from '../../putup/model.ts';
import { WHY } from '../../putup/why-words.ts';
import { counted, listed } from '../../plain/words.ts';
import { printMark, type Tape } from '../../quantity/print-length.ts';
import { roundTo } from '../../quantity/round.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../../quantity/ticks.ts';
import { withoutRoom } from '../../takeoff/ids.ts';
import { hoursText } from '../estimate/words.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';
import { closingsTold, closingTimeWords } from './closing-words.ts';
import type { RoomPutUp, StepTold } from './content.ts';
import { otherChoice, otherChoiceWords } from './other-choice.ts';
import { howOf, type How } from './how.ts';
import { putUpCautions } from './step-cautions.ts';
import { inTurnWords, piecesWords, stepWords, summaryWords, waitsWords, waysIn, firstWaits } from './words.ts';
import { afterWords, type WaitTold } from './waits.ts';

/** In which order a house's ceilings are put up, room by room. */
export function putUpLeaf(house: House, putUpOf: (room: RoomPieces) => RoomPutUp | undefined): Leaf {
    const { job } = house, rooms = house.rooms.map(room => ({ room, told: putUpOf(room) })), known = rooms.some(({ told }) => told);
    return {
        title: 'PUTTING IT UP', of: titleOf(job), house,
        sections: rooms.flatMap(({ room, told }) => told ? sectionsOf(room, told, layoutOf(room.room).ceiling!, job) : [{ heading: `room ${room.room.name}`, words: ['It cannot be laid out.'] }]),
        notes: known ? [
            'Every piece of the cut list was put up in this order on the solids of the dry fit: lifted straight up, or beside its place and then pushed there; round what hangs in the way level, one end first or turned on the plan; closing pieces by their way in, leaning or bent as they are on it; past all that is up by then, the biscuits that stand out and the walls. So much as 1/64" a joint\'s edges are taken to give. That is what was looked at: not ladders, tools, hands, pipes or furniture.',
            ...rooms.some(({ told }) => told?.steps.some(({ shift }) => shift && shift.crew > 1))
                ? ['Several crews may do what they do beside each other in any order that the days leave open: of steps that do not wait for each other no piece, once it is up, is in the way of one of the other\'s. Where one would be, the steps are kept in turn. Pieces that are in the air at once give way to each other; crews work four feet apart, from the middle of what each puts up.'] : [],
            'Hours are those of the job\'s rates, which hold for making a piece and putting it up. How each step is done is common practice, no source.',
        ] : [],
        cautions: known ? putUpCautions(house.rooms.flatMap(({ takeOff }) => takeOff?.pieces ?? [])) : [],
    };
}

function sectionsOf({ room }: RoomPieces, told: RoomPutUp, ceiling: Ceiling, job: JobSettings): LeafSection[] {
    const { putUp, steps, measures } = told, tape = tapeOf(job), how = howOf(told, ceiling, tape);
    const firsts = firstWaits(steps), hasCrews = steps.some(({ shift }) => shift && shift.crew > 1);
    return [
        {
            heading: `room ${room.name}`,
            words: [
                `${summaryWords(told, job.show.value)}.`,
                ...waitsWords(told, room.putUp?.fromDay?.value),
                ...how.flatMap(({ kind, words }) => (kind === 'layout' ? [`Before the first step: ${words}`] : [])),
                ...hasCrews ? inTurnWords(putUp) : [],
                ...putUp.cycle ? [cycleWords(putUp.cycle, putUp.stuck.length)] : [],
            ],
            table: {
                head: ['step', 'day', ...hasCrews ? ['crew'] : [], 'what', 'pieces', 'people', 'person-hours', 'with'], rows: rowsOf(told, hasCrews, step => firsts.get(step.step.number)!),
                figures: hasCrews ? [0, 1, 2, 5, 6] : [0, 1, 4, 5],
            },
        },
        ...waysSection(room.name, steps, tape),
        ...closingSection(room.name, told, ceiling, tape),
        ...pressedSection(room.name, told, tape),
        ...putUp.firstBay ? [{
            heading: `first bay: coffer ${putUp.firstBay.coffer} of room ${room.name}`,
            words: [`Cut for it are ${listed(putUp.firstBay.pieces.map(withoutRoom))}. What measures otherwise goes back into the text before the rest is cut.`],
            table: { head: ['measure', 'of', 'should be', 'goes back to'], rows: measures.map(measure => measureRow(measure, tape)), figures: [2] },
        }] : [],
        { heading: `how it is done, room ${room.name}`, words: how.filter(({ kind }) => kind !== 'layout').map(howWords) },
    ];
}

/** Every step, and behind those that are begun on a day what is done on it in all: of what goes on the next day what is done of it on this one. */
function rowsOf({ steps, byDay }: RoomPutUp, hasCrews: boolean, waits: (step: StepTold) => readonly WaitTold[]): string[][] {
    const all = inTime(steps, hasCrews), row = (step: StepTold): string[] => rowOf(step, hasCrews, waits(step));
    if (byDay.length === 0) return all.map(row);
    return byDay.flatMap(({ day, minutes, steps: on, hasLayout, hasFinish }) => [
        ...all.filter(({ shift }) => shift?.first === day).map(row),
        ['', String(day), ...hasCrews ? [''] : [], `all of day ${day}${hasLayout ? ', with setting out' : ''}${hasFinish ? ', with filling and sanding' : ''}`, '',
            String(Math.max(1, ...steps.filter(({ step: { number } }) => on.includes(number)).map(({ people }) => people))), hoursText(minutes), ''],
    ]);
}

/** What several crews do as they come to it. */
function inTime(steps: readonly StepTold[], hasCrews: boolean): readonly StepTold[] {
    return hasCrews ? [...steps].sort((a, b) => a.shift!.from.compare(b.shift!.from) || a.step.number - b.step.number) : steps;
}

/** What each kind of step is called where it is told how it is done. */
export const HOW: Readonly<Record<How['kind'], string>> = {
    layout: 'Setting out', blocking: 'Blocking', spacers: 'Spacers', 'first-bay': 'First bay', sides: 'Sides and cleats', bottoms: 'Bottoms', moldings: 'Moldings', band: 'Band', trim: 'Ceiling trim', panel: 'Panel', glue: 'Glue',
};
function howWords({ kind, words }: How): string {
    return `${HOW[kind]}. ${words}`;
}

function rowOf({ step, fasteners, people, minutes, shift, up }: StepTold, hasCrews: boolean, waits: readonly WaitTold[]): string[] {
    const { first, last, crew } = shift ?? {};
    return [
        String(step.number), first === undefined ? '' : first === last ? String(first) : `${first} to ${last}`, ...hasCrews ? [String(crew ?? '')] : [], `${stepWords(step)}${waits.length > 0 ? `, after ${afterWords(waits)}` : ''}${upWords(up.size, step.placings.length)}`, piecesWords(step.placings), String(people), minutes ? hoursText(minutes) : '',
        fasteners.map(({ count, what }) => `${count} ${what}`).join('; '),
    ];
}

/** `, up`; `, 3 of 8 up`. */
function upWords(up: number, all: number): string {
    return up === 0 ? '' : up === all ? ', up' : `, ${up} of ${all} up`;
}

/** The ways in of what biscuits keep from going straight up: those that work, the best first. */
function closingSection(room: string, { closings, putUp }: RoomPutUp, ceiling: Ceiling, tape: Tape): LeafSection[] {
    if (closings.length === 0) return [];
    const other = otherChoice(ceiling, putUp);
    const rows = closingsTold(closings, tape).flatMap(({ names, wanted, ways }) => {
        const told = ways.length > 0 ? ways : ['none of those that are known works'];
        return told.map((way, i) => [i === 0 ? names : '', i === 0 ? wanted : '', way]);
    });
    return [{
        heading: `closing pieces, room ${room}`, words: [...other ? otherChoiceWords(other, tape) : [], 'For a while each would have to be so much shorter than it is. Ways in, the best first; figures of bent wood are approximate, and a scrap of the same board tells.', ...closingTimeWords(closings, ceiling)],
        table: { head: ['piece', 'shorter by', 'way in'], rows, figures: [1] },
    }];
}
/** What an extra mark of the tape a piece does along a row of bottoms. */
export function pressedSection(room: string, { pressed }: RoomPutUp, tape: Tape): LeafSection[] {
    if (pressed.length === 0) return [];
    // to the marks of a steel rule, finer than those of the tape
    const rule: Tape = { ...tape, step: tape.show === 'millimeters' ? TICKS_PER_MM / 10 : TICKS_PER_INCH / 64 }, size = (ticks: Ticks): string => printMark(ticks, rule);
    const squeezed = (ticks: Ticks): string => (roundTo(ticks, rule.step) === 0 ? '' : `, ${size(ticks)} being squeezed`);
    const bowed = ({ by, length, straightUpTo }: typeof pressed[number]['bows'], force: number | null): string =>
        (by === 0 ? 'nothing: so much is squeezed' : `${printMark(by, tape)} on ${printMark(length, tape)}${squeezed(straightUpTo)}`) + (force === null || by === 0 ? '' : `, with ${pounds(force)}`);
    const rows = pressed.map(({ lines, press, between, sum, asCut, bows, force, pushes }) => [
        listed(lines), size(press), `${between} x`, size(sum), asCut < 0 ? `${size(0 - asCut)} open` : size(asCut), bowed(bows, force),
        pushes ? `${listed(pushes.lines)} by ${size(pushes.by)}${pushes.lines.length > 1 ? ' each' : ''}` : 'none: it stands between walls',
    ]);
    const isSaid = pressed.some(({ said }) => said);
    return [{
        heading: `pressed joints, room ${room}`,
        words: [`${isSaid ? 'Bottoms are cut long by what is said' : 'Nothing is said to be cut long; this is what it would do'}. Each closes joints that are open by as much. What remains in a row, where nothing gives way, bows the last piece or pushes the outermost lines off: one or the other, at most so far. It bows once it is pressed by more than its wood is squeezed by, and so hard; lines that are not held against that are pushed off before. Forces are approximate, of clear wood as published. A piece that will not be pressed straight against its cleats is planed, not forced.`],
        table: { head: ['lines', 'long by', 'pieces', 'in all', 'as cut', 'bows', 'or pushes'], rows, figures: [1, 2, 3, 4] },
    }];
}

/** Rounded, as far as such a figure is worth: `about 1800 lb`. */
function pounds(force: number): string {
    return `about ${Math.round(force / 50) * 50} lb`;
}

/** What is not lifted straight up; all else is. */
function waysSection(room: string, steps: readonly StepTold[], tape: Tape): LeafSection[] {
    const rows = steps.flatMap(({ step: { number, placings } }) => waysIn(placings, tape).map(([pieces, way]) => [String(number), pieces, way]));
    const heading = `how they go in, room ${room}`;
    if (rows.length === 0) return [{ heading, words: ['Every piece is lifted straight up to its place.'] }];
    return [{ heading, words: ['Every piece is lifted straight up to its place, but these.'], table: { head: ['step', 'pieces', 'way'], rows, figures: [0] } }];
}

const MEASURE: Readonly<Record<Measure['kind'], string>> = {
    edge: 'edge of the coffer', diagonal: 'diagonal of the coffer', channel: 'channel of the bottom, at three places', underside: 'from the ceiling to the lower edge of the sides', 'side-thickness': 'thickness of a side', 'side-width': 'width of a side as ripped', 'bottom-width': 'width of a bottom as ripped',
};
/** What is measured, of what, what it should be, and what of the text is to be changed where it is otherwise. */
export function measureRow({ kind, of, wanted, goesTo: { words, stock } }: Measure, tape: Tape): string[] {
    const to = kind === 'edge' || kind === 'diagonal' ? 'the walls, or where the lines stand' : kind === 'side-thickness' ? `thickness of stock ${stock ?? words}`
        : kind === 'underside' ? `held-down of ${words}, or width of stock ${stock ?? words}` : `rip of ${words}${stock === undefined ? '' : `, or width of stock ${stock}`}`;
    return [MEASURE[kind], kind === 'edge' ? `${of} side` : kind === 'diagonal' ? of : `${of.includes(',') ? 'lines' : 'line'} ${of}`, printMark(wanted, tape), to];
}

export function cycleWords(cycle: Cycle, stuck: number): string {
    return `None of these can be the first: ${cycle.map(({ first, then, why }) => `${withoutRoom(then)} waits for ${withoutRoom(first)}, since it ${WHY[why]}`).join('; ')}. ${counted(stuck, 'piece')} cannot be put up in any order.`;
}
