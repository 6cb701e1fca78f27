import type { Ceiling, Line } from '../ceiling/model.ts';
import type { JobSettings, Screws } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import { inches, millimeters } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { threadOf } from '../takeoff/thread.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { adding, spelled } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What of a screw stands in the joist at least, and what is wished for. */
const LEAST = inches('1'), WISHED = inches('1 1/4');
/** Lengths that wood screws are sold in. Common practice, no source. */
const INCH_LENGTHS = ['1 1/4', '1 5/8', '2', '2 1/4', '2 1/2', '3', '3 1/2', '4', '5', '6'].map(inches);
const METRIC_LENGTHS = [30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120].map(millimeters);

const ceiling = `  ceiling {
    height    8' 6"
    covering  gypsum thickness 5/8"
    joists    2x8 every 16" running east-west first-center 8 1/2" from north
  }
`;
const wrong = changed(changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n${ceiling}`), '  blocking { stock poplar-1x4 }', '  blocking { stock poplar-1x4; screws #8 x 1 5/8" every 16" }');

export const screwFindsLittle = defineRule({
    name: 'screw-finds-little',
    severity: 'error',
    title: 'The screws of the blocking hardly reach into the joists',
    explanation: `
A screw goes through the blocking, the panel over the coffers if there is one, and the ceiling's covering, before it finds the joist:

    thread in wood = screw - blocking - panel - covering

A #8 screw of 1 5/8" through 3/4" of blocking and 5/8" of gypsum has 1/4" left for the joist. It needs 1": take 2 1/2". From 1" to
1 1/4" it is a **hint**.

It is looked at where the room says its joists and how thick the covering is; plaster on lath is measured through a hole. What the
screws have to hold, and what of it a joist can carry, is for licensed people and the local code to say.`,
    wrong,
    right: changed(wrong, '#8 x 1 5/8"', '#8 x 2 3/4"'),
    basis: '1" at least, 1 1/4" wished for, and the lengths on sale: common practice, no source.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling?.room.joists) return;
            const size = sizesOf(job);
            for (const { screws, through, lines } of screwsIn(ceiling)) {
                const { length, gauge, every } = screws.value, thread = length - through.total;
                if (thread >= WISHED) continue;
                const better = (job.show.value === 'millimeters' ? METRIC_LENGTHS : INCH_LENGTHS).find(each => each >= through.total + WISHED);
                const parts = [`${size(through.blocking)} of blocking`, ...through.back > 0 ? [`${size(through.back)} of panel`] : [], `${size(through.covering)} of ${ceiling.room.covering!.kind.value}`];
                const long = thread > 0 ? `has ${size(thread)} in the joist` : 'does not reach the joist';
                report({
                    ...wordsOf(screws), severity: thread < LEAST ? 'error' : 'hint',
                    message: `A #${gauge} screw of ${size(length)} ${long}, after ${parts.join(' and ')}. ${thread < LEAST ? `It needs ${size(LEAST)}` : `${size(WISHED)} is better`}: ${better === undefined ? `${size(through.total + WISHED)} or more` : `use ${size(better)}`}.`,
                    fixes: fixFor({ gauge, every }, better, lines, ceiling, job),
                });
            }
        },
    },
});

interface InUse { readonly screws: Given<Screws>; readonly through: NonNullable<ReturnType<typeof threadOf>>['through']; readonly lines: readonly Line[] }

/** The screws of every profile that a line or a half beam uses, once each. */
function screwsIn(ceiling: Ceiling): InUse[] {
    const all = new Map<string, InUse>();
    const halves = Object.values(ceiling.around).flatMap(own => (own?.kind === 'half-beam' ? [{ section: own.section, line: undefined }] : []));
    for (const { section, line } of [...ceiling.lines.map(line => ({ section: line.section, line })), ...halves]) {
        const screws = section.profile.blocking?.screws, through = threadOf(section, ceiling)?.through;
        if (!screws || !through) continue;
        const before = all.get(section.profile.key);
        all.set(section.profile.key, { screws, through, lines: [...before?.lines ?? [], ...line ? [line] : []] });
    }
    return [...all.values()];
}

/** The grid's own beams get other screws in this room; the profile may be right in others. */
function fixFor({ gauge, every }: Omit<Screws, 'length'>, length: Ticks | undefined, lines: readonly Line[], { room: { grid, lines: own } }: Ceiling, job: JobSettings): ReturnType<typeof adding> {
    const [long, apart] = [length, every].map(ticks => (ticks === undefined ? undefined : spelled(ticks, job)));
    const isOfGrid = grid.beams && lines[0]?.section.profile === grid.beams.value && !own.some(({ beams }) => beams);
    return isOfGrid && long && apart ? adding(grid, `beams.blocking.screws  #${gauge} x ${long} every ${apart}`, `Use ${long} screws in this room`) : [];
}
