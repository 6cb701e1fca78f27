import type { Room } from '../../job/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { chanceFrom } from '../chance.ts';
import { group, line, polyline, type Group, type Item, type Point } from '../display-list.ts';
import { hatch } from '../fill/hatch.ts';
import { SHEET_SPACING } from './wood.ts';
import { down, type SectionView } from './view.ts';

/** What is over the beam; `panel`: the thickness of the one that it hangs under, 0 without one. */
interface Above { readonly board: { readonly kind: string; readonly thickness: Ticks } | null; readonly panel: Ticks }

/** The covering as the job tells of it, and the panel under it. */
export function aboveOf(covering: Room['covering'], panel: Ticks): Above {
    const thickness = covering?.thickness?.value ?? 0;
    return { board: thickness > 0 ? { kind: covering!.kind.value, thickness } : null, panel };
}

/** The ceiling as found: its surface, its board where the job gives one, the panel under it, and the break line above. */
export function ceilingAbove(view: SectionView, { board, panel }: Above, foot: number): readonly Group[] {
    const under = down(view, -panel);
    const surface = line([view.left, under], [view.right, under], 'cut');
    const boardTop = board === null ? under : down(view, -panel - board.thickness);
    const covering = board === null
        ? group('ceiling', { title: 'Ceiling, as found' }, [surface])
        : group('ceiling', { title: 'Ceiling board, as found' }, [...texture(board.kind, view, [boardTop, under]), line([view.left, boardTop], [view.right, boardTop], 'edge'), surface]);
    return [covering, ...panel > 0 ? [panelBoard(view, under)] : [], group('break-lines', {}, [...breakLines(view, foot)])];
}

/** Close slanted lines, as of all sheet material. */
function panelBoard(view: SectionView, top: number): Group {
    const corners: readonly Point[] = [[view.left, top], [view.right, top], [view.right, view.ceiling], [view.left, view.ceiling]];
    return group('panel', { title: 'Panel over the coffers' }, [...hatch(corners, SHEET_SPACING, true), line([view.left, view.ceiling], [view.right, view.ceiling], 'cut')]);
}

/** Specks for gypsum and plaster, plies for what is glued or laid up of wood. */
function texture(kind: string, view: SectionView, [boardTop, under]: readonly [number, number]): readonly Item[] {
    const chance = chanceFrom(kind);
    const height = under - boardTop;
    if (kind === 'plywood' || kind === 'boards') {
        const plies = Math.max(2, Math.round(height / 9));
        return Array.from({ length: plies - 1 }, (_, i) => line([view.left, boardTop + height * (i + 1) / plies], [view.right, boardTop + height * (i + 1) / plies], 'grain'));
    }
    const specks = Math.round((view.right - view.left) * height / 85);
    return Array.from({ length: specks }, () => {
        const x = view.left + 3 + chance() * (view.right - view.left - 6);
        const y = boardTop + 2.5 + chance() * (height - 5);
        const turn = chance() * Math.PI;
        const length = 0.5 + 0.6 * chance();
        return line([x, y], [x + length * Math.cos(turn), y + length * Math.sin(turn)], 'thin');
    });
}

/** Wall to wall the drawing is broken off left and right, and above: the zigzag says that things go on. */
function breakLines(view: SectionView, foot: number): readonly Item[] {
    const middle = (view.ceiling + foot) / 2;
    const upright = (x: number): readonly Point[] => [[x, view.top], [x, middle - 12], [x - 5, middle - 5], [x + 5, middle + 5], [x, middle + 12], [x, foot]];
    const zigzags = 9;
    const along = Array.from({ length: zigzags }, (_, i): readonly Point[] => {
        const x = view.left + (view.right - view.left) * (i + 0.5) / zigzags;
        return [[x - 9, view.top], [x - 3, view.top - 6], [x + 3, view.top + 6], [x + 9, view.top]];
    }).flat();
    return [polyline([[view.left, view.top], ...along, [view.right, view.top]], 'thin'), polyline(upright(view.left), 'thin'), polyline(upright(view.right), 'thin')];
}
