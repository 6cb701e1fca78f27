import type { Ceiling } from '../../ceiling/model.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { Claims } from '../claims.ts';
import { sheet, type Sheet } from '../display-list.ts';
import { paneGround } from '../paper.ts';
import { lastPart } from '../source-reference.ts';
import { fixtureSymbols, placedFixtures } from './fixtures.ts';
import { descriptionOf } from './plan.ts';
import { pieces } from './pieces.ts';
import { extentOf } from './view.ts';
import { walls, wallThickness } from './walls.ts';

/** Round a plan that stands beside another, in points. */
const PAD = 4;

/** `withFixtures`: with the marks of what the ceiling holds. */
interface SmallPlan { readonly width: number; readonly height: number; readonly withFixtures?: boolean }

/** The plan as a small picture, to be told from another at a glance: walls, coffers and beams, without a word or a figure, which nobody could read. */
export function drawSmallPlan(ceiling: Ceiling, takeOff: TakeOff, { width, height, withFixtures = false }: SmallPlan): Sheet {
    const { room } = ceiling, around = PAD + wallThickness(Infinity);
    const k = Math.min((width - 2 * around) / Math.max(1, ceiling.width), (height - 2 * around) / Math.max(1, ceiling.length));
    const view = { pointsPerTick: k, left: (width - ceiling.width * k) / 2, top: (height - ceiling.length * k) / 2 };
    const seen = takeOff.pieces.filter(({ part }) => part === 'bottom' || part === 'side' || part === 'band' || part === 'blocking');
    const ground = extentOf(view, { west: 0, east: ceiling.width, north: 0, south: ceiling.length });
    const fixtures = withFixtures ? fixtureSymbols(placedFixtures(room.fixtures, ceiling), view, ground, new Claims(), lastPart) : [];
    return sheet({ id: 'small-plan', title: room.title ?? room.name, description: descriptionOf(ceiling, takeOff) }, paneGround(width, height), [
        walls(ceiling, view, lastPart), ...pieces(seen, view, { show: room.job.show.value, fileName: lastPart, hidden: false }), ...fixtures,
    ], { pointsPerTick: k, origin: [view.left, view.top + ceiling.length * k] });
}
