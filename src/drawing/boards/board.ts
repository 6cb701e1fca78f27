import type { LaidBoard, LaidSection, LaidStrip } from '../../sawing/model.ts';
import { isTurned } from '../../takeoff/ends.ts';
import { group, line, rectangle, text, type Group, type Item, type Point } from '../display-list.ts';
import { figure, sizeFigure } from '../figures.ts';
import { roundDown } from '../../quantity/round.ts';
import { hatch } from '../fill/hatch.ts';
import { patched } from '../patch.ts';
import { fitText } from '../text/fit-text.ts';
import { pieceOnBoard, pieceOnEdge } from './piece.ts';
import { tape } from './tape.ts';
import { heightOf, STRIP_HEIGHT, xAt, type BoardView } from './view.ts';

const FENCE = 3.4;
const EDGE = 5.4;
const BETWEEN_STRIPS = 1.6;

/** A board, or some strips of it, as it lies at the saw: the fence behind it, the tape before it, the hooked end at the left. */
export function boardAtTheSaw(
    board: LaidBoard, view: BoardView, top: number, shown: readonly LaidStrip[] = board.strips,
): { readonly group: Group; readonly foot: number } {
    const end = xAt(view, board.along);
    const items: Item[] = [rectangle(view.left - 5, top, end + 5, top + FENCE, 'fine', 'tint')];
    let y = top + FENCE + 1.2;
    const groups = alike(shown);
    for (const [i, strips] of groups.entries()) {
        for (const strip of strips) {
            const foot = y + (strip.rippedTo === undefined ? heightOf(board.stock.width?.value.ticks, view) : STRIP_HEIGHT);
            items.push(stripItems(board, strip, view, y, foot));
            y = foot + BETWEEN_STRIPS;
        }
        const last = strips.at(-1)!;
        if (last.pieces.some(p => p.ends.some(isTurned))) {
            items.push(...last.pieces.map(p => pieceOnEdge(p, view, y, y + EDGE)));
            y += EDGE + BETWEEN_STRIPS;
        }
        const off = sectionsOf(board, last);
        if (last.pieces.length + off.length > 0) {
            const marks = [last.trim, ...[...last.pieces, ...off].map(p => p.to)].filter(mark => mark > 0 && mark < last.along);
            const under = tape(last.along, marks, view, y + 1.4, `tape.${board.name}.${last.number}`);
            items.push(under.group);
            y = under.foot + (i < groups.length - 1 ? 7 : 0);
        }
    }
    return { group: group(`board.${board.name}.${shown[0]?.number ?? 0}`, { title: titleOf(board, view) }, items), foot: y };
}

/** Neighboring strips with the same marks lie together on the saw, over one tape. */
function alike(strips: readonly LaidStrip[]): LaidStrip[][] {
    const groups: LaidStrip[][] = [];
    for (const strip of strips) {
        const last = groups.at(-1)?.[0];
        if (last && last.rippedTo === strip.rippedTo && last.section === strip.section && marks(last) === marks(strip)) groups.at(-1)!.push(strip);
        else groups.push([strip]);
    }
    return groups;
}
function marks({ pieces }: LaidStrip): string {
    return pieces.map(p => p.to).join(' ');
}

function stripItems(board: LaidBoard, strip: LaidStrip, view: BoardView, top: number, foot: number): Group {
    const end = xAt(view, strip.along), off = sectionsOf(board, strip);
    const cutEnd = strip.pieces.length + off.length === 0 ? strip.trim : Math.min(strip.along, strip.along - strip.rest);
    const usable = strip.offcut > 0 ? [xAt(view, cutEnd), xAt(view, cutEnd + strip.offcut)] as const : undefined;
    return group(`strip.${board.name}.${strip.number}`, {}, [
        rectangle(view.left, top, end, foot, 'thin', 'wash'),
        ...waste(view.left, xAt(view, strip.trim), top, foot),
        ...strip.pieces.flatMap((p, i) => pieceOnBoard(p, `piece.${board.name}.${strip.number}.${i + 1}`, view, top, foot)),
        ...off.flatMap(section => sectionItems(section, view, top, foot)),
        ...usable ? offcut(strip, usable, view, top, foot) : [],
        ...waste(usable ? usable[1] : xAt(view, cutEnd), end, top, foot),
    ]);
}

/** What is cut off the board's whole width here, to be ripped: drawn again below as its strips. */
function sectionsOf({ sections }: LaidBoard, { rippedTo }: LaidStrip): readonly LaidSection[] {
    return rippedTo === undefined ? sections : [];
}

function sectionItems({ number, from, to }: LaidSection, view: BoardView, top: number, foot: number): Item[] {
    const left = xAt(view, from), right = xAt(view, to);
    const fitted = fitText(`section ${number}, ripped`, right - left - 6, 7.4, Math.max(5.4, view.least));
    const words = right - left < 24 || fitted.text.endsWith('…') ? String(number) : fitted.text;
    return [
        rectangle(left, top, right, foot, 'thin', 'paper'), line([left, (top + foot) / 2 + 6], [right, (top + foot) / 2 + 6], 'hidden'),
        text([(left + right) / 2, (top + foot) / 2 + 1.6], words, { size: fitted.size, anchor: 'middle', tone: 'soft' }),
    ];
}

function offcut(strip: LaidStrip, [from, to]: readonly [number, number], view: BoardView, top: number, foot: number): Item[] {
    const left = figure(roundDown(strip.offcut, view.step), view.show);
    const words = strip.kept ? `keep ${left}` : left;
    const fitted = fitText(words, to - from - 6, 7.4, Math.max(5.4, view.least));
    const middle: Point = [(from + to) / 2, (top + foot) / 2 + 2.6];
    const named = to - from < 24 || fitted.text.endsWith('…') ? [] : [text(middle, fitted.text, { size: fitted.size, anchor: 'middle', tone: 'soft' })];
    return [
        rectangle(from, top, to, foot, 'thin', strip.kept ? 'paper' : 'wash'),
        ...strip.kept ? named : [...hatch(corners(from, top, to, foot), 5, true), ...named.flatMap(run => patched(run, 'wash'))],
    ];
}

function waste(left: number, right: number, top: number, foot: number): Item[] {
    return right - left < 0.4 ? [] : [rectangle(left, top, right, foot, 'fine', 'tint')];
}

function corners(left: number, top: number, right: number, foot: number): Point[] {
    return [[left, top], [right, top], [right, foot], [left, foot]];
}

function titleOf(board: LaidBoard, view: BoardView): string {
    const rips = board.strips.flatMap(s => s.rippedTo ?? []);
    const ripped = rips.length === 0 ? '' : `, ripped to ${rips.length === 1 ? '' : `${rips.length} strips of `}${[...new Set(rips)].map(w => sizeFigure(w, view.show)).join(', ')}`;
    const pieces = board.strips.flatMap(s => s.pieces).map(p => view.nameOf(p.piece));
    return `${board.name}, ${figure(board.length, view.show)}${ripped}: ${pieces.join(', ')}`;
}
