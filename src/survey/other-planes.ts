import { standingAtWalls } from '../ceiling/at-the-wall.ts';
import type { Ceiling } from '../ceiling/model.ts';
import type { Fixture } from '../job/model.ts';
import type { ShapedWall } from '../ceiling/shape.ts';
import { kept, MOST_ROOMS } from '../plain/kept.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { choosePlane, type Chosen } from './choose-plane.ts';
import { heightOf, type Plane } from './surface.ts';
import type { Surveyed } from './survey.ts';

/** How sides would hang by a plane that may rise so much, as a part of the way, along and across: what the eye is asked to bear, and what it saves. */
export interface OtherPlane { readonly slope: number; readonly chosen: Chosen }

/** Parts of the slope that is allowed, and more than it. */
const PARTS = [0, 1 / 4, 1 / 2, 1, 2];
/** Where nothing is said of a slope: 1/4" in 10'. */
const USUAL = 1 / 480;

/** The trade-off: level, and tilted by more and more; of a ceiling under which nothing is scribed level alone. None where nothing is known of it. */
export const otherPlanesOf: (surveyed: Surveyed) => readonly OtherPlane[] = kept(otherPlanes, MOST_ROOMS);

function otherPlanes({ hanging, sides }: Surveyed): readonly OtherPlane[] {
    const under = sides.map(side => side.under), slope = hanging.kind === 'following' ? hanging.slope : USUAL, level = choosePlane(under, { kind: 'level' });
    return (level?.scribed === 0 ? [0] : PARTS).flatMap(part => {
        const chosen = choosePlane(under, part === 0 ? { kind: 'level' } : { kind: 'following', slope: slope * part });
        return chosen ? [{ slope: slope * part, chosen }] : [];
    });
}

/** What is level at a wall, and how far beams that hang by the plane run out of level along it: what the eye compares. */
export interface AgainstLevel { readonly wall: ShapedWall; readonly fixture: Fixture | null; readonly over: Ticks; readonly by: Ticks }

/** Less nobody sees. */
const SEEN: Ticks = TICKS_PER_INCH / 64;

/** Cabinets and casings at the walls, and the walls themselves, as far as the plane is out of level along them. */
export function againstLevel(ceiling: Ceiling, plane: Plane): AgainstLevel[] {
    const alongs = standingAtWalls(ceiling).filter(({ fixture }) => fixture.kind === 'cabinet' || fixture.kind === 'casing' || fixture.kind === 'soffit')
        .map(({ wall, fixture, from, to }) => ({ wall, fixture, over: to - from }));
    return [...alongs, ...ceiling.walls.map(wall => ({ wall, fixture: null, over: wall.length }))].flatMap(({ wall, fixture, over }) => {
        const rise = Math.abs(heightOf(plane, wall.to) - heightOf(plane, wall.from)) * over / Math.max(1, wall.length);
        return rise < SEEN ? [] : [{ wall, fixture, over: Math.round(over), by: Math.round(rise) }];
    });
}
