import type { Nails, Profile } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { HOLD, nailBetween, nailFrom, SHORT_OF_FACE, usingNail } from './support/nails.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  cleats {
    rip    3/4" x 3/4" from strip-1x2
    nails  18 ga x 1" every 8"
  }
  bottom { stock poplar-1x6 }
`);

export const nailWontHold = defineRule({
    name: 'nail-wont-hold',
    severity: 'warning',
    title: 'Nails that hardly reach into the second board',
    explanation: `
A nail holds by what stands in the second piece: 3/8" at least.

    hold = nail - thickness of the first piece

A nail of 1" through a 3/4" cleat holds 1/4" in the side; one of 1 1/4" holds 1/2". The same goes for sides nailed to the
blocking, the bottom nailed up into the cleats, and the trim nailed to the sides.

The nails of the cleats must not come through the face of the side either: see \`nail-shows\`.`,
    wrong,
    right: changed(wrong, 'x 1" every', 'x 1 1/4" every'),
    basis: 'Hold of 3/8": common practice, no source.',
    check: {
        section({ section: { profile }, job }, report) {
            const size = sizesOf(job);
            for (const { first, second, nails, thickness, longest } of nailed(profile)) {
                const hold = nails.value.length - thickness;
                if (hold >= HOLD) continue;
                const right = longest === undefined ? nailFrom(thickness + HOLD, job) : nailBetween(thickness + HOLD, longest, job);
                report({
                    ...wordsOf(nails),
                    message: `The nail ${hold > 0 ? `holds only ${size(hold)} in the ${second}` : `does not reach the ${second}`}: it is ${size(nails.value.length)} long and goes through ${size(thickness)} of ${first}. `
                        + `It needs ${size(HOLD)}: ${right === undefined ? `${size(thickness + HOLD)} at least` : `use ${size(right)}`}.`,
                    fixes: usingNail(nails, right, job),
                });
            }
        },
    },
});

interface Nailed {
    readonly first: string;
    readonly second: string;
    readonly nails: Given<Nails>;
    /** Of the piece the nail goes through. */
    readonly thickness: Ticks;
    /** Where the nail must not come through a face. */
    readonly longest?: Ticks;
}

function nailed({ cleats, sides, bottom, trim, under }: Profile): Nailed[] {
    const side = sides?.stock?.value.thickness?.value.ticks;
    const cleat = cleats?.thickness?.value.ticks;
    const all = [
        { first: 'cleat', second: 'side', nails: cleats?.nails, thickness: cleat, longest: cleat === undefined || side === undefined ? undefined : cleat + side - SHORT_OF_FACE },
        { first: 'side', second: 'blocking', nails: sides?.nails, thickness: side },
        { first: 'bottom', second: bottom?.place.value === 'between-sides' ? 'cleat' : 'side', nails: bottom?.nails, thickness: bottom?.stock?.value.thickness?.value.ticks },
        { first: 'trim', second: 'side', nails: trim?.nails, thickness: trim?.stock?.value.thickness?.value.ticks },
        { first: 'molding', second: 'side', nails: under?.nails, thickness: under?.stock?.value.thickness?.value.ticks },
    ];
    return all.filter((one): one is Nailed => one.nails !== undefined && one.thickness !== undefined);
}
