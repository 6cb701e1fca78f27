import { isOffSeason, yearOf } from '../ceiling/moving.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { percentOf } from './support/percents.ts';
import { wordsOf } from './support/places.ts';

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  seasons { driest 30% at 68; dampest 55% at 75; goes-up-at 12% }\n`);

export const stockOffSeason = defineRule({
    name: 'stock-off-season',
    severity: 'warning',
    title: 'Boards go up damper, or drier, than they will ever be in this room',
    explanation: `
Wood comes to the moisture of the air around it, and then follows the seasons. Boards that go up damper than the room's dampest season only
shrink from that day on, those that go up drier only swell: the best is about the middle of the year.

Air of 30% at 68 °F brings wood to 6.2%, air of 55% at 75 °F to 10%. Boards at 12% have never been in such a room: sticker them there with
the heating on until a meter shows about 8%. Five to seven days is usual; the meter decides.

It is looked at where \`seasons\` has \`goes-up-at\`.`,
    wrong,
    right: changed(wrong, 'goes-up-at 12%', 'goes-up-at 8%'),
    basis: 'USDA FPL, Wood Handbook FPL-GTR-282 (2021), Eq. 4-5. Five to seven days: common practice, no source.',
    check: {
        room({ layout: { ceiling, room } }, report) {
            const year = yearOf(room), wet = year?.said.goesUpAt;
            if (!ceiling || !year || !wet || !isOffSeason(wet.value, year)) return;
            const better = Math.round(year.middle * 2) / 2, isWet = wet.value > year.dampest;
            report({
                ...wordsOf(wet),
                message: `The boards go up at ${percentOf(wet.value)}, and wood in this room comes to ${percentOf(year.driest)} in the driest season and ${percentOf(year.dampest)} in the dampest: they would only ${isWet ? 'shrink' : 'swell'}. `
                    + `Let them come to about ${percentOf(better)} in the room first.`,
                fixes: replacing(wet, percentOf(better), `Put them up at ${percentOf(better)}`),
            });
        },
    },
});
