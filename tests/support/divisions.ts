import { divide } from '../../src/ceiling/spacing.ts';
import type { Divided, Division } from '../../src/ceiling/division.ts';
import { lineName } from '../../src/job/line-names.ts';
import type { Trouble } from '../../src/ceiling/model.ts';
import { jobBuilder, ticksOf, type Length, type SpacingWords } from './job-builder.ts';

/** A run from band to band with lines of these widths (the last one's for all that follow), divided. */
export interface RunWords { room: Length; band?: Length; widths: Length[]; spacing: SpacingWords; feature?: Length; step?: Length }

export function divided({ room, band = 0, widths, spacing, feature, step = '1/32"' }: RunWords): { result: Divided | undefined; coffers: number[]; centers: number[]; troubles: Trouble[] } {
    const b = jobBuilder();
    const grid = b.room('room', { north: spacing, centeredOn: { x: feature ?? 0, y: 0 } }).grid!;
    const division: Division = {
        along: 'east-west', spacing: grid.north!, start: ticksOf(band), end: ticksOf(room) - ticksOf(band), room: ticksOf(room), ends: ['band', 'band'],
        step: ticksOf(step), show: 'feet-inches', name: index => lineName('north-south', index), width: index => ticksOf(widths[Math.min(index, widths.length - 1)]!), toCenter: index => ticksOf(widths[Math.min(index, widths.length - 1)]!) / 2,
        ...feature !== undefined && { feature: { position: ticksOf(feature), by: grid.centeredOn! } },
    };
    const troubles: Trouble[] = [];
    const result = divide(division, troubles);
    const faces = result ? [division.start, ...result.lows.flatMap((low, i) => [low, low + result.widths[i]!]), division.end] : [];
    return {
        result, troubles,
        coffers: result ? result.sizes.map((_, i) => faces[2 * i + 1]! - faces[2 * i]!) : [],
        centers: result ? result.lows.map((low, i) => low + result.widths[i]! / 2) : [],
    };
}
