/** A room whose lines are of two details, with tolerances, press and a saw that is off; what differs is put in by tests. */
export interface ParlorWords {
    readonly title?: string;
    readonly job?: string;
    readonly bottom?: string;
    readonly blocking?: string;
    readonly more?: string;
    readonly yard?: string;
}

export function parlor({ title = 'Parlor', job = '', bottom = 'gap 0" to 1/32"', blocking = '', more = '', yard = '' }: ParlorWords = {}): string {
    return `edition 1
job "Copper Street 8" {
  cut-to 1/32"
  ${job}
}
stock board-1x6 { size 1x6; lengths 12', 16' }
stock board-1x8 { size 1x8; lengths 12', 16' }
stock strip-1x2 { size 1x2; lengths 8' }
${yard}
profile deep-box {
  blocking {
    stock board-1x6
    ${blocking}
  }
  spacers { stock board-1x6; height 5"; every 24" }
  sides { stock board-1x8; held-down 1/4"; rabbet 1/4" x 1/4" on lower-back; corners mitered; nails 16 ga x 2" every 12" }
  cleats { rip 3/4" x 3/4" from strip-1x2; nails 18 ga x 1 1/4" every 8" }
  bottom {
    stock board-1x6
    ease 1/16"
    ${bottom}
  }
}
profile clear-box like deep-box { spacers.every 16" }
room parlor ${JSON.stringify(title)} {
  wall north 13' 2"
  wall east 11'
  wall south 13' 2"
  wall west 11'
  grid {
    coffers-north 3
    coffers-east 3
    beams deep-box
    through north-south
    perimeter { kind band; stock board-1x8 }
  }
  line B { beams clear-box }
${more}}
`;
}
