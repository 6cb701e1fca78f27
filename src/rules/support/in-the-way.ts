import type { Band, Ceiling, HalfBeam, Line } from '../../ceiling/model.ts';
import type { Fixture } from '../../job/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** A fixture of the ceiling whose place is known, and how far from its center it reaches. */
export interface Placed { readonly fixture: Fixture; readonly x: Ticks; readonly y: Ticks; readonly half: Ticks }

/** What stands at a wall is not in the ceiling; whether that is in the way is not computed yet. */
const AT_THE_WALL = new Set(['casing', 'cabinet', 'soffit', 'pocket']);

export function placed(fixtures: readonly Fixture[]): Placed[] {
    return fixtures.flatMap(fixture => {
        const { x, y, kind, diameter, width } = fixture;
        return x === undefined || y === undefined || kind === '' || AT_THE_WALL.has(kind) ? [] : [{ fixture, x, y, half: Math.ceil((diameter ?? width)?.value ?? 0) / 2 }];
    });
}

/** What a fixture is on, or nearer than it is to be: a line or the band, and how far it has to move to be clear, which way. */
export interface Hit { readonly on: Line | Band | HalfBeam; readonly name: string; readonly by: Ticks; readonly way: 'north' | 'east' | 'south' | 'west' }

/** Everything that a circle round a point reaches into. */
export function hits({ x, y }: Placed, reach: Ticks, { lines, around, inside }: Ceiling): Hit[] {
    const found: Hit[] = [];
    for (const line of lines) {
        const isAcross = line.runs === 'north-south', at = isAcross ? x : y, along = isAcross ? y : x;
        if (at + reach <= line.low || at - reach >= line.high || along < line.start || along > line.end) continue;
        const back = at + reach - line.low, on = line.high - (at - reach);
        const way = isAcross ? (back <= on ? 'west' : 'east') : back <= on ? 'north' : 'south';
        found.push({ on: line, name: `line ${line.name}`, by: Math.min(back, on), way });
    }
    const atWalls = [['west', 'east', inside.west - (x - reach)], ['east', 'west', x + reach - inside.east], ['north', 'south', inside.north - (y - reach)], ['south', 'north', y + reach - inside.south]] as const;
    for (const [wall, way, by] of atWalls) {
        const on = around[wall];
        if (on && by > 0) found.push({ on, name: on.kind === 'band' ? 'the band' : `the half beam along the ${wall} wall`, by, way });
    }
    return found;
}
