/** A small house of one room, for tests of the command line. */
export const yard = `edition 1

stock pine-1x6 {
  size     1x6
  lengths  8', 12', 16'
  price    2.10 USD per ft
}
stock pine-1x8 {
  size     1x8
  lengths  8', 12', 16'
  price    3.25 USD per ft
}
stock strip-1x2 {
  size     1x2
  lengths  8', 12'
  price    0.80 USD per ft
}
`;
export const box = `edition 1
from "yard.coffer" use pine-1x6, pine-1x8, strip-1x2

profile box {
  blocking { stock pine-1x6 }
  spacers {
    stock   pine-1x6
    height  5"
  }
  sides  { stock pine-1x8 }
  cleats { rip 3/4" x 3/4" from strip-1x2 }
  bottom { stock pine-1x6 }
}
`;
export const den = `edition 1
from "yard.coffer" use pine-1x8
from "box.coffer" use box

room den {
  wall north  12' 3 1/2"
  wall east   10' 2"

  grid {
    coffers-north  3
    coffers-east   2
    beams          box
    through        north-south
    residue        outer-coffers
    perimeter {
      kind   band
      stock  pine-1x8
    }
  }
}
`;
const job = `edition 1

job "Plum Street 4" {
  cut-to  1/16"
}
`;
/** The same job with a contract, of which something is done, billed and paid. */
export const signedJob = job.replace('}\n', `
  contract {
    signed     8,000 USD on 2026-02-09 at "5b1f0c7"
    deposit    800 USD
    retainage  10%
    phase      "Work in the shop" share 40% done 100%
    phase      "Beams up" share 45% done 50%
    phase      "Filling"
    change     1 adds 333.33 USD on 2026-03-02 for "A deeper band" done 50%
    bill       "1" sum 800 USD on 2026-02-09
    payment    800 USD on 2026-02-11 for "the deposit"
    due-days   14
    remit      "By check, to the shop."
  }
}
`);
export const house = { 'yard.coffer': yard, 'box.coffer': box, 'den.coffer': den, 'job.coffer': job };
export const signedHouse = { ...house, 'job.coffer': signedJob };
/** The bottom is wider than the blocking it goes between. */
export const tooWide = { ...house, 'box.coffer': box.replace('blocking { stock pine-1x6 }', 'blocking { stock pine-1x6\n    rip 5 1/4" }') };

/**
 * The den, 147 1/2" by 122", under a ceiling that falls 1" from its west wall to its middle and rises again to the east: at x from the west it is
 * 15 + |x - 73 3/4| / 73 3/4 inches above the level line, which the triangles of six readings follow exactly.
 */
export const VALLEY = `  survey {
    method laser
    point  0', 0' up 16"
    point  6' 1 3/4", 0' up 15"
    point  12' 3 1/2", 0' up 16"
    point  0', 10' 2" up 16"
    point  6' 1 3/4", 10' 2" up 15"
    point  12' 3 1/2", 10' 2" up 16"
    plane  level at 15 1/2"
  }

  grid {`;
