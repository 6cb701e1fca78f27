import { inches } from '../quantity/rational.ts';
import { defineRule } from './rule.ts';
import { changed } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** Free width between the cleats: a hand, a spacer's foot or a wire. */
const FREE = inches('1 1/2');
/** Thinner than this a cleat splits when it is nailed. */
const THINNEST = inches('3/8');

const wrong = `edition 1

stock poplar-1x3 { size 1x3 }
stock poplar-1x6 { size 1x6 }
stock strip-1x2 { size 1x2 }

profile slim-box {
  blocking { stock poplar-1x3 }
  sides { stock poplar-1x6 }
  cleats { rip 3/4" x 3/4" from strip-1x2 }
  bottom { stock poplar-1x3 }
}
`;

export const cleatsCrowdChannel = defineRule({
    name: 'cleats-crowd-channel',
    severity: 'warning',
    title: 'The cleats leave too little room between them',
    explanation: `
Between the two cleats there must be room for a hand with a nailer, for the foot of a spacer and for a wire: 1 1/2".

Cleats of 3/4" in a channel of 2 1/2" leave 1". With cleats of 1/2" it is 1 1/2". Where the cleats meet or overlap it is an
**error**.`,
    wrong,
    right: changed(wrong, '3/4" x 3/4"', '1/2" x 3/4"'),
    basis: 'Room of 1 1/2": common practice, no source.',
    check: {
        section({ section: { profile, innerWidth }, job }, report) {
            const thickness = profile.cleats?.thickness;
            if (!thickness || !innerWidth) return;
            const left = innerWidth.ticks - 2 * thickness.value.ticks;
            if (left >= FREE) return;
            const size = sizesOf(job);
            const thinner = Math.floor((innerWidth.ticks - FREE) / 2);
            const channel = profile.blocking?.rip ?? profile.blocking?.stock;
            report({
                ...wordsOf(thickness),
                severity: left > 0 ? 'warning' : 'error',
                message: `${left > 0 ? `Only ${size(left)} is left between the cleats, no room for a hand, a spacer's foot or a wire` : 'The cleats leave nothing between them'}: `
                    + `two cleats of ${size(thickness.value.ticks)} in a channel of ${size(innerWidth.ticks)}. It takes ${size(FREE)}: `
                    + `${thinner >= THINNEST ? `use cleats of ${size(thinner)}` : 'make the beam wider'}.`,
                related: channel ? [{ at: channel.at, message: `the channel is ${size(innerWidth.ticks)} wide` }] : [],
                fixes: thinner >= THINNEST ? replacing(thickness, spelledLike(thickness.value, thinner, job), `Use cleats ${size(thinner)} thick`) : [],
            });
        },
    },
});
