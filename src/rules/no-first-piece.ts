import type { Ceiling } from '../ceiling/model.ts';
import type { RelatedPlace } from '../findings/finding.ts';
import { bestThrough, webOfCeiling } from '../putup/closing/best-through.ts';
import { bottomRuns } from '../takeoff/closing/bottoms.ts';
import { waitingRing } from '../putup/closing/first-piece.ts';
import { judge } from '../putup/closing/web.ts';
import { linesOfCrossing } from '../ceiling/coffers.ts';
import type { Piece } from '../takeoff/model.ts';
import { takeOffOf } from '../takeoff/take-off.ts';
import { defineRule } from './rule.ts';
import { bottomsNamed, fixOf, turnedWords, turning } from './support/closing-words.ts';
import { BEAM, changed } from './support/examples.ts';

const right = changed(`${BEAM}
room parlor {
  wall north  12' 11 1/2"
  wall east   12' 11 1/2"

  grid {
    coffers-north  3
    coffers-east   3
    beams          hall-box
    through        north-south
    perimeter { kind band; stock poplar-1x6 }
  }
  crossing A1 { through A }
  crossing A2 { through 2 }
  crossing B2 { through B }
  crossing B1 { through B }
}
`, 'bottom { stock poplar-1x4 }', 'bottom { stock poplar-1x4; biscuits 1 x #10; closing slots-opened }');

export const noFirstPiece = defineRule({
    name: 'no-first-piece',
    severity: 'error',
    title: 'Bottoms wait for each other in a ring, so that none can go up first',
    explanation: `
Where two lines cross, the bottom that runs through has to be up before those that butt against its edge: their biscuits stick
into it from the side, and a bottom only goes up. Where every crossing is said for itself it may happen that each waits for
the next. Four crossings are enough: A runs through at A1, 2 at A2, B at B2 and 1 at B1, like the blades of a pinwheel. Then A
butts against 2, 2 against B, B against 1, and 1 against A: no piece is the first.

Turn one of the crossings. Without biscuits nothing waits, and nothing is told.`,
    wrong: changed(right, 'crossing B1 { through B }', 'crossing B1 { through 1 }'),
    right,
    basis: 'That what has biscuits in its edges goes up first follows from how a bottom moves; common practice, no source.',
    check: {
        room({ layout: { ceiling } }, report) {
            if (!ceiling || !mayWait(ceiling)) return;
            const web = webOfCeiling(ceiling);
            if (!judge(web, web.meetings.map(({ now }) => now)).cycle) return;
            const ring = waitingRing(bottomRuns(ceiling, takeOffOf(ceiling)));
            if (!ring) return;
            const [said, ...others] = saidOf(ring, ceiling), { room } = ceiling, best = bestThrough(ceiling);
            const names = ring.map(piece => bottomsNamed([piece]));
            report({
                at: said ?? room.grid.through.at,
                message: `No bottom can go up first: ${names.map((name, i) => `${i === 0 ? name : 'which'} waits for ${names[(i + 1) % names.length]}`).join(', ')}. `
                    + (best?.as ? `Turn a crossing: ${turnedWords(best.turned)}.` : 'Turn one of the crossings, or leave the biscuits out of one of these joints.'),
                related: others.map((at): RelatedPlace => ({ at, message: 'said here too' })),
                fixes: best?.as ? fixOf(`Run ${turnedWords(best.turned)}`, [turning(best.turned, room)], true) : [],
            });
        },
    },
});

/** Where nobody says anything of single crossings, and no line ends at another, all lines of one direction run through. */
function mayWait({ room, lines }: Ceiling): boolean {
    return room.crossings.length > 0 || lines.some(({ passes }) => passes.some(({ stem }) => stem !== null));
}

/** The crossings that are said of two of the lines in the ring; else where the lines are said. */
function saidOf(ring: readonly Piece[], { room, lines }: Ceiling) {
    const names = new Set(ring.map(({ line }) => line));
    const crossings = room.crossings.filter(({ name }) => linesOfCrossing(name, lines)?.every(line => names.has(line.name)));
    const specs = room.lines.filter(({ name }) => names.has(name));
    return [...crossings.map(({ through, at }) => through?.at ?? at), ...specs.map(({ at }) => at)];
}
