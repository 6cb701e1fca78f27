import { joistsOf } from '../ceiling/joists.ts';
import { reachAt } from '../ceiling/flanks.ts';
import type { Ceiling, Line } from '../ceiling/model.ts';
import { placeAlong, unitOf } from '../ceiling/along.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { hits, placed, type Placed } from './support/in-the-way.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What the recessed parts of a light that is not marked IC keep off what burns. */
const OFF_WOOD = inches('1/2');

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture can-1 light at 4' 2 1/2", 2' 3" diameter 3" housing 3" rated non-ic wants beam-center\n`);

export const lightTooNearWood = defineRule({
    name: 'light-too-near-wood',
    severity: 'warning',
    title: 'The housing of a recessed light is nearer to wood than the code has it, or in a joist',
    explanation: `
The recessed parts of a light that is not marked IC stay 1/2" off all that burns (NEC 410.116, from memory); the trim that shows and the
points that hold it may touch. In a beam that is the sides, above the ceiling the joists.

    room at each side = (inside of the beam - housing) / 2 - how far it is off the middle

A housing of 3" in the middle of a beam that is 3 1/2" inside has 1/4" at each side: take one of 2 1/2" or less, one that is marked IC,
or another place. Beside a beam the sides, the blocking and the band count. No housing goes where a joist is.

It is looked at where the light's line says its \`housing\`, and how it is \`rated\`. The maker's label, the local code and a licensed
electrician come first.`,
    wrong,
    right: changed(wrong, 'housing 3"', 'housing 2 1/2"'),
    basis: '1/2" from what burns, of a light not marked IC: NEC 410.116, from memory; the local code decides. Geometry of the plan.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const one of placed(room.fixtures)) {
                const { fixture: { name, kind, housing, rated } } = one;
                if (kind !== 'light' || !housing) continue;
                const joist = nearestJoist(one, housing.value, ceiling);
                if (joist < 0) {
                    report({ ...wordsOf(housing), message: `The housing of ${name}, ${size(housing.value)} across, reaches ${size(Math.round(-joist))} into a joist. Move the light, or have the joists headed off by somebody who may.` });
                    continue;
                }
                if (rated?.value !== 'non-ic') continue;
                const near = [{ room: joist, of: 'a joist' }, ...besideBeam(one, housing.value, ceiling)].reduce((nearest, each) => (each.room < nearest.room ? each : nearest));
                if (near.room >= OFF_WOOD) continue;
                report({
                    ...wordsOf(housing),
                    message: `The housing of ${name}, ${size(housing.value)} across, is ${near.room > 0 ? `only ${size(Math.round(near.room))} from` : 'against'} ${near.of}; not marked IC it keeps ${size(OFF_WOOD)} off wood (NEC 410.116, from memory). `
                        + 'Take a smaller one or one that is marked IC, or move it. The maker, the local code and a licensed electrician decide.',
                });
            }
        },
    },
});

/** From the edge of a housing to that of the nearest joist; endlessly far where nobody knows of any. */
function nearestJoist({ x, y }: Placed, housing: Ticks, ceiling: Ceiling): number {
    const joists = joistsOf(ceiling), at = joists?.runs === 'north-south' ? x : y;
    return Math.min(...(joists?.all ?? []).map(({ center, half }) => Math.abs(center - at) - half - housing / 2));
}

/** In a beam the room to its sides; beside one, to its face. */
function besideBeam(one: Placed, housing: Ticks, ceiling: Ceiling): { readonly room: number; readonly of: string }[] {
    const line = ceiling.lines.find(each => isIn(one, each));
    if (line) return [{ room: line.section.innerWidth.ticks / 2 - Math.abs(asideOf(one, line)) - housing / 2, of: `the sides of line ${line.name}` }];
    return hits(one, housing / 2 + OFF_WOOD, ceiling).map(({ name, by }) => ({ room: OFF_WOOD - by, of: name }));
}

function isIn(one: Placed, line: Line): boolean {
    const along = placeAlong(line, one);
    const aside = asideOf(one, line);
    return Math.abs(aside) < reachAt(line, aside > 0 ? 'left' : 'right') && along >= line.start && along <= line.end;
}

function asideOf({ x, y }: Placed, line: Line): number {
    const u = unitOf(line);
    return (x - line.spot.x) * u.y - (y - line.spot.y) * u.x;
}
