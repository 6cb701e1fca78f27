import { laborOf } from '../estimate/labor.ts';
import type { Missing } from '../estimate/model.ts';
import { defineRule } from './rule.ts';
import { HALL } from './support/examples.ts';
import { listed } from '../plain/words.ts';

const RATES = `
labor {
  crew      2 rate 62 USD per h
  layout    12 min per crossing
  blocking  3 min per ft
  sides     5 min per ft
  bottom    4 min per ft
  trim      3 min per ft
  corner    4 min per joint
  butt      0 min per joint
  coffer    20 min per coffer
}
`;

export const noRate = defineRule({
    name: 'no-rate',
    severity: 'warning',
    title: 'Work in the room has no rate, so the price leaves it out',
    explanation: `
Where a \`labor\` block holds for a room, every foot, joint and coffer in it needs a time: work without one would be done
for nothing. An entry hall of three coffers by two has 60' of cleats; at 2 minutes a foot they are two hours of somebody's day.

Give the time, in the folder of the house or above it. Work that another time already covers gets 0:
\`butt 0 min per joint\`, where the time for a foot of bottom includes it. A folder without a \`labor\` block, in it or above it,
asks for no price, and nothing is reported.`,
    wrong: HALL + RATES,
    right: HALL + RATES.replace('  bottom', '  cleats    2 min per ft\n  bottom'),
    basis: 'Which times there are is the program\'s own; how long work takes is for whoever does it to say.',
    check: {
        fit({ layout, takeOff }, report) {
            const { labor } = layout.room.rates;
            if (!labor.at) return;
            const { missing } = laborOf([{ ceiling: layout.ceiling, takeOff }], 0, labor);
            if (missing.length === 0) return;
            report({
                at: layout.room.at, related: [{ at: labor.at, message: 'The times for this room.' }],
                message: `\`labor\` has no time for ${listed(missing.map(wordOf))}, and the room has ${listed(missing.map(({ of }) => of))}. Give the time it takes, or 0 min if another time already covers it.`,
            });
        },
    },
});

/** `labor.cleats` as the text says it. */
function wordOf({ rate }: Missing): string {
    return `\`${rate.replace('labor.', '')}\``;
}
