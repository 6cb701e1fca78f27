import type { Trouble } from '../ceiling/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, '\n  grid {', '\n  line C { at 1\' 6" from wall-west; until 1 }\n\n  grid {');

export const lineGoesNowhere = defineRule({
    name: 'line-goes-nowhere',
    severity: 'error',
    title: 'A line cannot run as it is written',
    explanation: `
A line needs something to end at on either end, with a whole face to stand against: a wall, a band, a half beam, the side
of a line that runs across there. It may not run through a wall, and it may not be deeper than the line or the half beam that it
ends at. And it has to stay far enough from a corner that juts into the room, of a chimney breast or a bay, that the trim goes around it,
and from a corner of two walls that the trim between its end and that corner is longer than its miters take. Where two lines end
at each other, as in a ring, their corner stays within the room.

A line that stands 1' 6" from the west wall runs north-south, as line 1 does: it never reaches it. Let it stop at line A, which
runs across.`,
    wrong,
    right: changed(wrong, 'from wall-west; until 1', 'from wall-west; until A'),
    basis: 'Plane geometry; what is deeper than its end has nothing to hide its end: common practice, no source.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job), walls = new Set(layout.room.walls.map(({ name }) => name));
            const named = (of: string): string => (walls.has(of) ? `the ${of} wall` : `line ${of}`), step = Math.max(1, job.cutTo.value);
            for (const { line, why, at } of troublesOf(layout, 'line-goes-nowhere')) {
                const up = (ticks: Ticks): Ticks => Math.ceil(ticks / step) * step;
                const said = 'by' in why ? { ...why, by: up(why.by) } : 'wants' in why ? { ...why, leaves: Math.floor(why.leaves / step) * step, wants: up(why.wants) } : why;
                report({ at, message: `Line ${line} ${wordsOf(said, size, named)}` });
            }
        },
    },
});

function wordsOf(why: Extract<Trouble, { kind: 'line-goes-nowhere' }>['why'], size: (ticks: Ticks) => string, named: (of: string) => string): string {
    switch (why.kind) {
        case 'never-gets-there': return `never reaches ${named(why.to)}: it runs along it, or away from it. Let it end at something that runs across it.`;
        case 'misses': return `passes the end of ${named(why.to)}: that does not reach that far. Let it end at something that does, or let ${named(why.to)} run on.`;
        case 'leaves-the-room': return `runs through ${named(why.to)}, out of the room. Give where it begins and stops: \`from\`, \`until\`.`;
        case 'on-a-wall': return `stands on the line of ${named(why.to)}: half of it would end there, and half run on beside it. Move it by half its width, ${size(why.by)}, or more, so that one wall has all of its end.`;
        case 'grazes': return `runs into the corner of wall ${why.to}, or what runs along it there, by ${size(why.by)}. Move it by that, or let it stop at that wall: \`from\`, \`until\`.`;
        case 'sticks-out': return `meets ${named(why.other)} in a corner that sticks out through ${named(why.to)}, or through what runs along it, by ${size(why.by)}. Move one of them, or both, farther into the room.`;
        case 'outside': return 'stands outside of the room, with the lines that it ends at. Move them in.';
        case 'crowds': return `leaves ${size(why.leaves)} to the corner of ${named(why.to)}, and the trims along the line and around that corner need ${size(why.wants)}. Move it, or let it stop at that wall: \`from\`, \`until\`.`;
        case 'shortens': return `leaves ${size(why.leaves)} of an edge along ${named(why.to)}, and the miters of the trim on it take ${size(why.wants)}. Move it, so that it ends farther from the corner.`;
        case 'deeper-than-its-end': return `is ${size(why.deep)} deep and ends at ${named(why.to)}, which is ${size(why.has)} deep: its underside would hang below. Make ${named(why.to)} as deep, or deeper.`;
        case 'in-the-way': return `has no whole face to stand against at ${named(why.on)}: ${named(why.other)} is in the way by ${size(why.by)}. Move it by that, or let it end elsewhere.`;
    }
}
