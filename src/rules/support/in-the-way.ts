import { placeAlong, unitOf } from '../../ceiling/along.ts';
import { reachAt } from '../../ceiling/flanks.ts';
import type { Band, Ceiling, HalfBeam, Line } from '../../ceiling/model.ts';
import { rectangleOf } from '../../job/fixture.ts';
import type { Fixture } from '../../job/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** Something along the north wall, and along the east wall. */
export interface BothWays { readonly x: number; readonly y: number }

/**
 * A fixture of the ceiling (not one at a wall, see at-the-wall.ts) whose place is known, and how far from its center it reaches; of a rectangle the longer way,
 * and both ways, to the east and west and to the north and south.
 */
export interface Placed {
    readonly fixture: Fixture; readonly x: Ticks; readonly y: Ticks; readonly half: Ticks;
    readonly halves?: BothWays;
}

export function placed(fixtures: readonly Fixture[]): Placed[] {
    return fixtures.flatMap(fixture => {
        const { x, y, kind, diameter, width } = fixture, rectangle = rectangleOf(fixture);
        if (x === undefined || y === undefined || kind === '') return [];
        const halves = rectangle && { x: rectangle.across / 2, y: rectangle.down / 2 };
        if (halves) return [{ fixture, x, y, half: Math.max(halves.x, halves.y), halves }];
        return [{ fixture, x, y, half: Math.ceil((diameter ?? width)?.value ?? 0) / 2 }];
    });
}

/**
 * How far a fixture is to be clear of something that lies that way (a unit vector), where it is to be so clear the way in which it reaches farthest: a
 * rectangle reaches as far as its corner does. What is no further than its center stays that.
 */
export function reachThatWay({ half, halves }: Placed, reach: Ticks, way: BothWays): number {
    return halves && reach >= half ? reach - half + halves.x * Math.abs(way.x) + halves.y * Math.abs(way.y) : reach;
}

/** `, 6" across,`, `, 4" by 10",`; nothing where nobody says its size. What says its width alone is so far across. */
export function acrossWords({ half, halves, fixture: { size: said } }: Placed, size: (ticks: Ticks) => string): string {
    if (halves && said) return `, ${size(2 * halves.x)} by ${size(2 * halves.y)},`;
    return half > 0 ? `, ${size(2 * half)} across,` : '';
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

/** Everything that a fixture reaches into, so far from its center, or from where its rectangle reaches as far (`reachThatWay`). */
export function hits(one: Placed, far: Ticks, { lines, walls, around }: Ceiling): Hit[] {
    const found: Hit[] = [], { x, y } = one;
    for (const line of lines) {
        const { spot } = line, u = unitOf(line), reach = reachThatWay(one, far, { x: u.y, y: u.x });
        const along = placeAlong(line, { x, y }), aside = (x - spot.x) * u.y - (y - spot.y) * u.x, half = reachAt(line, aside > 0 ? 'left' : 'right');
        if (Math.abs(aside) >= half + reach || along < line.start || along > line.end) continue;
        // back to the west or north, or on to the east or south
        const isBack = (line.runs === 'north-south' ? aside : 0 - aside) <= 0, by = half + reach - Math.abs(aside);
        found.push({ on: line, name: `line ${line.name}`, by: Math.ceil(by), way: line.runs === 'north-south' ? isBack ? 'west' : 'east' : isBack ? 'north' : 'south' });
    }
    for (const { name, from, to, length } of walls) {
        const on = around[name], dx = (to.x - from.x) / length, dy = (to.y - from.y) / length, reach = reachThatWay(one, far, { x: dy, y: dx });
        const along = (x - from.x) * dx + (y - from.y) * dy, inside = (y - from.y) * dx - (x - from.x) * dy;
        if (!on || along < -reach || along > length + reach || inside < -reach) continue;
        const by = (on.kind === 'band' ? on.thickness.ticks : on.width.ticks + on.section.sideThickness.ticks) + reach - inside;
        const way = Math.abs(dy) > Math.abs(dx) ? dy < 0 ? 'east' : 'west' : dx > 0 ? 'south' : 'north';
        if (by > 0) found.push({ on, name: on.kind === 'band' ? 'the band' : `the half beam along the ${name} wall`, by: Math.ceil(by), way });
    }
    return found;
}
