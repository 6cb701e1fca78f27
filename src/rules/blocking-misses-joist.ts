import type { Line } from '../ceiling/model.ts';
import type { JobSettings } from '../job/model.ts';
import { PLURAL } from '../job/part.ts';
import { capitalized, counted, listed } from '../plain/words.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { abreast, OFF_EDGE, reachAlong, type Held } from '../takeoff/holding.ts';
import { defineRule, type Found } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { heldBeams, WAY, WAYS, type HeldBeam } from './support/joist-words.ts';
import { sizesOf } from './support/words.ts';

const joists = `  ceiling {
    height  8' 6"
    joists  2x8 every 16" running north-south first-center 13" from west
  }
`;
const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n${joists}`);

export const blockingMissesJoist = defineRule({
    name: 'blocking-misses-joist',
    severity: 'error',
    title: 'Blocking runs between two joists, or far from one to the next',
    explanation: `
All that hangs there hangs on the screws through the blocking, and these hold in joists. A screw stays 3/8" off the edges of the joist
and of the board, so blocking that runs along a joist finds it as long as

    center of the blocking to center of the joist <= blocking/2 - 3/8" + joist/2 - 3/8"

which is 1 3/4" for blocking of 3 1/2" and a joist of 1 1/2". Joists 16" apart, the first 13" from the west wall, stand at
45" and 61": line 1 at 50 1/2" runs between them, and its blocking ends 2 1/2" from the nearest wood. Two coffers instead of three bring
a line to 77", where there is a joist. Or move the line, cross-block between the joists, or add backing before the ceiling is closed.

A short piece of blocking across the joists that lies between two of them finds none either. Where a joist is missing, so that blocking
runs farther from one screw to the next than the joists are apart and than the profile's screws are, it is a **warning**. So it is where
a narrow piece, as that of a half beam, crosses one joist alone: it hangs by a single screw, and can turn about it.

What was found to differ from the row is said by \`joist\`. What the joists themselves can carry is not computed: that is for licensed
people and the local code to say.`,
    wrong,
    right: changed(wrong, 'coffers-north  3', 'coffers-north  2'),
    basis: '3/8" off the edges of joist and board: common practice, no source. Geometry of the plan.',
    check: {
        room({ layout: { ceiling }, job, pieces }, report) {
            const size = sizesOf(job);
            for (const beam of heldBeams(ceiling, pieces)) {
                const { held, name, line, joists: { said: { every } }, words } = beam;
                const none = held.filter(({ finds }) => finds.length === 0);
                if (none.length > 0) report({ ...words, ...whereNone(none, none.length === held.length, beam, job) });
                const farApart = held.filter(({ finds, isFarApart }) => finds.length > 0 && isFarApart);
                const single = held.filter(hangsByOne);
                if (single.length > 0) report({ ...words, severity: 'warning', message: wordsOfOne(single, beam, size) });
                for (const { piece, open: { from, to } } of farApart.slice(0, MOST_TOLD)) {
                    report({
                        ...words, severity: 'warning',
                        message: `The blocking of ${name}${piece.bay === null ? '' : ` in bay ${piece.bay}`} is without a screw for ${size(to - from)}, from ${size(from)} to ${size(to)} along it from its ${endOf(line)} end; the joists are ${size(every.value)} apart. ${capitalized(WAYS)}.`,
                    });
                }
            }
        },
    },
});

/** It crosses one joist, and is too narrow for two screws side by side there. What is far from one screw to the next besides is told of that. */
function hangsByOne({ piece, finds, isFarApart }: Held): boolean {
    return finds.length === 1 && !finds[0]!.along && abreast(piece) === 1 && !isFarApart;
}

function wordsOfOne(single: readonly Held[], { name, held }: HeldBeam, size: (ticks: Ticks) => string): string {
    const [{ piece, finds: [found] }] = single as [Held], others = single.length - 1, all = single.length === held.length;
    return `The blocking of ${name}${all || piece.bay === null ? '' : ` in bay ${piece.bay}`} hangs by a single screw, into the joist at ${size(Math.round(found!.joist.center))}: it is ${size(piece.width)} wide, too narrow for two side by side, `
        + `and can turn about it.${others > 0 ? ` So ${others === 1 ? 'does one more piece' : `do ${others} more pieces`} of it.` : ''} ${capitalized(WAYS)}.`;
}

/** Less than this is rounding. */
const TELLS = 20;
const MOST_TOLD = 3;

function endOf(line: Line | undefined): string {
    return line?.runs === 'north-south' ? 'north' : line?.runs === 'east-west' ? 'west' : 'west or north';
}

/** Of pieces that find nothing: along the joists how far the line has to move, across them which pieces. */
function whereNone(none: readonly Held[], all: boolean, beam: HeldBeam, job: JobSettings): Pick<Found, 'message' | 'fixes'> {
    const { name, line, joists } = beam, size = sizesOf(job), { runs } = joists, axis = runs === 'north-south' ? 'x' : 'y', [{ piece }] = none as [Held];
    const places = piece.corners.map(corner => corner[axis]), low = Math.min(...places), high = Math.max(...places);
    const isAlong = high - low <= piece.width + TELLS;
    const bays = none.flatMap(({ piece: { bay } }) => bay ?? []), where = all ? '' : bays.length > 0 ? ` in ${bays.length === 1 ? 'bay' : 'bays'} ${listed(bays.map(String))}` : ` (${counted(none.length, 'piece')})`;
    if (!isAlong) {
        return { message: `Nothing to screw to: the ${PLURAL.blocking} of ${name}${where} ${all ? 'lies' : 'lies there'} between two joists and crosses none; they are ${size(joists.said.every.value)} apart. ${capitalized(WAYS)}.` };
    }
    const center = (low + high) / 2, far = (joist: { center: Ticks }): number => Math.abs(joist.center - center);
    const nearest = joists.all.reduce((best, joist) => (far(joist) < far(best) ? joist : best));
    const isBack = nearest.center < center, apart = far(nearest) - piece.width / 2 - nearest.half, way = isBack ? WAY[runs][0] : WAY[runs][1];
    // so far that a screw comes to the middle third of the board, and not to its edge alone: see hangs-by-one-edge.ts
    const reach = Math.min(reachAlong(piece.width, nearest), piece.width / 6 + Math.max(0, nearest.half - OFF_EDGE)), step = job.cutTo.value;
    const by = Math.ceil((far(nearest) - reach) / step) * step;
    const found = apart > 0 ? `the nearest wood, the joist at ${size(Math.round(nearest.center))}, is ${size.off(Math.round(apart))} ${way} of it`
        : `it ${apart < 0 ? 'laps' : 'only touches'} the joist at ${size(Math.round(nearest.center))}${apart < 0 ? ` by ${size.off(Math.round(-apart))}` : ''}, and a screw stays ${size(OFF_EDGE)} off the edges of both`;
    return {
        message: `Nothing to screw to: ${name}${where} runs along the joists, between two of them. Its blocking reaches from ${size(Math.round(low))} to ${size(Math.round(high))} from the ${WAY[runs][0]}; ${found}. `
            + `${line ? `Move the line ${size(by)} ${way}, ${WAYS}` : capitalized(WAYS)}.`,
        fixes: beam.moved(isBack ? -by : by, `Move ${name} ${size(by)} ${way}`),
    };
}
