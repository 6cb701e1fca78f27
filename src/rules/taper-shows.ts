import type { Ceiling } from '../ceiling/model.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import type { Direction } from '../job/model.ts';
import { inches } from '../quantity/rational.ts';
import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { counted } from '../plain/words.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { sizesOf } from './support/words.ts';

/** More than this in one coffer is seen. Common practice, no source. */
const SEEN = inches('3/16');
/** Degrees off square: what leans more is meant so, as beside the slanted wall of a bay. Common practice, no source. */
const MEANT = 5;

const wrong = changed(changed(HALL,
    'wall east   9\' 5"', 'wall east   9\' 5"\n  wall south  12\' 9"\n  wall west   9\' 5"\n  diagonal    north-west to south-east measures 15\' 11"'),
    'through        north-south', 'through        north-south\n    lay-north-south  by-wall')
    .replace('edition 1\n', 'edition 1\n\njob "Mill Lane 3" { cut-to 1/64" }\n');

export const taperShows = defineRule({
    name: 'taper-shows',
    severity: 'warning',
    title: 'The taper of the room stands in one coffer, where it is seen',
    explanation: `
Where two walls are not parallel, the coffers cannot all be. Lines that run parallel to each other, square to a wall, leave the whole
taper to the coffers at the walls; over 3/16" in one coffer shows, from where it has come to that.

In a hall that is 12' 10" wide in the north and 12' 9" in the south, two rows of three coffers with their lines square to the north
wall leave 15/32" in each coffer along the west wall. Fanned, with \`lay-north-south fanned\`, every one of the six takes a sixth of
that inch, 5/32". What is over 3/16" even so goes into the band, or into more coffers.`,
    wrong,
    right: changed(wrong, 'by-wall', 'fanned'),
    basis: 'Plane geometry; 3/16" in one coffer: common practice, no source.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling || ceiling.square || ceiling.walls.length !== 4) return;
            const print = sizesOf(job), size = (ticks: Ticks): string => print(roundTo(ticks, Math.max(1, job.cutTo.value)));
            const { grid } = ceiling.room, { coffers } = arrangedOf(ceiling).exact;
            for (const runs of ['north-south', 'east-west'] as const) {
                const laying = runs === 'north-south' ? grid.layNorthSouth : grid.layEastWest;
                const seen = tapersOf(coffers, runs).filter(({ by }) => by > SEEN).sort((a, b) => b.by - a.by), worst = seen[0];
                if (!worst || laying?.how === 'falling' || laying?.how === 'rising') continue;
                const others = seen.length === 1 ? '' : `, and ${counted(seen.length - 1, 'other coffer')} by more than ${size(SEEN)}`;
                report({
                    at: (laying ?? grid).at,
                    message: `Coffer ${worst.coffer} tapers by ${size(worst.by)}, from ${size(worst.long)} to ${size(worst.short)}${others}: `
                        + `more than ${size(SEEN)} in one coffer shows, from ${size(worst.deep * SEEN / worst.by)} from its ${runs === 'north-south' ? 'north' : 'west'} end on. `
                        + mendOf(ceiling, runs, laying?.how === 'fanned', size),
                });
            }
        },
    },
});

function mendOf({ walls, across, down }: Ceiling, runs: Direction, isFanned: boolean, size: (ticks: Ticks) => string): string {
    if (isFanned) return 'The lines are fanned, so each takes its share: more coffers take less each, or the band takes it.';
    const ends = walls.filter(({ from, to }) => (Math.abs(to.x - from.x) > Math.abs(to.y - from.y)) === (runs === 'north-south'));
    const whole = Math.abs((ends[0]?.length ?? 0) - (ends[1]?.length ?? 0)), count = across.coffers.length * down.coffers.length;
    return `Fan the lines, \`lay-${runs} fanned\`: then each of ${counted(count, 'coffer')} takes about ${size(whole / count)}.`;
}

interface Taper { readonly coffer: number; readonly by: Ticks; readonly long: Ticks; readonly short: Ticks; /** Along the lines. */ readonly deep: number }

/** What lies across lines of one direction: two edges of a coffer of four corners, which lie on opposite sides of it. */
function tapersOf(coffers: ReturnType<typeof arrangedOf>['exact']['coffers'], runs: Direction): Taper[] {
    const sides = runs === 'north-south' ? ['north', 'south'] : ['east', 'west'];
    return coffers.flatMap(({ number, edges, holes }): Taper[] => {
        if (edges.length !== 4 || holes.length > 0 || edges.some(({ angle }) => Math.abs(angle - 90) > MEANT)) return [];
        const across = edges.filter(({ on }) => sides.includes(on)).map(({ length }) => Math.round(length));
        if (across.length !== 2) return [];
        const [a, b] = across as [Ticks, Ticks], [c, d] = edges.filter(({ on }) => !sides.includes(on)).map(({ length }) => length) as [number, number];
        return [{ coffer: number, by: Math.abs(a - b), long: Math.max(a, b), short: Math.min(a, b), deep: (c + d) / 2 }];
    });
}
