import { defineRule } from './rule.ts';
import { changed } from './support/examples.ts';
import { replacing, spelled } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = `edition 1

stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }
stock strip-1x2 { size 1x2 }
stock mdf-panel {
  thickness  11/16"
  width      5 1/2"
}

profile porch-box {
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  cleats {
    rip    3/4" x 3/4" from strip-1x2
    gauge  3/4"
  }
  bottom { stock mdf-panel }
}
`;

export const cleatOffGauge = defineRule({
    name: 'cleat-off-gauge',
    severity: 'error',
    title: 'The cleats are set with a gauge block of another thickness than the bottom',
    explanation: `
The bottom is pressed up against the cleats. Its face is flush with the lower edges of the sides only where the cleats
stand one thickness of the bottom above those edges.

Gauged with 3/4" for a bottom of 11/16", the cleats stand 1/16" too high, and the bottom sits 1/16" shy of the sides. With
a thicker bottom it is the other way round, and the bottom stands proud.

Set the cleats with a scrap of the bottom's own stock: leave \`gauge\` out, or give it the bottom's thickness.`,
    wrong,
    right: changed(wrong, 'gauge  3/4"', 'gauge  11/16"'),
    basis: 'Geometry of the section; setting cleats with the bottom\'s own stock is common practice, no source.',
    check: {
        section({ section: { profile }, job }, report) {
            const gauge = profile.cleats?.gauge;
            const stock = profile.bottom?.stock;
            const thickness = stock?.value.thickness?.value.ticks;
            if (!gauge || profile.bottom?.place.value === 'under-sides' || thickness === undefined || gauge.value.ticks === thickness) return;
            const size = sizesOf(job);
            const off = gauge.value.ticks - thickness;
            report({
                ...wordsOf(gauge),
                message: `The bottom will sit ${size(Math.abs(off))} ${off > 0 ? 'shy of the sides' : 'proud of the sides'}: the cleats are gauged with ${size(gauge.value.ticks)} `
                    + `and the bottom is ${size(thickness)} thick. Gauge the cleats with the bottom's own stock.`,
                related: [{ at: stock!.at, message: `the bottom is ${size(thickness)} thick` }],
                fixes: replacing(gauge, spelled(thickness, job), `Gauge the cleats with ${size(thickness)}`),
            });
        },
    },
});
