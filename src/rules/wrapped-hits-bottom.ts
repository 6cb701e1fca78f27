import { defineRule } from './rule.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = `edition 1

stock poplar-1x8 { size 1x8 }
stock poplar-1x6 { size 1x6 }

profile round-the-steel {
  wraps 5" x 7 1/4" clearance 1/4"
  sides { stock poplar-1x8 }
  bottom { stock poplar-1x6 }
}
`;

export const wrappedHitsBottom = defineRule({
    name: 'wrapped-hits-bottom',
    severity: 'error',
    title: 'What a beam wraps hangs into its bottom, or its cleats',
    explanation: `
A beam that is built around a steel beam, a pipe or a duct has to be deep enough for it: from the ceiling down come what it wraps
and then the bottom, and at the sides the cleats.

Around a thing that hangs down 7 1/4", sides of 7 1/4" held down 1/4" make a beam 7 1/2" deep; the top of a bottom of 3/4" stands
6 3/4" down: 1/2" too little. Take wider sides, or put the bottom under them. Cleats stand in its way only where the clearance
beside it is less than they are thick.

Whether what is wrapped may be touched, nailed to or closed in is for a licensed person and the local code to say.`,
    wrong,
    right: changed(wrong, '5" x 7 1/4"', '5" x 6 1/2"'),
    basis: 'Sums of the section.',
    check: {
        section({ section: { profile, bottomTop, cleatTop, cleatThickness }, job }, report) {
            const { wraps, sides } = profile;
            if (!wraps || profile.blocking) return;
            const size = sizesOf(job), { height } = wraps.value, beside = wraps.clearance.value;
            const isCleat = cleatTop !== undefined && cleatThickness !== undefined && cleatThickness.ticks > beside;
            const top = isCleat ? cleatTop : bottomTop, over = top && height.ticks - top.ticks;
            if (!top || over === undefined || over <= 0) return;
            const stops = isCleat ? `cleats, ${size(cleatThickness.ticks)} thick beside ${size(beside)} of clearance, begin` : 'bottom begins';
            report({
                ...wordsOf(wraps),
                message: `What it wraps hangs down ${size(height.ticks)}, and the ${stops} ${size(top.ticks)} down: ${size(over)} too high. `
                    + `The beam has to be ${size(over)} deeper${isCleat ? `, or the clearance ${size(cleatThickness.ticks)} a side` : ''}.`,
                related: sides?.stock ? [{ at: (sides.rip ?? sides.stock).at, message: 'the sides make the depth' }] : [],
            });
        },
    },
});
