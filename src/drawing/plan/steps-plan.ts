import type { Ceiling } from '../../ceiling/model.ts';
import { grouped } from '../../plain/groups.ts';
import type { Piece, TakeOff } from '../../takeoff/model.ts';
import { group, polygon, sheet, text, type Group, type Item, type Point, type Sheet } from '../display-list.ts';
import { paneGround } from '../paper.ts';
import { lastPart } from '../source-reference.ts';
import { runWidth } from '../text/measure-text.ts';
import { endsOf, outOf } from './line-ends.ts';
import { descriptionOf } from './plan.ts';
import { pieceTitle } from './pieces.ts';
import { extentOf, toX, toY, type PlanView } from './view.ts';
import { walls, wallThickness } from './walls.ts';

/** Points that the drawing has at most; it is as large as fits in them. `letters`: the size of its names, in points. */
interface StepsPlanSize { readonly width: number; readonly height: number; readonly letters: number }

/** The group of a step, by its number. */
function stepGroup(number: number): string {
    return `step.${number}`;
}

/** The number of the step whose pieces a group holds; undefined where it is another one. */
export function stepNumber({ id }: Pick<Group, 'id'>): number | undefined {
    const number = /^step\.(\d+)$/.exec(id)?.[1];
    return number === undefined ? undefined : Number(number);
}

/**
 * The plan with a group for the pieces of each step, in the order in which they are put up: what comes later hangs lower, or beside, and so covers what
 * came before. How a step looks that is done, is done now, or is still to come is for whoever shows it. With the names of lines and the numbers of
 * coffers, by which steps are called. `steps`: pieces by their names in the cut list; those of no step are left out.
 */
export function drawStepsPlan(
    ceiling: Ceiling, takeOff: TakeOff, steps: readonly { readonly number: number; readonly pieces: readonly string[] }[], size: StepsPlanSize,
): Sheet {
    const { room } = ceiling, { letters } = size, around = wallThickness(Infinity) + letters * 1.9;
    const k = Math.min((size.width - 2 * around) / Math.max(1, ceiling.width), (size.height - 2 * around) / Math.max(1, ceiling.length));
    const view: PlanView = { pointsPerTick: k, left: around, top: around };
    const byId = new Map(takeOff.pieces.map(piece => [piece.id, piece]));
    const drawn = (piece: Piece): Group => group(piece.id, { title: pieceTitle(piece, room.job.show.value), piece: piece.id, part: piece.part }, [
        polygon((piece.outline ?? piece.corners).map(({ x, y }): Point => [toX(view, x), toY(view, y)]), 'thin', 'wash'),
    ]);
    const words = { id: 'steps-plan', title: room.title ?? room.name, description: descriptionOf(ceiling, takeOff) };
    return sheet(words, paneGround(ceiling.width * k + 2 * around, ceiling.length * k + 2 * around), [
        walls(ceiling, view, lastPart),
        ...steps.map(({ number, pieces }) => group(stepGroup(number), {}, pieces.flatMap(id => byId.get(id) ?? []).map(drawn))),
        group('names', {}, [...linesNamed(ceiling, view, letters), ...coffersNumbered(ceiling, view, letters)]),
    ], { pointsPerTick: k, origin: [view.left, view.top + ceiling.length * k] });
}

/** Beyond the wall at which each begins; those of lines that stand close together are moved apart along it, as far as they can be read. */
function linesNamed(ceiling: Ceiling, view: PlanView, size: number): Item[] {
    const named = ceiling.lines.flatMap(line => {
        const end = endsOf(ceiling, line).find(({ wall }) => wall);
        if (!end?.wall) return [];
        const out = outOf(end.wall), off = wallThickness(view.pointsPerTick) + size * 0.85, along = { x: 0 - out.y, y: out.x };
        const words = text([0, 0], line.name, { size, anchor: 'middle', weight: 600 }), x = toX(view, end.at.x) + out.x * off, y = toY(view, end.at.y) + out.y * off;
        // to be read beside each other letters want their width, below each other their height
        const room = Math.abs(along.x) * (runWidth(words) + size * 0.8) + Math.abs(along.y) * size * 0.95;
        return [{ wall: end.wall.name, words, x, y, along, room, at: x * along.x + y * along.y }];
    });
    return [...grouped(named, ({ wall }) => wall).values()].flatMap(own => {
        const sorted = [...own].sort((one, other) => one.at - other.at), apart = movedApart(sorted);
        return sorted.map(({ words, x, y, along, at }, i): Item => {
            const by = apart[i]! - at;
            return { ...words, at: [x + along.x * by, y + along.y * by + size * 0.35] };
        });
    });
}

/** Where what stands in a row goes so that each has its room, all moved as little as that takes: those that want the same place share its middle. */
function movedApart(row: readonly { readonly at: number; readonly room: number }[]): number[] {
    const packed: number[] = [];
    row.forEach(({ room }, i) => packed.push(i === 0 ? 0 : packed[i - 1]! + (room + row[i - 1]!.room) / 2));
    const runs: { sum: number; count: number }[] = [];
    row.forEach(({ at }, i) => {
        let run = { sum: at - packed[i]!, count: 1 };
        for (let before = runs.at(-1); before && before.sum / before.count > run.sum / run.count; before = runs.at(-1)) {
            runs.pop();
            run = { sum: run.sum + before.sum, count: run.count + before.count };
        }
        runs.push(run);
    });
    return runs.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count)).map((start, i) => start + packed[i]!);
}

/** In its middle, where it has room for it. */
function coffersNumbered(ceiling: Ceiling, view: PlanView, size: number): Item[] {
    return ceiling.coffers.flatMap(coffer => {
        const { left, right, top, foot } = extentOf(view, coffer);
        const words = text([(left + right) / 2, (top + foot) / 2 + size * 0.35], String(coffer.number), { size, anchor: 'middle', tone: 'soft' });
        return runWidth(words) < (right - left) * 0.8 && size < foot - top ? [words] : [];
    });
}
