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
Where a \`labor\` block holds for a room, every foot, joint and coffer of it is wanted a time for: what nobody has timed would
be done for nothing. An entry hall of three coffers by two has 60' of cleats; at 2 minutes a foot they are two hours of somebody's day.

Say the time, in the folder of the house or above it. What is part of another time is said to take none:
\`butt 0 min per joint\`, where the time for a foot of bottom has it in. A folder without \`labor\` in reach asks for no price,
and is told nothing.`,
    wrong: HALL + RATES,
    right: HALL + RATES.replace('  bottom', '  cleats    2 min per ft\n  bottom'),
    basis: 'Which times there are is the program\'s own; how long work takes is for whoever does it to say.',
    check: {
        fit({ layout, takeOff }, report) {
            const { labor } = layout.room.rates;
            if (!layout.ceiling || !labor.at) return;
            const { missing } = laborOf([{ ceiling: layout.ceiling, takeOff }], 0, labor);
            if (missing.length === 0) return;
            report({
                at: layout.room.at, related: [{ at: labor.at, message: 'The times that hold here.' }],
                message: `The labor that holds here has no time for ${listed(missing.map(wordOf))}, and the room has ${listed(missing.map(({ of }) => of))}. Say how long it takes, or 0 min where another time has it in.`,
            });
        },
    },
});

/** `labor.cleats` as the text says it. */
function wordOf({ rate }: Missing): string {
    return `\`${rate.replace('labor.', '')}\``;
}
