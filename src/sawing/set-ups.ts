import { sawDegrees } from '../takeoff/ends.ts';
import { isWholeStrip } from './crosscuts.ts';
import type { LaidBoard, SetUps, Step } from './model.ts';

/** Counts how often something is set at a machine, and how often a board is taken up. */
export function setUpsOf(steps: readonly Step[], boards: readonly LaidBoard[]): SetUps {
    const count = (kind: Step['do']): number => steps.filter(step => step.do === kind).length;
    const miters = steps.flatMap(step => (step.do === 'miter' ? [step] : []));
    const parts = {
        fences: count('rip'), stops: count('crosscut'), angles: miters.length,
        miterStops: miters.reduce((sum, { cuts }) => sum + new Set(cuts.flatMap(cut => cut.stop ?? [])).size, 0),
        machines: count('rabbet') + count('ease') + count('slots') + count('pocket holes'),
    };
    return {
        ...parts, total: parts.fences + parts.stops + parts.angles + parts.miterStops + parts.machines,
        pickUps: boards.reduce((sum, board) => sum + pickUpsOf(board), 0),
    };
}

/**
 * A board comes to the stop once for every length that it holds, sections among them, and each section once for every length of its strips,
 * which are cut together; what is cut to its miters straight from it, by the angle.
 */
export function pickUpsOf({ strips, sections }: LaidBoard): number {
    const stops = strips.flatMap(strip => strip.pieces.filter(p => !isWholeStrip(strip, p)).map(p => `${strip.section ?? ''} ${p.to - p.from} ${p.once ? sawDegrees(p.ends[0]) : ''}`));
    return new Set([...stops, ...sections.map(({ from, to }) => ` ${to - from} `)]).size;
}
