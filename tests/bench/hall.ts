/** A job of one room with as many coffers: what the panes' figures are taken on. `width`: of the room, in feet. */
export function hallOf(across: number, down: number, width = 32): string {
    return `edition 1
stock board-1x6 { size 1x6; lengths 12', 16' }
stock board-1x8 { size 1x8; lengths 12', 16' }
stock strip-1x2 { size 1x2; lengths 8' }
profile box {
  blocking { stock board-1x6; screws #8 x 2 1/2" every 16" }
  spacers { stock board-1x6; height 5"; every 24" }
  sides { stock board-1x8; held-down 1/4"; rabbet 1/4" x 1/4" on lower-back; nails 16 ga x 2" every 12" }
  cleats { rip 3/4" x 3/4" from strip-1x2; nails 18 ga x 1 1/4" every 8" }
  bottom { stock board-1x6; ease 1/16"; biscuits 1 x #10 }
  trim { stock strip-1x2; nails 18 ga x 2" every 12" }
}
room hall "Hall" {
  wall north ${width}'
  wall east 24'
  wall south ${width}'
  wall west 24'
  grid { coffers-north ${across}; coffers-east ${down}; beams box; through north-south; splices on-crossings }
}
`;
}
