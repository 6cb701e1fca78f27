import { isTurned } from '../../takeoff/ends.ts';
import { tapeOf } from '../../job/tape.ts';
import { printLength, printMark, type Tape } from '../../quantity/print-length.ts';
import { roundDown } from '../../quantity/round.ts';
import { tapingOf, tapingWords, type LaidBoard, type LaidStrip, type SawOrder, type SetUps, type Step } from '../../sawing/index.ts';
import type { Piece } from '../../takeoff/model.ts';
import { titleOf } from '../house.ts';
import { columns, wrap, type Paint } from '../look.ts';
import { cleanText } from '../../text/clean-text.ts';
import { standingText } from '../standing.ts';
import { countedParts, howToMiter, namesIn, STAGES, stepWords } from './step-words.ts';
import type { HouseSaw } from './house-saw.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { TerminalText } from '../../text/fit.ts';
import { terminalParagraphs } from '../../text/terminal.ts';
import { grouped } from '../../plain/groups.ts';
import { counted } from '../../plain/words.ts';

const WIDTH = 100;

/** The list to carry to the saw: the settings in their order, then every board with the readings of its marks. */
export function humanSaw(houses: readonly HouseSaw[], paint: Paint): TerminalText {
    return terminalParagraphs(houses.map(house => sawList(house, paint)));
}

function sawList({ house, order }: HouseSaw, paint: Paint): string[] {
    const { job, rooms } = house;
    const show = job.show.value;
    const nameOf = namesIn(order);
    const pieces = order.boards.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece);
    return [
        paint.strong(`AT THE SAW  ${cleanText(titleOf(job))}`),
        `${counted(pieces.length, 'piece')} out of ${counted(order.boards.length, 'board')} for ${rooms.map(r => r.room.name).join(', ')}; kerf ${printLength(job.kerf.value, show)}, end trim ${printLength(job.endTrim.value, show)} a board`,
        ...standingText(rooms, { dont: 'cut', lacks: 'its pieces are not here' }, paint, WIDTH),
        ...order.steps.length === 0 ? ['There is nothing to cut.'] : [
            ...wrap('Work setting by setting: each one serves all boards. Its pieces are at the hooked ends, since everything longer has been cut off by then. The marks by board are the same cuts, for layout and for checking.', WIDTH),
            ...wrap(setUpsText(order.setUps), WIDTH),
            ...cautionLines(order, 'all'),
            ...STAGES.flatMap(stage => stageText(stage.title, order.steps.filter(step => stage.has(step)), order, nameOf, paint)),
            ...measuring(pieces, paint),
            '', paint.strong('BY BOARD'),
            ...wrap('Readings of a tape hooked on the left end; the kerf lies right of each mark. Mitered boards lie back up, groove edge at the fence.', WIDTH),
            ...byStock(order.boards).flatMap(boards => ['', paint.strong(stockNames(order.boards.map(({ stock }) => stock))(boards[0]!.stock)), ...boardLines(boards, tapeOf(job), nameOf)]),
        ],
    ];
}

export function setUpsText({ fences, stops, angles, miterStops, machines, total, pickUps }: SetUps): string {
    const parts = [
        [fences, 'fence'], [stops, 'stop'], [angles, 'angle'], [miterStops, 'stop at an angle', 'stops at an angle'], [machines, 'setting of router, joiner and drill', 'settings of router, joiner and drill'],
    ] as const;
    return `${counted(total, 'set-up')}: ${parts.flatMap(([count, one, many]) => (count > 0 ? [counted(count, one, many)] : [])).join(', ')}. Boards are picked up ${pickUps === 1 ? 'once' : `${pickUps} times`} at the stops.`;
}

function stageText(title: string, steps: readonly Step[], order: SawOrder, nameOf: (piece: Piece) => string, paint: Paint): string[] {
    if (steps.length === 0) return [];
    const kinds = [...new Set(steps.map(step => step.do))];
    return [
        '', paint.strong(title.toUpperCase()), ...kinds.flatMap(kind => cautionLines(order, kind)), ...steps[0]!.do === 'miter' ? howToMiter(steps).flatMap(words => wrap(words, WIDTH)) : [],
        ...steps.flatMap(step => {
            const { set, lines } = stepWords(step, order, nameOf);
            return [`${String(step.number).padStart(4)}  ${paint.strong(set)}`, ...lines.flatMap(words => wrap(words, WIDTH - 8).map(line => `        ${line}`))];
        }),
    ];
}

/** The cautions that belong to a part of the work, each behind its mark. */
function cautionLines({ cautions }: SawOrder, at: SawOrder['cautions'][number]['at']): string[] {
    return cautions.filter(c => c.at === at).flatMap(c => wrap(c.words, WIDTH - 3).map((line, i) => `${i === 0 ? ' !' : '  '} ${line}`));
}

/** How a finished piece is measured: pieces that are measured alike together. */
function measuring(pieces: readonly Piece[], paint: Paint): string[] {
    const ways = grouped(pieces.filter(p => p.ends.some(isTurned)), piece => tapingWords(tapingOf(piece)));
    if (ways.size === 0) return [];
    return [
        '', paint.strong('TO MEASURE WHAT IS MITERED'),
        ...wrap('At the face the tape finds nothing to hook on: hold its 1" line (100 mm) on one short point and take that off the reading.', WIDTH),
        ...[...ways].map(([words, own]) => `  ${countedParts(own)}${own[0]!.hand ? `, ${own[0]!.hand}` : ''}: ${words}`),
    ];
}

function byStock(boards: readonly LaidBoard[]): LaidBoard[][] {
    const keys = [...new Set(boards.map(b => b.stock.key))];
    return keys.map(key => boards.filter(b => b.stock.key === key));
}

function boardLines(boards: readonly LaidBoard[], tape: Tape, nameOf: (piece: Piece) => string): string[] {
    const heads = columns(boards.map(b => [`#${b.number}`, `${printLength(b.length, tape.show)}${b.along === b.length ? '' : ' ripped across'}${b.from === 'bought' ? '' : ` ${b.from}`}`, '|']));
    const indent = Math.max(...heads.map(head => head.length)) + 2;
    return boards.flatMap((board, i) => board.strips.flatMap((strip, j) => wrap(stripText(board, strip, tape, nameOf), WIDTH - indent)
        .map((line, k) => (j === 0 && k === 0 ? `  ${heads[i]!.slice(0, -1)} ${line}` : ' '.repeat(indent) + line))));
}

/** `1/2" | blocking-A-2 to 3' 7 7/8" | …`: the first mark, then every piece with the mark at its far end. */
function stripText({ sections }: LaidBoard, strip: LaidStrip, tape: Tape, nameOf: (piece: Piece) => string): string {
    const left = roundDown(strip.offcut, tape.step);
    const from = strip.section === undefined ? '' : `section ${strip.section}, `;
    const name = strip.rippedTo === undefined ? '' : `${from}strip ${strip.number} (${printLength(strip.rippedTo, tape.show)}): `;
    const off = strip.rippedTo === undefined ? sections : [];
    if (strip.pieces.length + off.length === 0) return `${name}left whole`;
    const marks = [...strip.pieces.map(p => ({ what: nameOf(p.piece), to: p.to })), ...off.map(s => ({ what: `section ${s.number}`, to: s.to }))].sort((a, b) => a.to - b.to);
    return `${name}${[
        ...strip.trim > 0 || strip.section === undefined ? [printMark(strip.trim, tape)] : [], ...marks.map(({ what, to }) => `${what} to ${printMark(to, tape)}`),
        ...(left > 0 ? [`${strip.kept ? 'keep' : 'offcut'} ${printMark(left, tape)}`] : []),
    ].join(' | ')}`;
}
