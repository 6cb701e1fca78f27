import { perimetersOf } from '../job/perimeters.ts';
import { sameSource } from '../provenance/source.ts';
import { defineRule } from './rule.ts';
import { changed, HALL_WITH_BAND } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL_WITH_BAND, 'stock        poplar-1x6', `stock        poplar-1x8
      rip          6 1/4"`);

export const bandHitsCeiling = defineRule({
    name: 'band-hits-ceiling',
    severity: 'error',
    title: 'The band is taller than the room between its lower edge and the ceiling',
    explanation: `
From the ceiling to the band's lower edge there is the depth of the beams and what the band hangs below them
(\`below-beams\`). A taller band does not fit.

Beams 5 3/4" deep and a band 1/4" below them leave 6". A band of 6 1/4" is 1/4" too tall: rip it to 6" or less. A little less
saves scribing it to the ceiling; the trim covers 3/8" and more.`,
    wrong,
    right: changed(wrong, '6 1/4"', '5 3/4"'),
    basis: 'Geometry of the section.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { height, room, at } of troublesOf(layout, 'band-too-high')) {
                const { rip, belowBeams } = perimetersOf(layout.room).find(each => sameSource((each.rip ?? each.stock ?? each).at, at)) ?? {};
                report({
                    at,
                    message: `The band is ${size(height - room)} too tall for its place: it is ${size(height)} high, and its lower edge is ${room < 0 ? `${size(-room)} above` : `${size(room)} below`} the ceiling. `
                        + (room > 0 ? `Rip it to ${size(room)} or less.` : 'Hang it lower.'),
                    related: belowBeams?.said ? [{ at: belowBeams.at, message: 'this sets how low it hangs' }] : [],
                    fixes: rip && room > 0 ? replacing(rip, spelledLike(rip.value, room, job), `Rip the band to ${size(room)}`) : [],
                });
            }
        },
    },
});
