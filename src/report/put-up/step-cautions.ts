import type { Piece } from '../../takeoff/model.ts';
import { cautionsFor } from '../cautions.ts';
import type { StepTold } from './content.ts';

/** For all of it, whatever step. */
export function putUpCautions(pieces: readonly Piece[]): string[] {
    return [...cautionsFor(pieces), 'What holds the beams to the house is for local codes and licensed people to say.'];
}

/**
 * Reminders where the work meets them, step by step: common practice, no source. The makers' instructions and local codes come first, and nothing here
 * says that any of it is safe. `springs`: one of its pieces may be bowed to get in.
 */
export function stepCautions({ step: { kind }, people, fasteners }: Pick<StepTold, 'step' | 'people' | 'fasteners'>, springs: boolean): string[] {
    const has = (word: string): boolean => fasteners.some(({ what }) => what.includes(word));
    return [
        ...kind === 'blocking' || kind === 'panel' || kind === 'band' ? ['Before a fastener goes in, know what the ceiling and the wall hide: wiring, pipes, ducts, sprinklers, alarms.'] : [],
        ...people > 1 ? ['Two people on a platform, not on two ladders; neither lets go before it is fastened.'] : [],
        ...has('nails') ? ['Nail gun: eyes and ears protected, the free hand out of the way of a nail that turns with the grain; air or battery off before a jam is cleared.'] : [],
        ...springs ? ['A bowed board springs back: no face in its way, hands off the joint until it is seated.'] : [],
    ];
}
