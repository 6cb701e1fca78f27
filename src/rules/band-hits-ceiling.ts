import { defineRule } from './rule.ts';
import { bandTop } from './support/band.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(changed(changed(HALL, 'wall north  12\' 10"\n  wall east   9\' 5"', 'wall north  12\' 11 1/2"\n  wall east   9\' 6 1/2"'),
    'stock strip-1x2', 'stock poplar-1x8 { size 1x8 }\nstock strip-1x2'), '    through        north-south\n', `    through        north-south
    perimeter {
      kind         band
      stock        poplar-1x8
      rip          6 1/4"
      below-beams  1/4"
    }
`);

export const bandHitsCeiling = defineRule({
    name: 'band-hits-ceiling',
    severity: 'error',
    title: 'The band is higher than the place it hangs in',
    explanation: `
From the ceiling to the band's lower edge there is the depth of the beams and what the band hangs below them
(\`below-beams\`). A higher board does not go there.

Beams 5 3/4" deep and a band 1/4" below them leave 6". A band of 6 1/4" is 1/4" too high: rip it to 6" or less. A little less
spares scribing it to the ceiling; the trim covers 3/8" and more.`,
    wrong,
    right: changed(wrong, '6 1/4"', '5 3/4"'),
    basis: 'Geometry of the section.',
    check: {
        room({ layout, job }, report) {
            const band = layout.ceiling?.band;
            const perimeter = layout.room.grid?.perimeter;
            const said = widthSaidBy(perimeter);
            if (!band || !perimeter || !said) return;
            const over = -bandTop(band);
            if (over <= 0) return;
            const size = sizesOf(job);
            const room = band.lowerEdge.ticks;
            report({
                ...wordsOf(said),
                message: `The band is ${size(over)} too high: it is ${size(band.height.ticks)}, and its lower edge hangs ${size(room)} below the ceiling. `
                    + (room > 0 ? `Rip it to ${size(room)} or less.` : 'Hang it lower.'),
                related: perimeter.belowBeams.said ? [{ at: perimeter.belowBeams.at, message: 'this is how low it hangs' }] : [],
                fixes: perimeter.rip && room > 0 ? replacing(perimeter.rip, spelledLike(perimeter.rip.value, room, job), `Rip the band to ${size(room)}`) : [],
            });
        },
    },
});
