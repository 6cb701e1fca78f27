import { roundTo } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { LaidPiece } from '../../sawing/model.ts';
import { placeInRoom } from '../../takeoff/ids.ts';
import { circle, group, line, polygon, rectangle, text, type Group, type Item, type Point } from '../display-list.ts';
import { figure } from '../figures.ts';
import { fitText } from '../text/fit-text.ts';
import { textWidth } from '../text/measure-text.ts';
import { xAt, type BoardView } from './view.ts';
import { degreesOf, edgesText, leanOf, liesFlat } from '../../takeoff/ends.ts';

const RING = 5.6;
const PAD = 3;

/**
 * A piece as it lies, seen from above: its blank, or of what is cut flat its own shape on it; the points underneath; the groove at the fence; its words
 * beside it, so that it has one name only.
 */
export function pieceOnBoard(laid: LaidPiece, id: string, view: BoardView, top: number, foot: number): readonly Group[] {
    const { piece } = laid;
    const left = xAt(view, laid.from), right = xAt(view, laid.to);
    const { back: [a, b], face: [d, c] } = edgesAsItLies(laid), x = (ticks: Ticks): number => xAt(view, ticks);
    const shaped = piece.work.find(({ kind }) => kind === 'shape');
    const corner = ([along, across]: readonly [Ticks, Ticks]): Point => [x(laid.from + along), top + (foot - top) * across / piece.width];
    const shape = shaped?.kind === 'shape' ? [polygon(shaped.corners.map(corner), 'thin', 'paper')] : liesFlat(piece) && (a !== d || b !== c) ? [polygon([[x(a), top], [x(b), top], [x(c), foot], [x(d), foot]], 'thin', 'paper')] : [];
    return [group(id, { piece: piece.id, part: piece.part, title: titleOf(laid, view) }, [
        rectangle(left, top, right, foot, 'thin', shape.length > 0 ? 'wash' : 'paper'), ...shape,
        ...groove(laid, left, right, top),
        ...shape.length > 0 ? [] : pointsUnderneath(laid, view).map(at => line([at, top], [at, foot], 'hidden')),
    ]), group(`words.${id}`, {}, words(laid, view, view.stepOf(laid), [left, right], [top, foot]))];
}

/** The same from its near edge: back above, face below, so that a miter shows which way it leans. */
export function pieceOnEdge(laid: LaidPiece, view: BoardView, top: number, foot: number): Item {
    const x = (ticks: Ticks): number => xAt(view, ticks);
    if (liesFlat(laid.piece)) return rectangle(x(laid.from), top, x(laid.to), foot, 'thin', 'wash');
    const { back: [a, b], face: [d, c] } = edgesAsItLies(laid);
    return polygon([[x(a), top], [x(b), top], [x(c), foot], [x(d), foot]], 'thin', 'wash');
}

/** Where its two long edges begin and end on the tape, from its left end: the outermost points are the ends of its blank. */
function edgesAsItLies({ ends: [left, right], piece, from, to }: LaidPiece): Record<'back' | 'face', readonly [Ticks, Ticks]> {
    const [first, last] = [leanOf(left, piece), leanOf(right, piece)];
    return { back: [from + Math.max(0, -first), to - Math.max(0, -last)], face: [from + Math.max(0, first), to - Math.max(0, last)] };
}

/** The points that do not show from above, where they are not the ends of the blank. */
function pointsUnderneath(laid: LaidPiece, view: BoardView): number[] {
    const { back, face } = edgesAsItLies(laid);
    return laid.ends.flatMap((end, i) => degreesOf(end) === 0 ? [] : [xAt(view, degreesOf(end) > 0 ? face[i]! : back[i]!)]);
}

function groove({ piece }: LaidPiece, left: number, right: number, top: number): Item[] {
    const rabbet = piece.work.find(work => work.kind === 'rabbet');
    if (!rabbet) return [];
    return [line([left, top + 2.4], [right, top + 2.4], rabbet.face === 'back' ? 'thin' : 'hidden')];
}

function words(
    { piece, ends }: LaidPiece, view: BoardView, step: number | undefined, [left, right]: readonly [number, number],
    [top, foot]: readonly [number, number],
): Item[] {
    const width = right - left;
    const middle = (top + foot) / 2;
    const inset = Math.max(...ends.map(end => Math.abs(leanOf(end, piece)))) * view.pointsPerTick;
    if (width < 8) return [];
    const narrow = width < 52;
    if (width < 21 && step !== undefined) {
        const size = Math.max(view.least, step > 99 ? 5.4 : 7.2);
        return view.least > 0 && textWidth(String(step), size, 600) > width - 2 ? [] : [text([(left + right) / 2, middle + 2.6], String(step), { size, weight: 600, anchor: 'middle' })];
    }
    const { least } = view, atLeast = (size: number): number => Math.max(size, least);
    if (narrow) {
        const name = fitText(placeInRoom(piece), width - 2, atLeast(7), atLeast(4.6)), isNamed = least === 0 || !name.text.endsWith('…');
        const tall = foot - top >= 20 && step !== undefined;
        return [
            ...tall || !isNamed && step !== undefined ? [text([(left + right) / 2, isNamed ? middle - 1.5 : middle + 2.6], String(step), { size: 7.6, weight: 600, anchor: 'middle' })] : [],
            ...isNamed ? [text([(left + right) / 2, tall ? middle + 7 : middle + 2.3], name.text, { size: name.size, anchor: 'middle' })] : [],
        ];
    }
    const start = left + inset + PAD + (step === undefined ? 0 : 2 * RING + PAD);
    const room = right - inset - PAD - start;
    const ring = step === undefined ? [] : [
        circle([left + inset + PAD + RING, middle], RING, 'thin'),
        text([left + inset + PAD + RING, middle + 2.5], String(step), { size: atLeast(step > 99 ? 5.2 : 6.8), weight: 600, anchor: 'middle' }),
    ];
    const size = figure(piece.cutOverall, view.show);
    const details = [size, edgesText(piece, ticks => figure(ticks, view.show)), piece.hand ?? ''].filter(Boolean).join(' · ');
    const twoLines = foot - top >= 20;
    if (twoLines) {
        const name = fitText(view.nameOf(piece), room, 8.4, atLeast(5.4), 600), below = fitText(details, room, 7.4, atLeast(5));
        return [...ring, text([start, middle - 1.4], name.text, { size: name.size, weight: 600 }), text([start, middle + 8], below.text, { size: below.size, tone: 'soft' })];
    }
    const name = fitText(view.nameOf(piece), room, 7.6, atLeast(5), 600);
    const after = start + textWidth(name.text, name.size, 600) + 6;
    const rest = right - inset - PAD - after;
    return [
        ...ring, text([start, middle + 2.6], name.text, { size: name.size, weight: 600 }),
        ...textWidth(size, atLeast(7)) <= rest ? [text([after, middle + 2.6], textWidth(details, atLeast(7)) <= rest ? details : size, { size: atLeast(7), tone: 'soft' })] : [],
    ];
}

function titleOf({ piece, from, to }: LaidPiece, view: BoardView): string {
    const edges = edgesText(piece, ticks => figure(ticks, view.show));
    const marks = `marks at ${figure(roundTo(from, view.step), view.show)} and ${figure(roundTo(to, view.step), view.show)}`;
    return `${view.nameOf(piece)}: ${figure(piece.cutOverall, view.show)}${edges === '' ? '' : `, ${edges}`}${piece.hand ? `, ${piece.hand}` : ''}; ${marks}`;
}
