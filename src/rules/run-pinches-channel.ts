import type { Run } from '../ceiling/model.ts';
import { playOf } from '../ceiling/section.ts';
import { shareOfEach } from '../ceiling/run-errors.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { spacingSaidBy, wordsOf } from './support/places.ts';
import { alongWall, linesNamed, sizesOf } from './support/words.ts';

/** A bottom that is tight by this is eased with a plane, and a gap that is wider by it is filled. Common practice, no source. */
export const EASED_IN_PLACE = inches('1/32');

const wrong = `${changed(HALL, 'edition 1\n', `edition 1

job "Ferry Road 3" {
  cut-tolerance  1/32"
}
`)}`;

export const runPinchesChannel = defineRule({
    name: 'run-pinches-channel',
    severity: 'warning',
    title: 'Errors in the lengths of the sides pinch or open the channels between them',
    explanation: `
Along a run n lines stand between n + 1 coffers, and from wall to wall nothing gives. Sides that are cut a little long push
the sides of the lines they end at together, and the n channels share the excess of the n + 1 coffers. With a
crosscut that may be off by t (\`cut-tolerance\`):

    at worst             (n + 1) t / n               all cuts off the same way
    root-sum-square      t sqrt(k1² + k2² + ...) / n

Pieces cut at one stop setting are off together: each k is how many coffers of the run share one setting. The sides of the
two end coffers have one miter less than the others, so they are a setting of their own.

It is reported where the root-sum-square goes more than 1/32" beyond the play, or beyond the gap that is asked for: less is eased
with a plane as the bottom goes in, or filled. Cuts within 1/64" never get there.

Three coffers, two lines, t = 1/32": each channel is up to 3/64" narrower or wider: as root-sum-square (k = 2 and 1) a little over
1/32", and at worst 3 x 1/32" / 2 = 3/64". A bottom without play binds; with a play of 1/64" a plane sees to it. Set the stop by a test
piece, so that cuts are within 1/64", rip the bottoms narrower, or fit the first bay dry and set the stop again.`,
    wrong,
    right: changed(wrong, 'cut-tolerance  1/32"', 'cut-tolerance  1/64"'),
    basis: 'Arithmetic; that the channels share the error evenly, and 1/32" eased in place: common practice, no source.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            const t = job.cutTolerance;
            if (!ceiling || !t) return;
            for (const [run, crossing] of [[ceiling.across, ceiling.down], [ceiling.down, ceiling.across]] as const) {
                if (crossing.lines.length === 0 || run.lines.length === 0) continue;      // no sides along the run, or no channel across it
                const { worst, usual } = shareOfEach(run, t.value);
                const inChannels = run.lines.filter(({ section }) => section.fit);                                  // a bottom under its sides is in none
                const pinched = inChannels.filter(({ section }) => playOf(section) >= 0 && usual - playOf(section) > EASED_IN_PLACE);
                const opened = inChannels.filter(
                    ({ section }) => playOf(section) <= mostOf(section.profile) && playOf(section) + usual - mostOf(section.profile) > EASED_IN_PLACE
                );
                const lines = pinched.length > 0 ? pinched : opened;
                if (lines.length === 0) continue;
                const size = sizesOf(job);
                const count = run.coffers.length;
                const fits = lines.map(line => playOf(line.section));
                const play = size(pinched.length > 0 ? Math.min(...fits) : Math.max(...fits));
                report({
                    ...wordsOf(spacingSaidBy(run.spacing)),
                    message: `Sides cut ${size.fine(t.value)} long or short ${alongWall(run.along)} pinch or open the channels of ${linesNamed(run.lines.map(line => line.name))}: `
                        + `${count} x ${size.fine(t.value)} / ${run.lines.length} = ${size.gap(worst)} each at worst, ${size.gap(usual)} as root-sum-square, `
                        + (pinched.length > 0
                            ? `and the bottom of ${linesNamed(lines.map(line => line.name))} has ${play} of play. Cut closer, leave it ${size.most(usual)}, or fit the first bay dry and set the stop again.`
                            : `and the gap beside the bottom of ${linesNamed(lines.map(line => line.name))} is ${play} already. Cut closer, leave less, or fit the first bay dry and set the stop again.`),
                    related: [{ at: t.at, message: `crosscuts may be off by ${size.fine(t.value)}` }],
                });
            }
        },
    },
});

const mostOf = (profile: Run['lines'][number]['section']['profile']): Ticks => profile.bottom?.gap.value.most ?? Infinity;
