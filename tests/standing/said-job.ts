/** A job that says everything the language has a word for. */
export const JOB = `edition 1

job "Cooper Row 3" {
  client           "Wren and Ruiz"
  currency         "USD"
  show             feet-inches
  cut-to           1/32"
  cut-tolerance    1/64"
  kerf             1/8"
  end-trim         1"
  longest-board    12'
  shortest-offcut  20" worth 20%
  boards           shared
  pool-hidden      1/8" of cleats, spacers
  paint-film       0.004" to 0.006"
  seasons {
    driest      25% at 68
    dampest     55% at 74
    goes-up-at  7.5%
  }
  contract {
    signed     31,200 USD on 2026-02-09 at "5b1f0c7"
    deposit    3,120 USD
    retainage  5%
    phase      "Boards and shop work" share 40% known-by cut
    phase      "Beams up" sum 14,040 USD done 30%
    phase      "Trim and filling"
    change     1 adds 1,450 USD on 2026-03-02 at "a40e9d2" reference "letter of March 2" for "A fourth line of beams" done 25%
    change     2 deducts 280 USD on 2026-03-16
    bill       "1" sum 3,120 USD on 2026-02-09
    payment    1,560 USD on 2026-02-11 for "half of the deposit"
    due-days   14
    remit      "Mill Lane 14, by check"
  }
}
labor {
  crew        2 rate 60 USD per h
  day         8 h
  layout      15 min per crossing
  blocking    3 min per ft
  spacers     4 min per piece
  sides       5 min per ft
  cleats      2 min per ft
  bottom      4 min per ft
  trim        3 min per ft
  band        4 min per ft
  corner      4 min per joint
  butt        6 min per joint
  splice      9 min per joint
  coffer      20 min per coffer
  set-up      6 min per set-up
  cutting     2 min per piece
  first-bay   100%
  unfamiliar  25% of box
}
bid {
  overhead     12%
  profit       15% of price
  tax          6% on materials
  contingency  5%
  delivery     85 USD
  allowance    250 USD for "paint"
  minimum      90000 USD
  supplies {
    screws    0.11 USD per piece
    nails     0.02 USD per piece
    biscuits  0.09 USD per piece
    glue      0.45 USD per fl-oz
    filler    0.60 USD per fl-oz
    caulk     5.80 USD per tube
  }
  contractor  "Finch and Sons"
  valid-days  30
  deposit     30%
  scope       "Beams, primed"
  exclusion   "Painting"
  terms       "Half on arrival"
}
stock flat-6 {
  size         1x6
  species      yellow-poplar
  ripped-with  fence-a
  width        5 1/2" ± 1/64"
  thickness    3/4"
  lengths      8', 12'
  price        2.40 USD per ft
  price        17 USD per board for 8'
  supplier     Millrace
  lead-days    5
  comes        primed
  defects      8%
  spare        2
  on-hand      2 x 7' worth 4 USD
}
stock flat-6b { size 1x6; ripped-with fence-a; width 5 1/2" ± 1/64"; lengths 8', 12'; price 2.40 USD per ft }
stock wide-8 { size 1x8; lengths 8', 12'; price 3.60 USD per ft }
stock strip-2 { size 1x2; lengths 8', 12'; price 0.90 USD per ft }
stock panel {
  thickness  3/4"
  sheet      24" x 48" grain lengthwise stages 3
  price      40 USD per sheet
}
profile slim { blocking { stock flat-6 }; sides { stock wide-8; rip 7"; rabbet 1/4" x 1/4" on lower-back }; bottom { stock flat-6 } }
profile box {
  blocking {
    stock   flat-6
    rip     5 7/16" with fence-b
    fit     full-width
    relief  3/32"
    screws  #8 x 2 1/2" every 16"
  }
  spacers {
    stock     panel
    rip       5 7/16" with fence-c
    height    4"
    every     20"
    from-end  5"
  }
  sides {
    stock      wide-8
    rip        7" with fence-d
    held-down  1/4"
    rabbet     1/4" x 1/4" on lower-back
    corners    mitered
    nails      18 ga x 1 1/4" every 8"
  }
  cleats {
    rip             3/4" x 3/4" from strip-2
    gauge           3/4"
    nails           18 ga x 1" every 9"
    short-each-end  1/4"
  }
  bottom {
    stock     flat-6b
    rip       5 13/32" with fence-e
    place     between-sides
    gap       0" to 1/32"
    ease      1/16"
    biscuits  2 x #10
    closing   slots-opened
    press     1/32"
    nails     18 ga x 1 1/4" every 10"
  }
  trim {
    stock    strip-2
    rip      1 1/4" with fence-f
    corners  mitered
    nails    23 ga x 1" every 12"
  }
}
room den "The den" {
  boards      shared
  wall north  9' 3" on 2026-03-04 by "Ines"
  wall east   7' 2"
  ceiling {
    height    8' 6"
    covering  gypsum thickness 1/2"
    joists    2x8 every 16" running north-south first-center 9" from west of spruce-pine-fir
    joist     58" found extra
  }
  grid {
    coffers-north  2
    coffers-east   2
    beams          box
    through        east-west
    residue        outer-coffers
    splices        on-crossings
    square-to      north
    perimeter {
      kind         band
      stock        wide-8
      rip          6 3/4" with fence-g
      below-beams  0"
      splices      on-crossings
      nails        16 ga x 2 1/2" every 14"
    }
  }
  diagonal  north-west to south-east measures 11' 8 7/16"
  survey {
    method  laser
    point   0', 0' up 14"
    point   9' 3", 0' up 14 1/8"
    point   9' 3", 7' 2" up 14 5/8"
    point   0', 7' 2" up 14 1/4"
    plane   level at 14 5/8"
    scribe  1/4"
  }
  fixture lamp light at 2' 3", 1' 9" from north-west diameter 5" keep-clear 1" wants coffer-center
  fixture grille register at 2' 3", 5' 3" width 6"
  fixture door casing on east width 3' height 7'
  line 1 slim { }
  line A {
    held-down  1/4"
    splice     40" from west
    splices    on-crossings
  }
  measured {
    spoiled  side-A-1-north
    cut      8' of wide-8 into side-A-2-north at 4' 4" right-hand 45° left 30"
    board    b1 wide-8 { rabbet 1/4" }
  }
}
`;
