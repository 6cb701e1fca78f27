/**
 * A job that says everything the language has a word for, and for every property of the built-in library a second value of it. What
 * cannot stand beside the rest is said by a variant of the job: some of its words are others before the trial begins.
 */
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
  paint-film       0.004" to 0.006"
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
  sheet      24" x 48" grain lengthwise
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
  wall north  9' 3" on 2026-03-04 by "Ines"
  wall east   7' 2"
  ceiling {
    height    8' 6"
    covering  gypsum thickness 1/2"
    joists    2x8 every 16" running north-south first-center 9" from north
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
    point   2', 3' up 8' 5"
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
export type Change = readonly [from: string, to: string];
/** `from` stands in the job once and becomes `to`. `in`: what is otherwise in the job before that. */
export interface Trial { readonly change: Change; readonly in?: readonly Change[] }

const is = (from: string, to: string, ...before: Change[]): Trial => ({ change: [from, to], ...before.length > 0 && { in: before } });
const BUTTED: Change = ['corners    mitered\n', 'corners    butted past north-south\n'];
const HALF_BEAM: Change = ['kind         band', 'kind         half-beam; width 2"'];
const BY_LINES: readonly Change[] = [['coffers-north  2', 'lines-north  50" from north-west'], ['coffers-east   2', 'lines-east  40" from north-east']];
const BY_SIZE: readonly Change[] = [['coffers-north  2', 'coffer-size  36" to 50"'], ['    coffers-east   2\n', '']];

export const TRIALS: Readonly<Record<string, Trial>> = {
    'Stock.size': is('size 1x8', 'size 1x10'),
    'Stock.species': is('yellow-poplar', 'red-oak'),
    'Stock.width': is('5 1/2" ± 1/64"\n', '5 1/2" ± 1/32"\n'),
    'Stock.thickness': is('thickness    3/4"', 'thickness    11/16"'),
    'Stock.ripped-with': is('ripped-with  fence-a', 'ripped-with  fence-z'),
    'Stock.lengths': is('lengths      8\', 12\'', 'lengths      12\''),
    'Stock.sheet': is('24" x 48"', '48" x 96"'),
    'Stock.sheet/grain': is('grain lengthwise', 'grain none'),
    'Stock.price': is('2.40 USD per ft\n', '2.90 USD per ft\n'),
    'Stock.price/for': is('17 USD per board for 8\'', '17 USD per board for 12\''),
    'Stock.supplier': is('Millrace', 'Harbor'),
    'Stock.lead-days': is('lead-days    5', 'lead-days    9'),
    'Stock.comes': is('comes        primed', 'comes        raw'),
    'Stock.defects': is('defects      8%', 'defects      60%'),
    'Stock.spare': is('spare        2', 'spare        3'),
    'Stock.on-hand': is('2 x 7\'', '1 x 7\''),
    'Stock.on-hand/worth': is('worth 4 USD', 'worth 5 USD'),
    'Profile.blocking': is('profile slim { blocking { stock flat-6 }; ', 'profile slim { blocking { stock flat-6b }; '),
    'Profile.spacers': is('profile slim { ', 'profile slim { spacers { stock flat-6; height 5" }; '),
    'Profile.sides': is('sides { stock wide-8; rip 7"; ', 'sides { stock wide-8; rip 6 3/4"; held-down 1/2"; '),
    'Profile.cleats': is('profile slim { ', 'profile slim { cleats { rip 3/4" x 3/4" from strip-2 }; '),
    'Profile.bottom': is('bottom { stock flat-6 } }', 'bottom { stock flat-6b } }'),
    'Profile.trim': is('profile slim { ', 'profile slim { trim { stock strip-2 }; '),
    'Profile.back': is('profile slim { ', 'profile slim { back { thickness 1/4" }; '),
    'Profile.under': is('profile slim { ', 'profile slim { under { stock strip-2 }; '),
    'Blocking.stock': is('profile slim { blocking { stock flat-6 }; ', 'profile slim { blocking { stock wide-8 }; '),
    'Blocking.rip': is('rip     5 7/16" with fence-b', 'rip     5 1/4" with fence-b'),
    'Blocking.rip/with': is('with fence-b', 'with fence-e', ['5 7/16" with fence-b', '5 13/32" ± 1/64" with fence-b'], ['5 13/32" with fence-e', '5 13/32" ± 1/64" with fence-e']),
    'Blocking.fit': is('fit     full-width', 'fit     bench-box'),
    'Blocking.relief': is('relief  3/32"', 'relief  1/8"'),
    'Blocking.screws': is('#8 x 2 1/2"', '#8 x 3"'),
    'Blocking.screws/every': is('every 16"\n  }\n  spacers', 'every 12"\n  }\n  spacers'),
    'Spacers.stock': is('stock     panel', 'stock     flat-6'),
    'Spacers.rip': is('5 7/16" with fence-c', '5 1/4" with fence-c'),
    'Spacers.rip/with': is('with fence-c', 'with fence-e', ['5 7/16" with fence-c', '5 13/32" ± 1/64" with fence-c'], ['5 13/32" with fence-e', '5 13/32" ± 1/64" with fence-e']),
    'Spacers.height': is('height    4"', 'height    4 1/2"'),
    'Spacers.every': is('every     20"', 'every     12"'),
    'Spacers.from-end': is('from-end  5"', 'from-end  8"'),
    'Sides.stock': is('stock      wide-8', 'stock      flat-6'),
    'Sides.rip': is('7" with fence-d', '7 1/8" with fence-d'),
    'Sides.rip/with': is('with fence-d', 'with fence-g', ['7" with fence-d', '7" ± 1/64" with fence-d'], ['6 3/4" with fence-g', '7" ± 1/64" with fence-g']),
    'Sides.held-down': is('held-down  1/4"\n    rabbet', 'held-down  3/8"\n    rabbet', ['    held-down  1/4"\n    splice', '    splice']),
    'Sides.rabbet': is('rabbet     1/4" x 1/4"', 'rabbet     1/8" x 1/4"'),
    'Sides.rabbet/on': is('lower-back\n', 'lower-front\n'),
    'Sides.corners': is('corners    mitered\n', 'corners    butted past north-south\n'),
    'Sides.corners/past': is('butted past north-south', 'butted past east-west', BUTTED),
    'Sides.nails': is('18 ga x 1 1/4" every 8"', '18 ga x 1" every 8"'),
    'Sides.nails/every': is('every 8"', 'every 6"'),
    'Cleats.rip': is('rip             3/4" x 3/4"', 'rip             3/4" x 5/8"'),
    'Cleats.rip/from': is('from strip-2', 'from flat-6'),
    'Cleats.gauge': is('gauge           3/4"', 'gauge           11/16"'),
    'Cleats.nails': is('18 ga x 1" every 9"', '18 ga x 1 1/4" every 9"'),
    'Cleats.nails/every': is('every 9"', 'every 7"'),
    'Cleats.short-each-end': is('short-each-end  1/4"', 'short-each-end  1/2"'),
    'Bottom.stock': is('stock     flat-6b', 'stock     flat-6'),
    'Bottom.rip': is('5 13/32" with fence-e', '5 3/8" with fence-e'),
    'Bottom.rip/with': is('with fence-e', 'with fence-b', ['5 7/16" with fence-b', '5 13/32" ± 1/64" with fence-b'], ['5 13/32" with fence-e', '5 13/32" ± 1/64" with fence-e']),
    'Bottom.place': is('place     between-sides', 'place     under-sides'),
    'Bottom.place/overhang': is('between-sides overhang 1/8"', 'between-sides overhang 1/4"', ['place     between-sides', 'place     between-sides overhang 1/8"']),
    'Bottom.place/let-in': is('between-sides let-in 1/8"', 'between-sides let-in 1/4"', ['place     between-sides', 'place     between-sides let-in 1/8"']),
    'Bottom.gap': is('0" to 1/32"', '0" to 1/64"'),
    'Bottom.ease': is('ease      1/16"', 'ease      1/8"'),
    'Bottom.biscuits': is('2 x #10', '1 x #10'),
    'Bottom.press': is('press     1/32"', 'press     1/16"'),
    'Bottom.nails': is('18 ga x 1 1/4" every 10"', '18 ga x 1 1/2" every 10"'),
    'Bottom.nails/every': is('every 10"', 'every 8 1/2"'),
    'Trim.stock': is('stock    strip-2', 'stock    flat-6'),
    'Trim.rip': is('1 1/4" with fence-f', '1 1/8" with fence-f'),
    'Trim.rip/with': is('with fence-f', 'with fence-z'),
    'Trim.corners': is('corners  mitered', 'corners  coped'),
    'Trim.nails': is('23 ga x 1" every 12"', '23 ga x 1 1/4" every 12"'),
    'Trim.nails/every': is('every 12"', 'every 15"'),
    'Back.thickness': is('back { thickness 1/4" }', 'back { thickness 3/8" }', ['profile slim { ', 'profile slim { back { thickness 1/4" }; ']),
    'Back.stock': is('stock panel }', 'stock flat-6 }', ['profile slim { ', 'profile slim { back { thickness 1/4"; stock panel }; ']),
    'Under.stock': is('under { stock strip-2 }', 'under { stock wide-8 }', ['profile slim { ', 'profile slim { under { stock strip-2 }; ']),
    'Job.client': is('Wren and Ruiz', 'Ruiz'),
    'Job.currency': is('"USD"', '"EUR"'),
    'Job.show': is('feet-inches', 'millimeters'),
    'Job.cut-to': is('cut-to           1/32"', 'cut-to           1/8"'),
    'Job.cut-tolerance': is('cut-tolerance    1/64"', 'cut-tolerance    1/16"'),
    'Job.kerf': is('kerf             1/8"', 'kerf             1/4"'),
    'Job.end-trim': is('end-trim         1"', 'end-trim         2"'),
    'Job.longest-board': is('longest-board    12\'', 'longest-board    8\''),
    'Job.shortest-offcut': is('shortest-offcut  20"', 'shortest-offcut  80"'),
    'Job.shortest-offcut/worth': is('worth 20%', 'worth 40%'),
    'Job.paint-film': is('0.004" to 0.006"', '0.004" to 0.016"'),
    'Ceiling.height': is('height    8\' 6"', 'height    9\''),
    'Ceiling.covering': is('gypsum', 'plaster'),
    'Ceiling.covering/thickness': is('thickness 1/2"', 'thickness 3/4"'),
    'Ceiling.joists': is('2x8', '2x10'),
    'Ceiling.joists/every': is('2x8 every 16"', '2x8 every 24"'),
    'Ceiling.joists/running': is('running north-south', 'running east-west'),
    'Ceiling.joists/first-center': is('first-center 9"', 'first-center 8"'),
    'Ceiling.joists/from': is('from north\n', 'from south\n'),
    'Perimeter.kind': is('kind         band', 'kind         none'),
    'Perimeter.stock': is('stock        wide-8', 'stock        flat-6'),
    'Perimeter.rip': is('6 3/4" with fence-g', '6 1/2" with fence-g'),
    'Perimeter.rip/with': is('with fence-g', 'with fence-z'),
    'Perimeter.width': is('width 2"', 'width 3"', HALF_BEAM),
    'Perimeter.beams': is('beams box', 'beams slim', ['kind         band', 'kind         half-beam; width 2"; beams box']),
    'Perimeter.below-beams': is('below-beams  0"', 'below-beams  1/4"'),
    'Perimeter.splices': is('splices      on-crossings', 'splices      never', ['longest-board    12\'', 'longest-board    8\'']),
    'Perimeter.nails': is('16 ga x 2 1/2"', '16 ga x 2"'),
    'Perimeter.nails/every': is('every 14"', 'every 10"\n'),
    'Grid.coffers-north': is('coffers-north  2', 'coffers-north  3'),
    'Grid.coffers-east': is('coffers-east   2', 'coffers-east   1'),
    'Grid.coffer-size': is('36" to 50"', '24" to 30"', ...BY_SIZE),
    'Grid.lines-north': is('lines-north  50"', 'lines-north  52"', ...BY_LINES),
    'Grid.lines-north/from': is('50" from north-west', '50" from north-east', ...BY_LINES),
    'Grid.lines-east': is('lines-east  40"', 'lines-east  42"', ...BY_LINES),
    'Grid.lines-east/from': is('40" from north-east', '40" from south-east', ...BY_LINES),
    'Grid.centered-on': is('centered-on lamp', 'centered-on grille', ['    beams          box', '    centered-on lamp\n    beams          box']),
    'Grid.beams': is('beams          box', 'beams          slim'),
    'Grid.through': is('through        east-west', 'through        north-south', ['    splice     40" from west\n', '']),
    'Grid.residue': is('outer-coffers', 'band', ['coffers-north  2', 'coffers-north  3'], ['wall north  9\' 3"', 'wall north  9\' 3 1/32"']),
    'Grid.splices': is('splices        on-crossings', 'splices        never', ['longest-board    12\'', 'longest-board    8\''], ['    splice     40" from west\n    splices    on-crossings\n', '']),
    'Grid.square-to': is('square-to      north', 'square-to      east'),
    'Grid.perimeter': is('kind         band', 'kind         none'),
    'Survey.method': is('method  laser', 'method  water-level'),
    'Survey.point': is('2\', 3\' up', '2\', 4\' up'),
    'Survey.point/up': is('up 8\' 5"', 'up 8\' 4"'),
    'Room.ceiling': is('height    8\' 6"', 'height    9\''),
    'Room.grid': is('coffers-north  2', 'coffers-north  3'),
    'Room.diagonal': is('diagonal  north-west to south-east', 'diagonal  north-west to north-east'),
    'Room.diagonal/measures': is('11\' 8 7/16"', '11\' 6"'),
    'Room.survey': is('method  laser', 'method  water-level'),
    'Room.measured': is('spoiled  side-A-1-north', 'spoiled  side-A-2-north'),
    'Room.trim': is('trim { stock strip-2 }', 'trim { stock wide-8 }', ['  diagonal', '  trim { stock strip-2 }\n  diagonal']),
    'Measured.spoiled': is('spoiled  side-A-1-north', 'spoiled  side-A-2-north'),
    'Measured.cut': is('cut      8\'', 'cut      12\''),
    'Measured.cut/of': is('of wide-8', 'of flat-6'),
    'Measured.cut/into': is('into side-A-2-north', 'into side-A-2-south'),
    'Measured.cut/at': is('at 4\' 4"', 'at 4\' 3"'),
    'Measured.cut/left-hand': is('left-hand 45°', 'left-hand 44°', ['right-hand 45°', 'left-hand 45°']),
    'Measured.cut/right-hand': is('right-hand 45°', 'right-hand 44°'),
    'Measured.cut/mitered': is('mitered 45°', 'mitered 44°', ['right-hand 45°', 'mitered 45°']),
    'Measured.cut/left': is('left 30"', 'left 40"'),
    'Wall.perimeter': is('wall east   7\' 2"', 'wall east   7\' 2" { perimeter { kind none } }'),
    'Wall.value': is('wall east   7\' 2"', 'wall east   7\' 4"'),
    'Wall.value/heading': is('wall east   7\' 2"', 'wall east   7\' 2" heading west'),
    'Wall.value/turn': is('wall east   7\' 2"', 'wall east   7\' 2" turn 80 deg'),
    'Wall.value/on': is('2026-03-04', '2026-03-05'),
    'Wall.value/by': is('"Ines"', '"Marta"'),
    'Fixture.value': is('lamp light', 'lamp sprinkler'),
    'Fixture.value/at': is('at 2\' 3", 1\' 9"', 'at 2\' 4", 1\' 9"'),
    'Fixture.value/from': is('1\' 9" from north-west', '1\' 9" from south-west'),
    'Fixture.value/on': is('on east', 'on north', ['diameter 5" keep-clear', 'on east diameter 5" keep-clear'], ['on east width 3\' ', '']),
    'Fixture.value/diameter': is('diameter 5"', 'diameter 6"'),
    'Fixture.value/width': is('register at 2\' 3", 5\' 3" width 6"', 'register at 2\' 3", 5\' 3" width 46"'),
    'Fixture.value/height': is('height 2"', 'height 3"', ['diameter 5" keep-clear', 'height 2" diameter 5" keep-clear']),
    'Fixture.value/keep-clear': is('keep-clear 1"', 'keep-clear 2"'),
    'Fixture.value/wants': is('wants coffer-center', 'wants beam-center'),
    'Board.value': is('b1 wide-8', 'b1 flat-6', ['rabbet 1/4" }', 'rabbet 3/16" }']),
    'Board.rabbet': is('rabbet 1/4" }', 'rabbet 3/16" }'),
    'Board.width': is('width 7" }', 'width 6" }', ['rabbet 1/4" }', 'width 7" }']),
    'Board.thickness': is('thickness 3/4" }', 'thickness 11/16" }', ['rabbet 1/4" }', 'thickness 3/4" }']),
    'Board.length': is('length 8\' }', 'length 9\' }', ['rabbet 1/4" }', 'length 8\' }']),
    'BeamLine.value': is('line 1 slim', 'line 1 box'),
    'BeamLine.beams': is('beams slim', 'beams box', ['line 1 slim { }', 'line 1 { beams slim }']),
    'BeamLine.held-down': is('held-down  1/4"\n    splice ', 'held-down  3/8"\n    splice '),
    'BeamLine.splice': is('splice     40"', 'splice     50"', ['longest-board    12\'', 'longest-board    8\'']),
    'BeamLine.splice/from': is('40" from west', '40" from east', ['longest-board    12\'', 'longest-board    8\'']),
    'BeamLine.splices': is('splices    on-crossings', 'splices    never', ['longest-board    12\'', 'longest-board    8\''], ['    splice     40" from west\n', '']),
    'BeamLine.from': is('from A', 'from B', ['line 1 slim { }', 'line 1 { from A }']),
    'BeamLine.until': is('until A', 'until B', ['line 1 slim { }', 'line 1 { until A }']),
    'BeamLine.meets': is('meets flush', 'meets dies-into', ['line 1 slim { }', 'line 1 { meets flush }']),
    'Crossing.through': is('through A ', 'through 1 ', ['line 1 slim { }', 'crossing A1 { through A }']),
    'Labor.crew': is('crew        2', 'crew        3'),
    'Labor.crew/rate': is('60 USD per h', '62 USD per h'),
    'Labor.day': is('day         8 h', 'day         7 h'),
    'Labor.layout': is('15 min per crossing', '16 min per crossing'),
    'Labor.blocking': is('blocking    3 min', 'blocking    4 min'),
    'Labor.spacers': is('4 min per piece', '5 min per piece'),
    'Labor.sides': is('sides       5 min', 'sides       6 min'),
    'Labor.cleats': is('cleats      2 min', 'cleats      3 min'),
    'Labor.bottom': is('bottom      4 min', 'bottom      5 min'),
    'Labor.trim': is('trim        3 min', 'trim        4 min'),
    'Labor.band': is('band        4 min', 'band        5 min'),
    'Labor.corner': is('corner      4 min', 'corner      5 min'),
    'Labor.butt': is('butt        6 min', 'butt        7 min'),
    'Labor.splice': is('splice      9 min', 'splice      10 min', ['longest-board    12\'', 'longest-board    8\'']),
    'Labor.coffer': is('20 min per coffer', '22 min per coffer'),
    'Labor.set-up': is('6 min per set-up', '7 min per set-up'),
    'Labor.first-bay': is('first-bay   100%', 'first-bay   50%'),
    'Labor.unfamiliar': is('unfamiliar  25%', 'unfamiliar  30%'),
    'Labor.unfamiliar/of': is('of box', 'of slim'),
    'Bid.overhead': is('12%', '13%'),
    'Bid.profit': is('15% of price', '16% of price'),
    'Bid.profit/of': is('of price', 'of cost'),
    'Bid.tax': is('6% on', '7% on'),
    'Bid.tax/on': is('on materials', 'on everything'),
    'Bid.contingency': is('contingency  5%', 'contingency  6%'),
    'Bid.delivery': is('85 USD', '95 USD'),
    'Bid.allowance': is('250 USD', '260 USD'),
    'Bid.allowance/for': is('for "paint"', 'for "varnish"'),
    'Bid.minimum': is('90000 USD', '80000 USD'),
    'Bid.supplies': is('0.11 USD', '0.12 USD'),
    'Bid.contractor': is('Finch and Sons', 'Finch'),
    'Bid.valid-days': is('valid-days  30', 'valid-days  60'),
    'Bid.deposit': is('deposit     30%', 'deposit     20%'),
    'Bid.scope': is('Beams, primed', 'Beams'),
    'Bid.exclusion': is('"Painting"', '"Staining"'),
    'Bid.terms': is('Half on arrival', 'All on arrival'),
    'Supplies.screws': is('0.11 USD', '0.12 USD'),
    'Supplies.nails': is('0.02 USD', '0.03 USD'),
    'Supplies.biscuits': is('0.09 USD', '0.10 USD'),
    'Supplies.glue': is('0.45 USD', '0.55 USD'),
    'Supplies.filler': is('0.60 USD', '0.70 USD'),
    'Supplies.caulk': is('5.80 USD', '5.90 USD'),
};
