import { inches } from '../quantity/rational.ts';
import { listed } from '../plain/words.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { placed, type Placed } from './support/in-the-way.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** From the edge of a register, or from the tips of a fan's blades. */
const OFF_AIR = inches('36');
/** The share of the ceiling's height from which on beams count for smoke. */
const DEEP = 10;

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"
  fixture alarm-1 smoke-alarm at 2', 2' 3" diameter 6"
  fixture grille  register at 2', 4' width 10"
`);

export const alarmInDraft = defineRule({
    name: 'alarm-in-draft',
    severity: 'warning',
    title: 'A smoke alarm is near a register or a fan, or between deep beams',
    explanation: `
Moving air keeps smoke from an alarm. Guides to NFPA 72 keep it 36" from registers and from the tips of a fan's blades (second-hand). In the
hall a register of 10" whose center is 21" from that of an alarm of 6" is 13" from it, edge to edge: have one of them moved, while the
ceiling is open.

Beams hold smoke back as well: where they are deeper than a tenth of the ceiling's height, 9 5/8" under 8', alarms may have to be in other
places, or more of them (NFPA 72, from memory); that is a **hint**. Which alarms a room has to have, and where, is for the code in force,
the maker's sheet and a licensed alarm contractor to say.`,
    wrong,
    right: changed(wrong, `at 2', 4' width`, `at 2', 7' width`),
    basis: '36" from moving air: guides to NFPA 72, second-hand; a tenth of the height: NFPA 72, from memory; the code in force decides.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            const all = placed(room.fixtures), size = sizesOf(job), { height } = room;
            const depth = Math.max(0, ...ceiling?.lines.map(({ section }) => section.depth.ticks) ?? []);
            for (const alarm of all) {
                const { fixture: { name, kind, at, wants } } = alarm;
                if (kind !== 'smoke-alarm') continue;
                const near = all.filter(({ fixture }) => fixture.kind === 'register' || fixture.kind === 'fan')
                    .map(other => ({ name: other.fixture.name, away: Math.round(edgeOff(other, alarm) - alarm.half) }))
                    .filter(({ away }) => away < OFF_AIR);
                if (near.length > 0) {
                    report({
                        at, message: `${name} is ${listed(near.map(other => `${size(Math.max(0, other.away))} from ${other.name}`))}: guides to NFPA 72 keep an alarm ${size(OFF_AIR)} from moving air (second-hand). `
                            + 'Have one of them moved; the code in force, the maker and a licensed alarm contractor decide where.',
                    });
                }
                if (height && depth * DEEP > height.value && wants?.value !== 'beam-center') {
                    report({
                        ...wordsOf(height), severity: 'hint',
                        message: `Beams ${size(depth)} deep are more than a tenth of the height of ${size(height.value)}: ${name} may want another place, or there may have to be more alarms (NFPA 72, from memory). Ask a licensed alarm contractor.`,
                    });
                }
            }
        },
    },
});

/** From a place to the nearest edge of something. */
function edgeOff({ x, y, half, halves }: Placed, to: Placed): number {
    const dx = Math.abs(to.x - x), dy = Math.abs(to.y - y);
    return halves ? Math.hypot(Math.max(0, dx - halves.x), Math.max(0, dy - halves.y)) : Math.hypot(dx, dy) - half;
}
