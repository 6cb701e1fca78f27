import { crossing, type Line } from '../plane/line.ts';
import { reach } from '../plane/point.ts';
import type { LineCarrier } from './carriers.ts';
import type { End, Meetings, Pass } from './meetings.ts';
import type { LineEnd, LineRun, Passing } from './model.ts';
import { ticksOf, type Unit } from './unit.ts';

/** What every line meets, in plain data. */
export function lineRuns({ runs }: Meetings, unit: Unit): LineRun[] {
    return runs.map(({ carrier, start, end, passes }) => ({
        line: carrier.name, start: endOf(carrier, start, unit), end: endOf(carrier, end, unit), passes: passes.map(pass => passingOf(carrier, pass, unit)),
    }));
}

function endOf(own: LineCarrier, { carrier, relation, near, far, through }: End, unit: Unit): LineEnd {
    const bottom = relation === 'dies' ? near.face : through && carrier.kind === 'line' ? far.bottom : near.bottom;
    return { of: carrier.name, relation, face: placeOf(own, near.face, unit), bottom: placeOf(own, bottom, unit), lean: leanOf(own.center, near.face) };
}

function passingOf(own: LineCarrier, { line, stem, touches, near, far, relation, through, along }: Pass, unit: Unit): Passing {
    return {
        of: line.name, stem: stem ? touches[0]! : null, relation, cuts: relation === 'dies' || relation === 'flush' && through,
        at: ticksOf(along, unit), low: placeOf(own, near.face, unit), high: placeOf(own, far.face, unit),
        bottomLow: placeOf(own, near.bottom, unit), bottomHigh: placeOf(own, far.bottom, unit),
        lean: leanOf(own.center, near.face),
    };
}

function leanOf(own: Line, other: Line): number {
    return Math.abs((own.a * other.a + own.b * other.b) / (own.a * other.b - own.b * other.a));
}

function placeOf(own: LineCarrier, other: LineCarrier['center'], unit: Unit): number {
    const point = crossing(own.center, other);
    return point ? ticksOf(reach({ x: 0, y: 0 }, point, own.direction), unit) : 0;
}
