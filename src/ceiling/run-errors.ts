import { grouped } from '../plain/groups.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Ceiling, Line, Run } from './model.ts';

/** What the channels of a run gain or lose by errors in the lengths of the sides, each of them, either way; in ticks. */
interface ShareOfEach {
    readonly worst: number;
    readonly usual: number;
    /** How many coffers of the run share one setting of the stop. */
    readonly settings: readonly number[];
}

/**
 * From wall to wall nothing gives: what the sides of n + 1 coffers are off, `t` at most, the n channels between them take, evenly.
 *
 *     at worst             (n + 1) t / n
 *     root-sum-square      t sqrt(k1² + k2² + ...) / n,   k: coffers cut at one setting of the stop, which are off together
 *
 * The sides of the two end coffers have one miter less than the others, so they are a setting of their own. Arithmetic;
 * that the channels share the error evenly is common practice, no source.
 */
export function shareOfEach({ lines, coffers, residue }: Run, t: Ticks): ShareOfEach {
    const settings = new Map<string, number>();
    residue.cutCoffers.forEach((size, i) => {
        const setting = `${size} ${i === 0 || i === coffers.length - 1 ? 'end' : 'inner'}`;
        settings.set(setting, (settings.get(setting) ?? 0) + 1);
    });
    const counts = [...settings.values()];
    return { worst: coffers.length * t / lines.length, usual: t * Math.hypot(...counts) / lines.length, settings: counts };
}

/** Lines of one detail whose bottoms stand in equally many pieces, each pressing its joints: one group a direction. */
interface PressedRun { readonly lines: readonly Line[]; readonly pieces: number }

export function pressedRuns({ lines: all }: Ceiling): readonly PressedRun[] {
    const piecesOf = ({ passes, splices }: Line): number => passes.filter(({ cuts }) => cuts).length + splices.length + 1;
    const groups = grouped(all, line => `${line.runs} ${piecesOf(line)} ${line.section.profile.key}`);
    return [...groups.values()].map(lines => ({ lines, pieces: piecesOf(lines[0]!) }));
}
