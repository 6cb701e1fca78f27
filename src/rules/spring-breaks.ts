import { grouped } from '../plain/groups.ts';
import { closingPieces } from '../putup/closing/pieces.ts';
import type { Closing } from '../takeoff/closing/pieces.ts';
import { waysIn, type Spring } from '../takeoff/closing/ways.ts';
import { roundUp } from '../quantity/round.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../quantity/ticks.ts';
import { bandSaid, bottomSaid } from '../takeoff/closing/said.ts';
import { defineRule } from './rule.ts';
import { bottomsNamed } from './support/closing-words.ts';
import { changed, HALL_WITH_BAND } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(changed(HALL_WITH_BAND, 'bottom { stock poplar-1x4 }', 'bottom { stock poplar-1x4; biscuits 1 x #20; closing sprung }'),
    'stock poplar-1x4 { size 1x4 }', 'stock poplar-1x4 { size 1x4; species yellow-poplar }');

export const springBreaks = defineRule({
    name: 'spring-breaks',
    severity: 'error',
    title: 'A closing piece is to be sprung in, and is too short for it',
    explanation: `
A closing piece that is bowed in its middle gets shorter between its ends: by 2.4 q² / l, where l is its length and q what the
middle is bowed. What that strains its face is 6 t q / l², and the strain at which such wood breaks on average is its modulus
of rupture over its modulus of elasticity, from the Wood Handbook (elasticity 10 % higher, for bending free of shear).

A bottom of yellow-poplar 50 7/8" long, 3/4" by 5 1/2", with #20 at both ends has to be 27/32" shorter: its middle is bowed 4
5/16", the strain is 0.75 %, and poplar breaks at 0.58 %, which is 129 %; it would take 530 lb. Half of the breaking strain is
the most that is told as a way in, since boards have knots and grain that runs out: about 8' is the shortest such piece.
Between half and the whole this is a **warning**. The figures are for clear straight wood and small bows (force up to 4 % low,
strain 1 %). Try it on a scrap of the same board, with hands and faces out of its way.`,
    wrong,
    right: changed(wrong, 'closing sprung', 'closing slots-opened'),
    basis: 'USDA FPL, Wood Handbook FPL-GTR-282 (2021), Table 5-3b and Eq. 9-2. Half of the breaking strain: common practice, no source.',
    check: {
        fit({ layout: { ceiling }, job }, report) {
            const sprung = closingPieces(ceiling, bandSaid(ceiling.room)).flatMap(closing => {
                const bottom = bottomSaid(closing.piece, ceiling);
                const spring = bottom.closing?.value === 'sprung' ? waysIn(closing, ceiling).find((way): way is Spring => way.kind === 'spring') : undefined;
                return spring?.figures && !spring.works && spring.figures.ofBreaking > 1 / 2 ? [{ closing, bottom, ...spring.figures }] : [];
            });
            for (const own of grouped(sprung, ({ bottom }) => bottom.closing!.at.uri + JSON.stringify(bottom.closing!.at.range)).values()) {
                const worst = [...own].sort((a, b) => b.ofBreaking - a.ofBreaking)[0]!, { ofBreaking, force, least, species, closing: { piece } } = worst;
                const size = sizesOf(job), share = Math.round(ofBreaking * 100), breaks = ofBreaking > 1;
                const shortest = roundUp(least, job.show.value === 'millimeters' ? 10 * TICKS_PER_MM : TICKS_PER_INCH / 2);
                report({
                    ...wordsOf(worst.bottom.closing!), severity: breaks ? 'error' : 'warning',
                    message: `The bottom of ${bottomsNamed([piece])}, ${size(piece.cutOverall)} long, ${breaks ? 'would break' : 'is strained too far'} when it is sprung in: `
                        + `${share} % of the strain that ${species} breaks at, half of which is the most it should have, and some ${forceWords(force, job.show.value)} in its middle. `
                        + `About ${size(shortest)} is the shortest that may be sprung. Open its slots to the back instead.${othersWords(own.map(({ closing }) => closing))}`,
                    fixes: replacing(worst.bottom.closing, 'slots-opened', 'Open the slots to the back'),
                });
            }
        },
    },
});

function othersWords({ length }: readonly Closing[]): string {
    return length === 1 ? '' : ` The same goes for ${length - 1} more.`;
}
function forceWords(pounds: number, show: 'feet-inches' | 'millimeters'): string {
    return show === 'millimeters' ? `${Math.round(pounds * 4.448 / 50) * 50} N` : `${Math.round(pounds / 10) * 10} lb`;
}
