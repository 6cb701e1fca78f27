import { inches } from '../quantity/rational.ts';
import { defineRule } from './rule.ts';
import { changed, HALL_WITH_BAND } from './support/examples.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What the trim laps over the band at least, as over a side. */
const LAP = inches('3/8');

const wrong = changed(changed(HALL_WITH_BAND, 'below-beams  1/4"', 'below-beams  1/2"'), '      stock        poplar-1x6', `      stock        poplar-1x6
      rip          4 1/2"`);

export const bandTopShows = defineRule({
    name: 'band-top-shows',
    severity: 'error',
    title: 'The band hangs so low that the trim does not cover its upper edge',
    explanation: `
The band runs around the walls; its lower edge stands \`below-beams\` under the beams, and the ceiling trim covers its upper
edge.

    top of the band = depth of the beams + below-beams - height of the band

A band of 5 1/2" whose lower edge is 7 3/4" down has its top 2 1/4" below the ceiling; trim of 1 1/2" leaves 3/4" of bare wall
showing above it. A lap of less than 3/8" is a **warning**. Take a wider board for the band, or higher trim.`,
    wrong,
    right: changed(wrong, '4 1/2"', '5 1/2"'),
    basis: 'Geometry of the section; lap of 3/8": common practice, no source.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            // one trim goes round the coffers, that of the grid's beams or of the room
            const trim = ceiling?.beams?.trimHeight?.ticks;
            if (!ceiling || trim === undefined) return;
            const size = sizesOf(job), bands = new Map(Object.values(ceiling.around).flatMap(own => own?.kind === 'band' ? [[own.perimeter, own] as const] : []));
            for (const [perimeter, band] of bands) {
                const top = band.lowerEdge.ticks - band.height.ticks, bare = top - trim;
                if (top <= 0 || -bare >= LAP) continue;
                const wider = size(band.height.ticks + top + LAP - trim);
                report({
                    // without a width there is no band
                    ...wordsOf(widthSaidBy(perimeter)!),
                    severity: bare > 0 ? 'error' : 'warning',
                    message: `${bare > 0 ? `${size(bare)} of bare wall shows above the band` : `The trim laps the band only ${size(-bare)}`}: `
                        + `the band is ${size(band.height.ticks)} high, its lower edge ${size(band.lowerEdge.ticks)} below the ceiling and its top ${size(top)}, and the trim is ${size(trim)} high. `
                        + `Make the band ${wider} high or more, or the trim ${size(top + LAP)}.`,
                    related: perimeter.belowBeams.said ? [{ at: perimeter.belowBeams.at, message: 'this sets how low it hangs' }] : [],
                });
            }
        },
    },
});
