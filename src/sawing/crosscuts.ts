import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { longPoints } from '../takeoff/long-points.ts';
import type { CrosscutStep, LaidBoard, Take } from './model.ts';

/** As far from the blade as a stop usually stands; what is longer is measured. Common practice, no source. */
export const LONGEST_STOP: Ticks = inches(96);

/**
 * The settings of the stop, long to short, whatever the stock: each finds its pieces at the near ends of its boards, since
 * all that is longer is cut off by then.
 */
export function crosscutsOf(boards: readonly LaidBoard[]): Omit<CrosscutStep, 'number'>[] {
    const settings = new Map<Ticks, { takes: Take[]; over: Ticks }>();
    for (const board of boards) for (const strip of board.strips) {
        const lengths = [...new Set(strip.pieces.map(p => p.to - p.from))];
        for (const length of lengths) {
            const pieces = strip.pieces.filter(p => p.to - p.from === length);
            const over = Math.max(...pieces.map(p => length - longPoints(p.piece)));
            const setting = settings.get(length) ?? { takes: [], over: 0 };
            setting.takes.push({ board, strip, pieces });
            settings.set(length, { takes: setting.takes, over: Math.max(setting.over, over) });
        }
    }
    return [...settings].sort(([a], [b]) => b - a).map(([stop, { takes, over }]) =>
        ({ do: 'crosscut', stop, by: stop > LONGEST_STOP ? 'tape' : 'stop', takes, over }));
}

