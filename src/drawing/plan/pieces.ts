import { partTitle } from '../../job/part.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { toldLengths } from '../../takeoff/ends.ts';
import type { Part, Piece } from '../../takeoff/model.ts';
import { group, line, polygon, type Group, type Item, type Point } from '../display-list.ts';
import { sourceReference, type FileName } from '../source-reference.ts';
import { toX, toY, type PlanView } from './view.ts';

/** From the ceiling down to the eye, as the pieces lie: what comes later covers what came before. */
const ORDER: readonly Part[] = ['blocking', 'bottom', 'spacer', 'cleat', 'timber', 'trim', 'side', 'band', 'molding'];
/** The same where bottoms lie under the sides. */
const ORDER_UNDER: readonly Part[] = ['blocking', 'timber', 'trim', 'side', 'bottom', 'spacer', 'cleat', 'band', 'molding'];

interface PieceLook { readonly show: Show; readonly fileName: FileName; /** Spacers and cleats shown by hidden lines. */ readonly hidden: boolean }

/**
 * Every piece of the ceiling as it is seen from below, or as a hidden line where another covers it; a group for each, even
 * where the scale leaves no room for hidden lines and there is nothing to see of it.
 */
export function pieces(all: readonly Piece[], view: PlanView, { show, fileName, hidden }: PieceLook): readonly Group[] {
    const over: readonly Part[] = all.some(({ part }) => part === 'panel') ? ['panel'] : [];
    return [...over, ...liesUnder(all) ? ORDER_UNDER : ORDER].map(part => group(`pieces.${part}`, {}, all.filter(piece => piece.part === part).map(piece =>
        group(
            piece.id, { title: pieceTitle(piece, show), piece: piece.id, part, source: sourceReference(piece.source, fileName) },
            pieceItems(piece, view, hidden),
        ))));
}

/** Beams that meet flush have their bottoms all in one plane, so one tells of all. */
function liesUnder(all: readonly Piece[]): boolean {
    const side = all.find(({ part }) => part === 'side'), bottom = side && all.find(({ part, line }) => part === 'bottom' && line === side.line);
    return bottom !== undefined && bottom.box.top >= side!.box.foot;
}

/** What a piece is called where it is shown, and read out: part, place, length. */
export function pieceTitle(piece: Piece, show: Show): string {
    const { back, face } = toldLengths(piece), short = face === back ? '' : `, ${printLength(face, show)} at the short points`;
    return `${partTitle(piece.part)}, ${piece.where}: ${printLength(back, show)}${short}`;
}

function pieceItems(piece: Piece, view: PlanView, hidden: boolean): readonly Item[] {
    const all = (piece.outline ?? piece.corners).map(({ x, y }): Point => [toX(view, x), toY(view, y)]);
    const [, , endOfFace, startOfFace] = all as [Point, Point, Point, Point];
    switch (piece.part) {
        // beams cover where they meet: what is seen is a seam in a coffer
        case 'panel': return [polygon(all, 'fine', 'paper')];
        // the bottom under it has the same edges: only its ground is drawn
        case 'blocking': return [polygon(all, null, 'wash')];
        case 'bottom': return [polygon(all, 'thin', 'wash')];
        case 'timber': return [polygon(all, 'edge', 'wash')];
        case 'band': return [polygon(all, 'thin', 'paper')];
        case 'spacer': return hidden ? [polygon(all, 'hidden')] : [];
        case 'cleat': return hidden ? [line(startOfFace, endOfFace, 'hidden')] : [];
        // the face of a side is the coffer's edge; its back lies on the bottom's edge, and so a cleat is drawn by its inner edge alone
        case 'side': return [polygon(all, 'fine', 'wash'), line(startOfFace, endOfFace, 'edge')];
        case 'trim': case 'molding': return [polygon(all, 'fine', 'paper')];
    }
}
