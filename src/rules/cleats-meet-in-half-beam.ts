import type { HalfBeam } from '../ceiling/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, 'through        north-south', 'through        north-south\n    perimeter { kind half-beam; width 1 1/4" }');

export const cleatsMeetInHalfBeam = defineRule({
    name: 'cleats-meet-in-half-beam',
    severity: 'error',
    title: 'A half beam is too narrow for its two cleats',
    explanation: `
A half beam has a cleat on the back of its side and one on the wall; its bottom is pressed against both. From the wall to the
back of its side there has to be room for the two beside each other, and something between them, so that the second can be nailed.

Cleats of 3/4" take 1 1/2" of a half beam that has 1 1/4": they run into each other by 1/4". Make it wider than 1 1/2", or rip
the cleats thinner.`,
    wrong,
    right: changed(wrong, '1 1/4"', '2 1/2"'),
    basis: 'Sum of the section.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job), told = new Set<HalfBeam['perimeter']>();
            for (const { name } of ceiling.walls) {
                const own = ceiling.around[name];
                if (own?.kind !== 'half-beam' || told.has(own.perimeter)) continue;
                const { perimeter, width, section: { cleatThickness, profile: { cleats } } } = own;
                if (!cleatThickness || 2 * cleatThickness.ticks < width.ticks) continue;
                const both = 2 * cleatThickness.ticks;
                told.add(perimeter);
                const how = both === width.ticks ? 'leave nothing between them' : `run into each other by ${size(both - width.ticks)}`;
                report({
                    at: (perimeter.width ?? perimeter).at,
                    message: `The cleats of the half beam along the ${name} wall ${how}: two of ${size(cleatThickness.ticks)} take ${size(both)}, and from the wall to the back of `
                        + `its side there is ${size(width.ticks)}. Make it wider than ${size(both)}, or the cleats thinner.`,
                    related: [{ at: cleats!.thickness!.at, message: `the cleats are ${size(cleatThickness.ticks)} thick` }],
                });
            }
        },
    },
});
