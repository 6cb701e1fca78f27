/**
 * A job of one room in the shape of an L, out of square, with box beams of two depths: what the figures of the general ceiling are taken on.
 * Coffers are four feet wide; of `across` times `down` of them a corner of half as many each way is missing, less what the lean of the
 * walls takes; its corner stands in the middle of one. No two coffers are alike, so a tape of thirty-seconds opens a few corners by up to 1/32": it is
 * cut to sixty-fourths.
 */
export function lShape(across: number, down: number): string {
    const [wide, long] = [4 * across, 4 * down], [notch, reach] = [4 * Math.floor(across / 2) - 2, 4 * Math.floor(down / 2) + 2];
    return `edition 1
job "Refectory" { cut-to 1/64" }
stock board-1x4  { size 1x4; lengths 12', 16' }
stock board-1x6  { size 1x6; lengths 12', 16' }
stock board-1x8  { size 1x8; lengths 12', 16' }
stock board-1x10 { size 1x10; lengths 12', 16' }
stock strip-1x2  { size 1x2; lengths 8' }
profile low {
  blocking { stock board-1x6; screws #8 x 2 1/2" every 16" }
  sides { stock board-1x8; corners mitered; nails 16 ga x 2" every 12" }
  cleats { rip 3/4" x 3/4" from strip-1x2; nails 18 ga x 1 1/4" every 8" }
  bottom { stock board-1x6; ease 1/16"; biscuits 1 x #10 }
  trim { stock strip-1x2 }
}
profile deep like low { sides.stock board-1x10 }
room refectory "Refectory" {
  wall north ${wide}' 1/2" turn 1 deg
  wall east  ${long - reach}' heading south
  wall wing  ${notch}' 2" heading west
  wall inner ${reach}' heading south
  wall south
  wall west
  grid {
    coffers-north  ${across}
    coffers-east   ${down}
    beams          low
    through        north-south
    splices        on-crossings
    perimeter { kind band; stock board-1x10 }
  }
${Array.from({ length: Math.floor((across - 1) / 2) }, (_, i) => `  line ${2 * i + 2} { beams deep }`).join('\n')}
}
`;
}
