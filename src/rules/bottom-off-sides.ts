import type { Section } from '../ceiling/model.ts';
import type { JobSettings } from '../job/model.ts';
import type { Fix } from '../findings/finding.ts';
import { defineRule } from './rule.ts';
import { changed } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = `edition 1

stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }
stock poplar-1x10 { size 1x10 }

profile porch-box {
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  bottom {
    stock  poplar-1x10
    rip    8 1/4"
    place  under-sides overhang 1/2"
  }
}
`;

export const bottomOffSides = defineRule({
    name: 'bottom-off-sides',
    severity: 'error',
    title: 'A bottom under the sides is not as wide as the sides and its overhang need',
    explanation: `
A bottom that lies under the sides covers both of them, and stands out beyond their faces by its overhang:

    bottom = blocking + 2 x side + 2 x overhang

Over blocking of 5 1/2" and sides of 3/4" a bottom with 1/2" of overhang is 8" wide. Where only the overhang is given it is ripped to that,
so its board has to be as wide. Where only its width is given, the overhang is what that leaves; a bottom that is narrower than the beam
leaves the lower edges of the sides open to view. Where both are given they have to agree: ripped to 8 1/4" it stands out 5/8".`,
    wrong,
    right: changed(wrong, '8 1/4"', '8"'),
    basis: 'Geometry of the section.',
    silentAfter: ['too-wide-for-stock'],
    check: {
        section({ section, job }, report) {
            const { profile: { bottom }, bottomWidth, outerWidth } = section;
            if (bottom?.place.value !== 'under-sides' || !bottomWidth || !outerWidth) return;
            const size = sizesOf(job), { overhang, stock } = bottom, board = stock?.value.width?.value.ticks;
            const related = [{ at: bottom.place.at, message: `the beam is ${size(outerWidth.ticks)} wide, and the bottom lies under its sides` }];
            const beyond = (bottomWidth.ticks - outerWidth.ticks) / 2;
            if (overhang && bottom.rip && overhang.value.ticks !== beyond) {
                const right = outerWidth.ticks + 2 * overhang.value.ticks;
                report({
                    ...wordsOf(bottom.rip), related, fixes: fixes(section, right, job),
                    message: `The bottom stands out ${beyond < 0 ? 'nothing' : size(beyond)} beyond the face of each side instead of ${size(overhang.value.ticks)}: it is ${size(bottomWidth.ticks)} wide, `
                        + `and should be ${size(outerWidth.ticks)} + 2 x ${size(overhang.value.ticks)} = ${size(right)}. Rip it to ${size(right)}, or give only one of the two.`,
                });
            } else if (overhang && !bottom.rip && stock && board !== undefined && bottomWidth.ticks > board) {
                report({
                    ...wordsOf(stock), related,
                    message: `A bottom of ${size(bottomWidth.ticks)} cannot be cut from ${stock.value.name}, which is ${size(board)} wide: ${size(outerWidth.ticks)} + 2 x ${size(overhang.value.ticks)} of overhang. `
                        + `Rip it from a wider board${board >= outerWidth.ticks ? `, or leave an overhang of ${size.fine((board - outerWidth.ticks) / 2)}` : ''}.`,
                });
            } else if (beyond < 0) {
                const said = widthSaidBy(bottom);
                report({
                    ...wordsOf(said ?? bottom.place), related, fixes: fixes(section, outerWidth.ticks, job),
                    message: `The bottom leaves ${size.fine(-beyond)} of the lower edge of each side open: it is ${size(bottomWidth.ticks)} wide under a beam of ${size(outerWidth.ticks)}. `
                        + `Make it ${size(outerWidth.ticks)} or wider.`,
                });
            }
        },
    },
});

function fixes({ profile: { bottom } }: Section, width: number, job: JobSettings): Fix[] {
    const { rip, stock } = bottom!, board = stock?.value.width?.value.ticks;
    if (!rip || board === undefined || width > board) return [];
    return replacing(rip, spelledLike(rip.value, width, job), `Rip the bottom to ${sizesOf(job)(width)}`);
}
