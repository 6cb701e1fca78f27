import { counted } from '../plain/words.ts';
import { roundTo } from '../quantity/round.ts';
import { choosePlane } from '../survey/choose-plane.ts';
import { surveyedOf, type Surveyed, type SurveyedSide } from '../survey/survey.ts';
import { sideNamed, surveyWords } from '../survey/words.ts';
import type { JobSettings } from '../job/model.ts';
import type { Fix } from '../findings/finding.ts';
import { defineRule, type Found } from './rule.ts';
import { replacing, spelled } from './support/fixes.ts';
import { surveyedHall } from './support/examples.ts';

const wrong = surveyedHall('13 5/8"');

export const heldDownUnderHump = defineRule({
    name: 'held-down-under-hump',
    severity: 'warning',
    title: 'The ceiling hangs lower than the held-down gap, so that a side has to be scribed',
    explanation: `
Sides hang by a plane, level or tilted, and stay below it by the held-down gap. Where the ceiling hangs below the plane by
more than that, the side will not go up: it is scribed to the ceiling there. By how much and over which stretch follows from
the survey of the ceiling.

In the hall the ceiling is 14 1/4" above the level line in the corners and 13 5/8" in the middle. The side laps its blocking
by 3/4" - 1/4" = 1/2" where the ceiling is at the plane, and 3/8" is needed, so that the plane may be no more than 1/8" below
the corners, at 14 1/8". Near the middle the ceiling is up to 1/2" below that: 1/4" more than the held-down gap.

Scribe the sides that are named, hold them down more, or let the plane follow the ceiling (\`plane following\`). What has to
be scribed deeper than the survey's \`scribe\` is an **error**.`,
    wrong,
    right: surveyedHall('14"'),
    basis: 'Linear interpolation between the readings. Up to 1/4" of scribing before the plane is moved, where nobody says otherwise: common practice, no source.',
    check: {
        fit({ layout: { ceiling }, takeOff, job }, report) {
            const surveyed = surveyedOf(ceiling, takeOff);
            if (!surveyed) return;
            const most = surveyed.said.scribe.value;
            const deepestOf = ({ scribes }: SurveyedSide): number => Math.max(...scribes.map(({ deepest }) => deepest.ticks));
            const scribed = surveyed.sides.filter(({ scribes }) => scribes.length > 0).sort((a, b) => deepestOf(b) - deepestOf(a));
            const tooDeep = scribed.filter(side => deepestOf(side) > most), others = scribed.filter(side => deepestOf(side) <= most);
            if (tooDeep.length > 0) report({
                severity: 'error',
                ...foundOf(tooDeep, surveyed, job, ` That is more than the ${surveyWords(job).deep(most)} that you scribe: hold its line down more, or hang the sides by another plane.`),
            });
            if (others.length > 0) report(foundOf(others, surveyed, job, ''));
        },
    },
});

function foundOf(sides: readonly SurveyedSide[], surveyed: Surveyed, job: JobSettings, then: string): Found {
    const { deep, at, over } = surveyWords(job), [first, ...rest] = sides, { under: { piece, heldDown, length }, scribes } = first!;
    const worst = scribes.reduce((a, b) => (b.deepest.ticks > a.deepest.ticks ? b : a));
    const others = rest.length === 0 ? '' : ` ${counted(rest.length, 'other side has', 'other sides have')} to be scribed too.`;
    return {
        at: surveyed.said.at, fixes: fixesFor(surveyed, job),
        message: `${sideNamed(piece).replace('side', 'Side')} will not go up as it is: ${at(piece, worst.deepest)} the ceiling hangs ${deep(worst.deepest.ticks)} lower than the held-down gap of `
            + `${deep(heldDown)}. Scribe it ${over(worst, length)}, ${deep(worst.deepest.ticks)} at the deepest.${then}${others}`,
    };
}

/** Another reading to hang the sides at, where the one that is said leaves more of them to be scribed than need be. */
function fixesFor({ said: { plane }, sides, chosen }: Surveyed, job: JobSettings): Fix[] {
    const under = sides.map(side => side.under), better = plane.reading && choosePlane(under, { kind: 'level' });
    if (!better || !chosen) return [];
    const reading = roundTo(Math.round(better.plane.at), job.cutTo.value), by = choosePlane(under, { kind: 'level', reading });
    return by!.scribed < chosen.scribed ? replacing(plane.reading, spelled(reading, job), `Hang the sides where ${by!.scribed === 0 ? 'none has' : `${by!.scribed} of them have`} to be scribed`) : [];
}
