import { PLURAL } from '../../job/part.ts';
import { printInches, printLength, printRun, type Show } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../quantity/ticks.ts';
import { cutOff, settingText, type Block, type BoardRef, type MiterCut, type SawOrder, type Step } from '../../sawing/index.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import { PARTS, type Piece } from '../../takeoff/model.ts';
import { workWords } from '../../takeoff/work.ts';
import { marksText } from '../marks.ts';
import { counted } from '../../plain/words.ts';

/** A step as it is printed: what is set, then what is done at that setting, line by line. */
interface StepWords { readonly set: string; readonly lines: readonly string[] }

/** The parts of the work, in their order, with what belongs to each. */
export const STAGES: readonly { readonly title: string; has(step: Step): boolean }[] = [
    { title: 'Rip whole boards', has: step => step.do === 'rip' && step.what !== 'pieces' && !isOfSections(step.boards) },
    { title: 'Crosscut, square, the stop from long to short', has: step => step.do === 'crosscut' && step.of === 'boards' },
    { title: 'Rip the sections', has: step => step.do === 'rip' && step.what !== 'pieces' && isOfSections(step.boards) },
    { title: 'Crosscut their strips, square, the stop from long to short', has: step => step.do === 'crosscut' && step.of === 'strips' },
    { title: 'Test pieces and gauge blocks, out of what is left', has: step => step.do === 'blocks' },
    { title: 'Rip after crosscutting', has: step => step.do === 'rip' && step.what === 'pieces' },
    { title: 'Edges, before the miters', has: step => step.do === 'rabbet' || step.do === 'ease' },
    { title: 'Miters, left and right at one setting of the saw', has: step => step.do === 'miter' },
    { title: 'Copes', has: step => step.do === 'cope' },
    { title: 'Panels to their shapes', has: step => step.do === 'shape' },
    { title: 'Kerfs across the back', has: step => step.do === 'kerfs' },
    { title: 'Slots and pocket holes', has: step => step.do === 'slots' || step.do === 'halve' || step.do === 'pocket holes' },
];

/** How a miter batch is laid: said once, before the first. */
const HOW_TO_MITER: readonly string[] = [
    'Everything lies back up, and the stop stands left of the blade. Tilt the saw, or turn it with the piece on edge, so that the long point comes out on the back.',
    'A right lies with its groove edge against the fence, a left with its groove edge towards you; with no groove, any edge. Where your saw tilts the other way, put the stop on the right: left and right change places.',
    'Mitered at both ends: first one end, to the corner of the blank; then turn it end for end and put its long point to the stop.',
];

const FROM_THE_BOARD: readonly string[] = [
    'Straight from the board: first one end, where the last cut has left the board; then the saw leant the other way, the board moved on until that end\'s long point is at the stop, and the second end cut. The end that is left is slanted: what is next begins where both of its corners are fresh.',
];

/** How the miters of these steps are laid. */
export function howToMiter(steps: readonly Step[]): readonly string[] {
    return [...HOW_TO_MITER, ...steps.some(step => step.do === 'miter' && cutOff(step).length > 0) ? FROM_THE_BOARD : []];
}

export function namesIn(order: SawOrder): (piece: Piece) => string {
    const rooms = new Set(order.boards.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece.room));
    return rooms.size > 1 ? piece => piece.id : nameInRoom;
}

export function stepWords(step: Step, order: SawOrder, nameOf: (piece: Piece) => string = namesIn(order)): StepWords {
    const show = order.job.show.value;
    const size = (ticks: Ticks): string => setting(ticks, show);
    const list = (pieces: readonly Piece[]): string => marksText(pieces, nameOf);
    switch (step.do) {
        case 'rip': return {
            set: `fence ${step.fence === undefined ? '' : `"${step.fence}" `}at ${size(step.width)}${step.what === 'on edge' ? ', strips on edge' : ''}`,
            lines: step.what === 'pieces' ? [`${step.pieces.length}: ${list(step.pieces)}`] : [boardsText(step.boards, step.what !== 'on edge')],
        };
        case 'crosscut': return {
            set: `${step.by === 'tape' ? 'measure' : 'stop at'} ${size(step.stop)}, ${countedCuts(step)}${step.over > 0 ? ` (blanks ${printLength(step.over, show)} over)` : ''}`,
            lines: takesText(step, list),
        };
        case 'blocks': return { set: 'from offcuts', lines: step.blocks.map(block => blockText(block, show)) };
        case 'rabbet': return {
            set: `rabbet ${size(step.width)} x ${size(step.height)}, ${step.edge} ${step.face} edge: ${counted(step.pieces.length, 'piece')}, ${printRun(step.run, show)} in ${counted(step.passes, 'pass', 'passes')}`,
            lines: [
                `gauge the first and every ${ordinal(step.gauging.every)}; off by ${printLength(step.gauging.warn, show)}: reset; by ${printLength(step.gauging.reject, show)}: recut, or keep it where both its ends die into the band`,
                list(step.pieces), ...wholeText(step), ...uncutText(step),
            ],
        };
        case 'ease': return {
            set: `ease both back edges ${size(step.by)}: ${counted(step.pieces.length, 'piece')}, ${printRun(step.run, show)} in ${counted(step.passes, 'pass', 'passes')}`,
            lines: [list(step.pieces), ...wholeText(step), ...uncutText(step)],
        };
        case 'miter': return {
            set: `saw at ${settingText(step)}${step.flat ? ', the crown flat on its back' : ''}, ${counted(step.cuts.reduce((sum, c) => sum + c.pieces.length * (c.takes ? 2 : 1), 0), 'cut')}; the test pair first`,
            lines: step.cuts.map(cut => `${miterText(cut, show)}: ${cut.takes ? takesText({ takes: cut.takes, sections: [] }, list).join('; ') : list(cut.pieces)}`),
        };
        case 'cope': return {
            set: `cope ${counted(step.ends, 'end')}, along the line that the miter has cut on the face; the back cut away behind it`, lines: [list(step.pieces)],
        };
        case 'slots': return { set: `${step.size} biscuits: ${counted(step.count, 'slot')}, fence ${size(step.fence)} off the face`,
            lines: [
                list(step.pieces),
                ...step.opened.map(({ long, deep, leaves, pieces }) => `then opened to the back, ${size(long)} long and ${size(deep)} deep, which leaves ${size(leaves)} at the face: ${list(pieces)}`),
                ...step.wider.map(({ by, pieces }) => `${size(by)} wider towards the back, since it comes to its biscuits at an angle: ${list(pieces)}`),
            ],
        };
        case 'kerfs': return {
            set: `saw ${size(step.depth)} deep: ${counted(step.count, 'kerf')} across the back of each of ${counted(step.pieces.length, 'piece')}, ${size(step.apart)} from center to center; the trial first`,
            lines: [`from its middle out to both sides${step.count % 2 === 1 ? '' : `, the first two ${size(step.apart)} apart across it`}: ${list(step.pieces)}`],
        };
        case 'halve': return {
            set: `in two, square, stop at ${size(step.stop)}: first the one half, then the other, of ${counted(step.pieces.length, 'piece')}${step.relieved > 0 ? `; their ends there relieved at the back by ${size(step.relieved)} together` : ''}`,
            lines: [list(step.pieces)],
        };
        case 'shape': return {
            set: `to lines from corner to corner: ${counted(step.pieces.length, 'panel')}`,
            lines: step.shapes.map(({ corners, from, pieces }) => `${list(pieces)}: ${workWords({ kind: 'shape', corners, from }, size)}`),
        };
        case 'pocket holes': return { set: `${step.each} pocket holes in each of ${counted(step.pieces.length, 'piece')}`, lines: [list(step.pieces)] };
    }
}

/** Feet and inches, and inches alone beside them: stops are set by either. */
function setting(ticks: Ticks, show: Show): string {
    const length = printLength(ticks, show);
    return show === 'feet-inches' && ticks >= TICKS_PER_FOOT ? `${length} (${printInches(ticks)})` : length;
}

function miterText({ stop, end, hand, long, flat, pieces, takes }: MiterCut, show: Show): string {
    const way = `${flat ? 'flat, the saw turned: ' : ''}${long === 'back' ? '' : flat ? 'longer at the edge towards you: ' : 'longer at the face, underneath: '}`;
    if (takes && stop !== undefined) return `${way}stop at ${setting(stop, show)} to the long point, ${pieces.length} straight from ${takes.length === 1 ? 'the board' : 'the boards'}, both ends`;
    return `${way}${cutText({ stop, end, hand, pieces }, show)}`;
}

function cutText({ stop, end, hand, pieces }: Pick<MiterCut, 'stop' | 'end' | 'hand' | 'pieces'>, show: Show): string {
    const count = hand === 'left' || hand === 'right' ? counted(pieces.length, hand) : `${pieces.length} ${hand === 'either' ? 'with one miter, neither lefts nor rights' : 'mitered at both ends'}`;
    if (stop === undefined) return `no stop, to the corner of the blank: first ends, the ${end} ones, of ${count}`;
    return `stop at ${setting(stop, show)} to the long point: ${hand === 'both ends' ? `second ends of ${count}` : count}`;
}

function blockText({ kind, count, length, stock, for: use, out }: Block, show: Show): string {
    const what = { 'cleat gauge': 'gauge blocks', 'miter test': count === 1 ? 'test piece' : 'test pieces', 'rabbet test': 'test length', 'slot test': 'test pieces', 'bend trial': 'trial', 'joint block': count === 1 ? 'block' : 'blocks' }[kind];
    const names = [...new Set(out.map(board => board.name))];
    const found = names.length === 0 ? '' : `out of the ${names.length === 1 ? 'offcut' : 'offcuts'} of ${names.join(' and ')}`;
    const lacking = out.length === count ? '' : `no ${found === '' ? '' : 'other '}offcut of ${stock.name} is long enough: use scrap of the same thickness`;
    const from = [found, lacking].filter(Boolean).join('; ');
    return `${count} ${what} of ${stock.name}, ${printLength(length, show)}${count === 1 ? '' : ' each'}, for ${use}; ${from}`;
}

function boardsText(boards: readonly BoardRef[], counts: boolean): string {
    return boards.flatMap(({ board, strips }) => {
        const sections = [...new Set(board.strips.filter(({ number }) => strips.includes(number)).map(({ section }) => section))];
        return sections.map(section => {
            const count = counted(board.strips.filter(strip => strips.includes(strip.number) && strip.section === section).length, 'strip');
            return `${board.name}${section === undefined ? '' : ` section ${section}`}${counts ? `: ${count}` : ` (${count})`}`;
        });
    }).join(', ');
}

function isOfSections(boards: readonly BoardRef[]): boolean {
    return boards.some(({ board, strips }) => board.strips.some(({ number, section }) => section !== undefined && strips.includes(number)));
}

type Crosscut = Extract<Step, { do: 'crosscut' }>;

function countedCuts({ takes, sections }: Crosscut): string {
    const pieces = takes.reduce((sum, t) => sum + t.pieces.length, 0);
    return [...pieces > 0 || sections.length === 0 ? [counted(pieces, 'piece')] : [], ...sections.length > 0 ? [counted(sections.length, 'section')] : []].join(', ');
}

/** By board, what is cut off at the stop: pieces, and sections with the pieces that are as long. */
function takesText(cuts: Pick<Crosscut, 'takes' | 'sections'>, list: (pieces: readonly Piece[]) => string): string[] {
    return takesByBoard(cuts).map(({ board, parts }) => `${board.name}: ${parts.map(({ section, pieces }) => sectionText(section, list(pieces), pieces.length)).join('; ')}`);
}

function takesByBoard({ takes, sections }: Pick<Crosscut, 'takes' | 'sections'>) {
    const boards = [...new Set([...takes.map(t => t.board), ...sections.map(s => s.board)])];
    return boards.map(board => {
        const own = takes.filter(t => t.board === board);
        const numbers = [...new Set([...own.map(t => t.strip.section), ...sections.filter(s => s.board === board).map(s => s.section.number)])];
        const piecesOf = (section: number | undefined): Piece[] => own.filter(t => t.strip.section === section).flatMap(t => t.pieces).map(p => p.piece);
        return { board, parts: numbers.map(section => ({ section, pieces: piecesOf(section) })) };
    });
}

function sectionText(section: number | undefined, pieces: string, count: number): string {
    if (section === undefined) return pieces;
    return count === 0 ? `section ${section}, to be ripped` : `section ${section}: ${pieces}`;
}

type Machined = Extract<Step, { whole: unknown }>;

/** Those of which pieces are cut straight to their miters are run before these. */
function uncutText({ uncut }: Pick<Machined, 'uncut'>): string[] {
    return uncut.length === 0 ? [] : [`what is left of these is run in one, before its pieces are cut from it: ${uncut.map(b => b.name).join(', ')}`];
}

function wholeText({ whole }: Pick<Machined, 'whole'>): string[] {
    const names = whole.map(b => b.name);
    return names.length === 0 ? [] : [`hold nothing else, so they may be run whole before they are crosscut: ${names.join(', ')}`];
}

/** `14 sides, 48 trim`. */
export function countedParts(pieces: readonly Piece[]): string {
    return PARTS.flatMap(part => {
        const count = pieces.filter(p => p.part === part).length;
        return count === 0 ? [] : [`${count} ${count === 1 ? part : PLURAL[part]}`];
    }).join(', ');
}

function ordinal(n: number): string {
    return `${n}${n === 1 ? 'st' : n === 2 ? 'nd' : n === 3 ? 'rd' : 'th'}`;
}
