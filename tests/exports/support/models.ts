import { solidsOf } from '../../../src/dryfit/solids.ts';
import type { Prism, Solid } from '../../../src/dryfit/model.ts';
import { laid, ROOMS, type LaidRoom } from '../../drawing/support/rooms.ts';

interface Model extends LaidRoom { readonly name: string; readonly solids: readonly Solid[] }

/** Rooms of every kind that are made into models in tests. */
export const MODELS: readonly Model[] = ['three by two', 'butted, no trim, no board named', 'metric', 'narrow', 'two sections', 'one coffer, nothing round it', 'hostile'].map(name => {
    const room = laid(ROOMS[name]!);
    return { name, ...room, solids: solidsOf(room.ceiling, room.pieces) };
});

const METERS_PER_TICK = 1 / 640_000;

/** Cubic meters, from the corners in plan by the shoelace formula. */
function prismVolume({ outline, top, foot }: Prism): number {
    const twice = outline.reduce((sum, [x, y], i) => sum + x * outline[(i + 1) % outline.length]![1] - outline[(i + 1) % outline.length]![0] * y, 0);
    return twice / 2 * (foot - top) * METERS_PER_TICK ** 3;
}
export function solidVolume({ prisms }: Solid): number {
    return prisms.reduce((sum, prism) => sum + prismVolume(prism), 0);
}

/** West, east, north, south, top, foot in meters. */
export function extentOf({ prisms }: Solid): readonly number[] {
    const xs = prisms.flatMap(({ outline }) => outline.map(([x]) => x));
    const ys = prisms.flatMap(({ outline }) => outline.map(([, y]) => y));
    return [
        Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys), Math.min(...prisms.map(p => p.top)), Math.max(...prisms.map(p => p.foot)),
    ].map(ticks => ticks * METERS_PER_TICK);
}
