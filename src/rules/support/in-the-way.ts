import { placeAlong, unitOf } from '../../ceiling/along.ts';
import { reachAt } from '../../ceiling/flanks.ts';
import type { Band, Ceiling, HalfBeam, Line } from '../../ceiling/model.ts';
import type { Fixture } from '../../job/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** A fixture of the ceiling (not one at a wall, see at-the-wall.ts) whose place is known, and how far from its center it reaches. */
export interface Placed { readonly fixture: Fixture; readonly x: Ticks; readonly y: Ticks; readonly half: Ticks }

export function placed(fixtures: readonly Fixture[]): Placed[] {
    return fixtures.flatMap(fixture => {
        const { x, y, kind, diameter, width } = fixture;
        return x === undefined || y === undefined || kind === '' ? [] : [{ fixture, x, y, half: Math.ceil((diameter ?? width)?.value ?? 0) / 2 }];
    });
}

/**
 * How far from its center a beam as deep as this is in its way: half of it; but the blades of a fan turn below beams that are less deep than it
 * hangs, and only what it hangs by is in the way of these.
 */
export function reachAbove({ fixture: { kind, hangs }, half }: Placed, depth: Ticks): Ticks {
    return kind === 'fan' && hangs && depth < hangs.value ? 0 : half;
}

/** What a fixture is on, or nearer than it is to be: a line or the band, and how far it has to move to be clear, which way. */
interface Hit { readonly on: Line | Band | HalfBeam; readonly name: string; readonly by: Ticks; readonly way: 'north' | 'east' | 'south' | 'west' }

/** How far below the ceiling it reaches. */
export function footOf({ on }: Hit): Ticks {
    return 'kind' in on ? on.kind === 'band' ? on.lowerEdge.ticks : on.section.depth.ticks : on.section.depth.ticks;
}

/** Everything that a circle round a point reaches into. */
export function hits({ x, y }: Placed, reach: Ticks, { lines, walls, around }: Ceiling): Hit[] {
    const found: Hit[] = [];
    for (const line of lines) {
        const { spot } = line, u = unitOf(line);
        const along = placeAlong(line, { x, y }), aside = (x - spot.x) * u.y - (y - spot.y) * u.x, half = reachAt(line, aside > 0 ? 'left' : 'right');
        if (Math.abs(aside) >= half + reach || along < line.start || along > line.end) continue;
        // back to the west or north, or on to the east or south
        const isBack = (line.runs === 'north-south' ? aside : 0 - aside) <= 0, by = half + reach - Math.abs(aside);
        found.push({ on: line, name: `line ${line.name}`, by: Math.ceil(by), way: line.runs === 'north-south' ? isBack ? 'west' : 'east' : isBack ? 'north' : 'south' });
    }
    for (const { name, from, to, length } of walls) {
        const on = around[name], dx = (to.x - from.x) / length, dy = (to.y - from.y) / length;
        const along = (x - from.x) * dx + (y - from.y) * dy, inside = (y - from.y) * dx - (x - from.x) * dy;
        if (!on || along < -reach || along > length + reach || inside < -reach) continue;
        const by = (on.kind === 'band' ? on.thickness.ticks : on.width.ticks + on.section.sideThickness.ticks) + reach - inside;
        const way = Math.abs(dy) > Math.abs(dx) ? dy < 0 ? 'east' : 'west' : dx > 0 ? 'south' : 'north';
        if (by > 0) found.push({ on, name: on.kind === 'band' ? 'the band' : `the half beam along the ${name} wall`, by: Math.ceil(by), way });
    }
    return found;
}
