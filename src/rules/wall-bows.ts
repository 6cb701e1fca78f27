import type { JobSettings } from '../job/model.ts';
import { tapeOf } from '../job/tape.ts';
import { bowedWalls, CAULKED, LEAST_LEFT, TELLS, type BowedWall } from '../measure/bowed.ts';
import { alongWords, stretchWords } from '../measure/bowed-words.ts';
import { grouped } from '../plain/groups.ts';
import { capitalized, counted, listed } from '../plain/words.ts';
import { printMark } from '../quantity/print-length.ts';
import { PLURAL } from '../job/part.ts';
import { defineRule, type Found } from './rule.ts';
import { changed, HALL_WITH_BAND } from './support/examples.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL_WITH_BAND, `wall north  12' 11 1/2"\n`, `wall north  12' 11 1/2" {\n    hump  1/4" at 6'\n  }\n`);

export const wallBows = defineRule({
    name: 'wall-bows',
    severity: 'warning',
    title: 'A wall that is not straight or not plumb: what is scribed, and what is cut shorter',
    explanation: `
Pull a string from corner to corner and measure where the wall stands out past it (\`hump\`) or back behind it (\`hollow\`), and how far
it leans from where the tape was up to where the band goes (\`leans-in\`, \`leans-out\`). A band is kept straight, so that everything that
ends at it fits: where the wall stands out, its back is scribed; where it stands back, a gap stays, to be shimmed and, over 1/8", covered.
The bottom of a half beam is scribed by its edge at the wall, as far as its \`scribe\` leaves wood for that. Where nothing runs along the
wall, what ends at it is cut shorter; where all of a wall leans in, what runs along it moves in as well, and all that ends at it is cut
shorter by as much.

A hump of 1/4" in the middle of the hall's north wall takes 1/4" off the back of a band of 3/4" there, and less and less towards both
corners. What is left of a band has to be 3/8" at least: less is an **error**.`,
    wrong,
    right: changed(wrong, '1/4" at 6\'', '1/64" at 6\''),
    basis: 'Geometry of a string; straight between two readings, 3/8" and 1/8": common practice, no source.',
    check: {
        room({ layout: { ceiling }, job, pieces }, report) {
            if (!ceiling?.room.bows) return;
            for (const wall of bowedWalls(ceiling, pieces())) {
                for (const reading of wall.astray) report({ ...wordsOf(reading), severity: 'error', message: astrayWords(wall, reading, job) });
                const found = consequences(wall, job);
                if (found) report(found);
            }
        },
    },
});

function astrayWords({ wall }: BowedWall, { place, from }: BowedWall['astray'][number], job: JobSettings): string {
    const size = sizesOf(job);
    return `Wall ${wall.name} is ${size(wall.length)} long${from ? ` and is measured from its ${alongWords({ wall })} end` : ''}: ${size(place)}${from ? ` from ${from}` : ''} is no place on it. From which end was it measured?`;
}

/** One finding a wall, at the reading that is farthest off. */
function consequences(one: BowedWall, job: JobSettings): Found | undefined {
    const { wall, bow, runs, scribes, gaps, ends, moved } = one, mark = (ticks: number): string => printMark(Math.round(ticks), tapeOf(job));
    const worst = [...bow.readings.filter(reading => !one.astray.includes(reading)), ...bow.lean ? [bow.lean] : []]
        .sort((a, b) => Math.abs(b.value) - Math.abs(a.value))[0];
    const here = ends.filter(({ at }) => at === undefined), short = here.filter(({ by }) => by > 0), long = here.filter(({ by }) => by < 0 && moved !== 0);
    const what = runs?.kind === 'band' ? 'the band' : runs?.section.profile.solid ? 'the timber' : 'the bottom of the half beam';
    const deepest = Math.max(0, ...scribes.map(scribe => scribe.deepest.ticks)), left = runs?.kind === 'band' ? runs.thickness.ticks - deepest : Infinity;
    const open = gaps.filter(gap => gap.deepest.ticks > CAULKED);
    const told = [
        ...runs && Math.abs(moved) > TELLS ? [`it stands ${mark(Math.abs(moved))} farther ${moved > 0 ? 'into the room' : 'back'} than it was measured, and what runs along it does too`] : [],
        ...deepest > 0 ? [`${what} is scribed to it, ${listed(scribes.map(scribe => stretchWords(scribe, wall.length, mark)))}${left < LEAST_LEFT ? `, which leaves ${mark(left)} of it and not ${mark(LEAST_LEFT)}: have the wall planed, or fur the band out` : ''}`] : [],
        ...open.length > 0 ? [`behind ${what} a gap stays, ${listed(open.map(gap => stretchWords(gap, wall.length, mark)))}: shim it${runs?.kind === 'half-beam' ? `, and leave so much on the edge of ${runs.section.profile.solid ? 'it' : 'the bottom'} (\`scribe\`)` : ''}`] : [],
        ...short.length > 0 ? [`${endWords(short, mark)} ${short.length === 1 ? 'is' : 'are'} cut shorter where ${short.length === 1 ? 'it ends' : 'they end'} at it`] : [],
        ...long.length > 0 ? [`${endWords(long.map(end => ({ ...end, by: -end.by })), mark)} ${long.length === 1 ? 'is' : 'are'} cut longer, or what runs along it is shimmed out`] : [],
        ...besideWords(ends, mark),
    ];
    if (!worst || told.length === 0) return undefined;
    return { ...wordsOf(worst), ...left < LEAST_LEFT && { severity: 'error' as const }, message: `Wall ${wall.name} is not straight or not plumb under the ceiling. ${capitalized(told.join('; '))}.` };
}

/** What runs along a wall that moves loses or gains where it ends at one that nothing is said of, and that does not stand square to it. */
function besideWords(ends: BowedWall['ends'], mark: (ticks: number) => string): string[] {
    return [...grouped(ends.filter(({ at }) => at !== undefined), ({ at, by }) => `${at} ${Math.sign(by)}`).values()].map(own => {
        const most = Math.max(...own.map(({ by }) => Math.abs(by)));
        return `what runs along it is cut ${mark(most)} ${own[0]!.by > 0 ? 'shorter' : 'longer'} where it ends at wall ${own[0]!.at!}`;
    });
}

const MOST_NAMED = 3;

/** `blocking-2 by 1/4"`; of many how many of which part, and by how much at most. */
function endWords(ends: BowedWall['ends'], mark: (ticks: number) => string): string {
    if (ends.length <= MOST_NAMED) return listed(ends.map(({ piece, by }) => `${piece.id.replace(/^[^.]*\./, '')} by ${mark(by)}`));
    const parts = [...new Set(ends.map(({ piece }) => piece.part))];
    return `${counted(ends.length, 'end')} of ${listed(parts.map(part => PLURAL[part]))}, by ${mark(Math.max(...ends.map(({ by }) => by)))} at the most,`;
}
