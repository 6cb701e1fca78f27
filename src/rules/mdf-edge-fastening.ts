import { isFiberboard } from '../job/fiberboard.ts';
import type { JobSettings, Nails, Profile, Stock } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { POCKET_SCREWS_A_SPACER } from '../takeoff/spacers.ts';
import { defineRule } from './rule.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';
import { counted } from '../plain/words.ts';

const wrong = `edition 1

stock mdf-sheet {
  thickness  3/4"
  sheet      49" x 97" grain none
  species    mdf
}
stock poplar-1x8 { size 1x8 }
stock strip-1x2 { size 1x2 }

profile library-box {
  blocking {
    stock  mdf-sheet
    rip    5 1/2"
  }
  sides {
    stock  poplar-1x8
    nails  15 ga x 2" every 16"
  }
  cleats { rip 3/4" x 3/4" from strip-1x2 }
  bottom {
    stock  mdf-sheet
    rip    5 1/2"
  }
}
`;

export const mdfEdgeFastening = defineRule({
    name: 'mdf-edge-fastening',
    severity: 'warning',
    title: 'Nails or screws in the edge of MDF',
    explanation: `
MDF holds a fastener in its face. In its edge a nail or screw pries the layers apart: the edge swells or splits, and holds little of
what hangs from it.

- **Sides nailed to MDF blocking:** blocking lies flat, so the nails go into its edges. A nail of 2" through a side of 3/4" stands
  1 1/4" in the edge of a sheet of 3/4".
- **Bottoms nailed up into MDF cleats,** and cleats whose own nails go in at the edge.
- **Pocket screws in MDF spacers:** the pocket leaves a thin wall, and the screw comes out at the edge.

What carries, and what is fastened into at its edge, is solid wood or plywood: blocking, cleats, spacers. Sides, bottoms and trim may
be MDF; they are nailed through their faces.

MDF cleats are reported where the bottom is nailed to them. A sheet without grain and without a species counts as MDF.`,
    wrong,
    right: changed(wrong, `  blocking {
    stock  mdf-sheet
    rip    5 1/2"
  }`, '  blocking { stock poplar-1x6 }').replace('stock poplar-1x8', 'stock poplar-1x6 { size 1x6 }\nstock poplar-1x8'),
    basis: 'Common practice, no source.',
    check: {
        section({ section: { profile }, job }, report) {
            for (const { nails, into, stock, through } of nailedAtTheEdge(profile)) {
                report({ ...wordsOf(nails), message: nailWords(nails.value, into, stock, through, job), related: [{ at: stock.at, message: `the ${into} is cut from ${stock.value.name}` }] });
            }
            const spacer = profile.spacers?.stock;
            if (!spacer || !isFiberboard(profile.spacers)) return;
            report({
                ...wordsOf(spacer),
                message: `Each spacer hangs by ${counted(POCKET_SCREWS_A_SPACER, 'pocket screw')} in the edge of ${materialOf(spacer.value, job)}${profile.sides?.nails ? ', and the sides are nailed to two more' : ''}. `
                    + 'It splits there and holds little: cut the spacers from solid wood or plywood.',
            });
        },
    },
});

interface AtTheEdge {
    readonly nails: Given<Nails>;
    readonly into: 'blocking' | 'cleat';
    readonly stock: Given<Stock>;
    /** Thickness of what the nail goes through first; none where it is driven in at the edge itself. */
    readonly through?: Ticks;
}

function nailedAtTheEdge({ blocking, sides, cleats, bottom }: Profile): AtTheEdge[] {
    const found: AtTheEdge[] = [];
    const thick = (part: { readonly stock?: Given<Stock> } | undefined): Ticks | undefined => part?.stock?.value.thickness?.value.ticks;
    if (sides?.nails && blocking?.stock && isFiberboard(blocking)) found.push({ nails: sides.nails, into: 'blocking', stock: blocking.stock, through: thick(sides) });
    if (!cleats?.stock || !isFiberboard(cleats)) return found;
    // a cleat that stands off the side by the sheet's thickness has an edge below; one as high as the sheet is thick has a face there
    const standsOff = cleats.thickness?.value.ticks === thick(cleats), faceBelow = !standsOff && cleats.height?.value.ticks === thick(cleats);
    if (bottom?.nails && !faceBelow) found.push({ nails: bottom.nails, into: 'cleat', stock: cleats.stock, through: thick(bottom) });
    if (cleats.nails && !standsOff) found.push({ nails: cleats.nails, into: 'cleat', stock: cleats.stock });
    return found;
}

function nailWords({ length, gauge }: Nails, into: AtTheEdge['into'], stock: Given<Stock>, through: Ticks | undefined, job: JobSettings): string {
    const size = sizesOf(job), deep = length - (through ?? 0);
    const what = into === 'blocking' ? 'the blocking' : 'the cleats';
    const goes = through === undefined ? `The ${gauge} ga nail of ${size(length)} is driven in at the edge of ${what}`
        : deep > 0 ? `The ${gauge} ga nail of ${size(length)} stands ${size(deep)} in the edge of ${what}`
            : `The ${gauge} ga nail of ${size(length)} goes to the edge of ${what}`;
    return `${goes}, ${materialOf(stock.value, job)}, which splits there and holds little: ${into === 'blocking' ? 'cut the blocking from' : 'rip the cleats from'} solid wood or plywood.`;
}

function materialOf({ species, thickness }: Stock, job: JobSettings): string {
    const thick = thickness ? `${sizesOf(job)(thickness.value.ticks)} ` : '';
    return species?.value === 'mdf' ? `${thick}MDF` : `a ${thick}sheet without grain`;
}
