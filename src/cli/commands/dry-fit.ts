import { dryFitOf } from '../../pipeline/inspect-closely.ts';
import { isSound } from '../../pipeline/standing.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { humanDryFit } from '../../report/dry-fit/human.ts';
import { jsonDryFit } from '../../report/dry-fit/json.ts';
import { closes, roomFits } from '../../report/dry-fit/words.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import type { World } from '../world.ts';
import { housesAsked, type ListOptions } from './lists.ts';

export const FIT_FORMATS = ['human', 'json'] as const;
export interface FitOptions extends Omit<ListOptions, 'format'> { readonly format: (typeof FIT_FORMATS)[number] }

/** Puts the cut lists together and says what does not fit. */
export async function dryFit(options: FitOptions, world: World): Promise<ExitCode> {
    const { houses, files, code } = await housesAsked(options, world, { closely: false });
    const rooms = roomFits(houses, ({ room }) => {
        const { ceiling } = layoutOf(room);
        return ceiling && dryFitOf(ceiling);
    });
    world.terminal.result(options.format === 'json' ? jsonDryFit(rooms, files) : humanDryFit(rooms, world.terminal.paint));
    return worst(code, rooms.every(one => closes(one) && isSound(one.standing)) ? EXIT.clean : EXIT.findings);
}
