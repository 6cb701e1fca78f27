import type { Ceiling } from '../ceiling/model.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { hits, placed, type Placed } from './support/in-the-way.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What an eye takes for the middle. */
const MOST = inches('1/2');

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture lamp-1 light at 2' 1", 2' 3" wants coffer-center\n`);

export const fixtureOffCenter = defineRule({
    name: 'fixture-off-center',
    severity: 'warning',
    title: 'A fixture that should be in the middle of a coffer or of a beam is off it',
    explanation: `
A pendant in a coffer is seen against its four sides: over 1/2" off the middle shows. \`wants coffer-center\` asks for the middle of the
coffer that the fixture is in, \`wants beam-center\` for the middle of the nearest beam.

The first coffer is 48" x 54", so its middle is 2' from the west wall and 2' 3" from the north wall. A light at 2' 1" is 1" off. Have it
moved, or write \`centered-on\` with its name in the grid.`,
    wrong,
    right: changed(wrong, `at 2' 1", 2' 3"`, `at 2', 2' 3"`),
    basis: '1/2": common practice, no source.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const one of placed(room.fixtures)) {
                const { wants, name } = one.fixture;
                if (!wants || wants.value === 'anywhere') continue;
                const off = wants.value === 'beam-center' ? offBeam(one, ceiling) : hits(one, one.half, ceiling).length > 0 ? undefined : offCoffer(one, ceiling);
                if (!off || Math.abs(off.east) <= MOST && Math.abs(off.south) <= MOST) continue;
                const ways = [off.east === 0 ? [] : [`${size.off(Math.abs(off.east))} ${off.east > 0 ? 'east' : 'west'}`], off.south === 0 ? [] : [`${size.off(Math.abs(off.south))} ${off.south > 0 ? 'south' : 'north'}`]].flat();
                report({ ...wordsOf(wants), message: `${name} is ${ways.join(' and ')} of the middle of ${off.of}; up to 1/2" passes for the middle. Have it moved, or move the lines: \`centered-on\`.` });
            }
        },
    },
});

interface Off { readonly of: string; readonly east: Ticks; readonly south: Ticks }

function offCoffer({ x, y }: Placed, { coffers }: Ceiling): Off | undefined {
    const coffer = coffers.find(({ west, east, north, south }) => x >= west && x <= east && y >= north && y <= south);
    return coffer && { of: `coffer ${coffer.number}`, east: x - Math.round((coffer.west + coffer.east) / 2), south: y - Math.round((coffer.north + coffer.south) / 2) };
}

/** Of the beam whose middle is nearest. */
function offBeam({ x, y }: Placed, { lines }: Ceiling): Off | undefined {
    const all = lines.map(({ name, runs, low, high }): Off => {
        const middle = Math.round((low + high) / 2);
        return { of: `line ${name}`, east: runs === 'north-south' ? x - middle : 0, south: runs === 'north-south' ? 0 : y - middle };
    });
    return all.sort((a, b) => Math.abs(a.east + a.south) - Math.abs(b.east + b.south))[0];
}
