/**
 * Texts for the examples of rules, all invented. Rules about a room share one beam and one room, so that an example
 * shows only what it is about.
 */
export const BEAM = `edition 1

stock poplar-1x4 { size 1x4 }
stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }
stock strip-1x2 { size 1x2 }

profile hall-box {
  blocking { stock poplar-1x4 }
  sides { stock poplar-1x6 }
  cleats { rip 3/4" x 3/4" from strip-1x2 }
  bottom { stock poplar-1x4 }
  trim { stock strip-1x2 }
}
`;

/** A beam for rules about sections, of boards that fit each other: what is said of its parts, a line each. */
export function porchBox(parts: string): string {
    return `edition 1

stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }
${parts.includes('strip-1x2') ? 'stock strip-1x2 { size 1x2 }\n' : ''}
profile porch-box {${parts}}
`;
}

/** Three coffers of 48" by two of 54". */
export const ENTRY_HALL = `room hall "Entry hall" {
  wall north  12' 10"
  wall east   9' 5"

  grid {
    coffers-north  3
    coffers-east   2
    beams          hall-box
    through        north-south
  }
}
`;

export const HALL = `${BEAM}
${ENTRY_HALL}`;

/** The same hall with its ceiling surveyed: 14 1/4" above the level line in its corners, and `middle` in the middle of it. */
export function surveyedHall(middle: string, plane = ''): string {
    return changed(HALL, '  grid {', `  survey {
    point  0', 0' up 14 1/4"
    point  12' 10", 0' up 14 1/4"
    point  12' 10", 9' 5" up 14 1/4"
    point  0', 9' 5" up 14 1/4"
    point  6' 5", 4' 8 1/2" up ${middle}${plane}
  }

  grid {`);
}

/** The same hall with a band of 3/4" round the walls, hanging 1/4" below the beams, whose undersides are 5 3/4" down. */
export const HALL_WITH_BAND = changed(changed(changed(HALL, `12' 10"`, `12' 11 1/2"`), `9' 5"`, `9' 6 1/2"`), `north-south
`, `north-south
    perimeter {
      kind         band
      stock        poplar-1x6
      below-beams  1/4"
    }
`);

/** The hall while it is being built: boards that are cut, and a side that was spoiled and cut once more. */
export const HALL_IN_WORK = HALL.replace('    through        north-south\n  }\n', `    through        north-south
  }

  measured {
    spoiled  side-A-1-north
    cut      8' of poplar-1x6 into side-A-1-north at 48 3/4" mitered 45° left 44"
    cut      6' of poplar-1x6 into side-A-1-north at 48 3/4" mitered 45°
  }
`);

/** The same text with one thing changed. Throws where that is not there exactly once: an example must show its own change. */
export function changed(text: string, from: string, to: string): string {
    const parts = text.split(from);
    if (parts.length !== 2) throw new Error(`"${from}" stands ${parts.length - 1} times in the example`);
    return parts.join(to);
}
