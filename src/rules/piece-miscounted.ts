import { blockOf } from '../job/parts-of.ts';
import { perimetersOf } from '../job/perimeters.ts';
import type { LaidOut } from '../ceiling/model.ts';
import type { Fault, Miscount } from '../dryfit/model.ts';
import type { Source } from '../provenance/source.ts';
import { spokenName } from '../takeoff/ids.ts';
import type { Part } from '../takeoff/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { FAULT_OF_THE_LIST, some, theFirst } from './support/fit-words.ts';
import { capitalized, counted } from '../plain/words.ts';

const wrong = changed(HALL, '    coffers-north  3', '    lines-north    73 3/4", 80 1/4"');

export const pieceMiscounted = defineRule({
    name: 'piece-miscounted',
    severity: 'error',
    title: 'A place in the ceiling has no piece in the cut list, or a piece has no place',
    explanation: `
The layout says what belongs where; the dry fit looks for it in the cut list. Every place has one piece, and every piece one
place. A piece that is missing is found out on the ladder.

There is one case that the text alone can make: two lines stand so close that the trim of the coffer between them has no
length. With beams of 5" at 73 3/4" and 80 1/4" the coffer is 1 1/2" wide: trim of 3/4" along either side fills it, and
nothing is left for its two ends. Set the lines farther apart, or make one wide beam of them.`,
    wrong,
    right: changed(wrong, '73 3/4", 80 1/4"', '50 1/2", 103 1/2"'),
    basis: 'Geometry of the layout.',
    check: {
        fit({ layout, fit }, report) {
            theFirst(fit.faults.filter(isMiscount).map(fault => ({
                at: fault.piece?.source ?? sourceOf(layout, fault.part), message: countWords(fault),
            }))).forEach(one => report(one));
        },
    },
});

export function isMiscount(fault: Fault): fault is Miscount {
    return fault.kind === 'missing' || fault.kind === 'doubled' || fault.kind === 'no-place';
}

export function countWords({ kind, id, count, alike, part, noRoom }: Miscount): string {
    const names = [id, ...alike].map(spokenName);
    switch (kind) {
        case 'missing': return `${capitalized(some(names, part))} ${names.length === 1 ? 'is' : 'are'} missing in the cut list: the layout has a place for ${names.length === 1 ? 'it' : 'them'}. `
            + (noRoom ? 'Between lines that stand so close there is no room for any: set them farther apart.' : FAULT_OF_THE_LIST);
        case 'doubled': return `${capitalized(names[0]!)} is in the cut list ${counted(count, 'time')}, and the layout has one place for it. ${FAULT_OF_THE_LIST}`;
        case 'no-place': return `${capitalized(names[0]!)} is in the cut list, and the layout has no place for it. ${FAULT_OF_THE_LIST}`;
    }
}

function sourceOf({ room, ceiling }: LaidOut, part: Part): Source {
    return ((part === 'band' ? perimetersOf(room)[0] : blockOf(ceiling.beams?.profile, part)) ?? ceiling.room.grid).at;
}
