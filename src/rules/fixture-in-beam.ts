import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { acrossWords, footOf, hits, placed, reachAbove } from './support/in-the-way.ts';
import { sizesOf } from './support/words.ts';
import { listed } from '../plain/words.ts';

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture lamp-1 light at 4' 4", 2' 3" diameter 6"\n`);

/** What is to be done where one of them is in the way: who may move it, and what is not for a carpenter to decide. */
const ADVICE: Readonly<Record<string, string>> = {
    'sprinkler': 'How near a beam a sprinkler may be, and who moves it, is for the code in force and a licensed sprinkler contractor to say.',
    'smoke-alarm': 'Where an alarm may hang is for the code in force and its maker to say.',
    'access-panel': 'It could not be opened any more.',
    'register': 'The beam would block it.',
};

export const fixtureInBeam = defineRule({
    name: 'fixture-in-beam',
    severity: 'error',
    title: 'A light, a register, a sprinkler or a box is where a beam or the band goes',
    explanation: `
What the ceiling holds already keeps its place until somebody moves it. A fixture reaches half its \`diameter\` (or \`width\`) from its
center; where that meets a beam, one of the two has to move. Where only its \`keep-clear\` meets one, it is a **warning**. A fixture that
\`wants beam-center\` is meant to be there.

A light of 6" across, 4' 4" from the west wall, reaches from 4' 1" to 4' 7"; line 1 stands from 4' to 4' 5". Move the light 4" east,
or the line. The same is checked for every alternate, and shown at the words that cause it.

A junction box under a beam would be buried: see \`box-buried\`. The blades of a fan turn below beams that are less deep than it \`hangs\`.
What may be near a sprinkler, an alarm or a recessed light is
for the code in force and licensed people to say; the program only says where things meet.`,
    wrong,
    right: changed(wrong, `at 4' 4", 2' 3"`, `at 2', 2' 3"`),
    basis: 'Geometry of the plan. What may be near a fixture: the local code decides.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const one of placed(room.fixtures)) {
                const { fixture: { name, kind, at, keepClear, wants }, half } = one;
                if (wants?.value === 'beam-center') continue;
                // a fixture whose size nobody says is a point
                const reached = hits(one, half, ceiling), clear = keepClear?.value ?? 0;
                const touching = reached.filter(hit => reachAbove(one, footOf(hit)) === half || hits(one, 0, ceiling).some(({ on }) => on === hit.on));
                if (kind === 'junction-box' && touching.length > 0) continue;        // box-buried says it
                const near = touching.length > 0 ? touching : clear > 0 && reached.length === 0 ? hits(one, half + clear, ceiling) : [];
                if (near.length === 0) continue;
                const within = touching.length > 0;
                const beams = [...new Set(near.map(hit => hit.name))];
                const where = within ? `where ${listed(beams)} ${beams.length > 1 ? 'go' : 'goes'}` : `closer to ${listed(beams)} than the ${size(clear)} to be kept clear`;
                const what = `${name}${acrossWords(one, size)} is ${where}`;
                const crossing = new Set(near.flatMap(({ on }) => ('runs' in on ? [on.runs] : []))).size > 1;
                report({
                    at, severity: within ? 'error' : 'warning',
                    message: `${what}${crossing ? ', at their crossing' : ''}. It is clear ${listed(near.map(({ by, way }) => `${size(Math.ceil(by / job.cutTo.value) * job.cutTo.value)} farther ${way}`))}; or move the beam. ${ADVICE[kind] ?? ''}`.trim(),
                    related: [...near.flatMap(({ on, name: beam }) => ('at' in on ? [{ at: on.at, message: `${beam} is set here` }] : [])), ...!within && keepClear ? [{ at: keepClear.at, message: 'this has to be kept clear around it' }] : []],
                });
            }
        },
    },
});
