import { driftOf, LOOK, readingsToTell, SCRAP, type Drift } from '../measure/drift.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { sizesOf, type Sizes } from './support/words.ts';

const wrong = changed(HALL, '    through        north-south\n  }\n', `    through        north-south
  }

  measured {
    gauge  0.250", 0.251", 0.253", 0.254", 0.256" meant 1/4" of "rabbet of the sides"
  }
`);

export const cutterCreeps = defineRule({
    name: 'cutter-creeps',
    severity: 'warning',
    title: 'The readings of a gauge creep: the cutter moves, and will spoil a board',
    explanation: `
A bit slides in its collet, a fence creeps, a blade heats up: each board is cut a little deeper than the one before, and each reading by
itself looks well enough. Readings of the gauge, written in their order (\`gauge 0.250", 0.251", 0.253" meant 1/4" of "rabbet"\`), are
looked at for a trend that chance would hardly make: of at least four readings, all orders of them are counted, and a trend as clear as
theirs has to come up in no more than one in twenty.

Five readings from 0.250" to 0.256", one every five boards, rise by some 0.0015" a reading. At that rate the cut is 1/64" off, where a
board is to be looked at, after 31 more boards, and 1/32" off, where it is scrap, after 83. Set the cutter again before that, and begin a
new line of readings. A single reading over 1/64" off is told too, and over 1/32" it is an **error**.`,
    wrong,
    right: changed(wrong, '0.250", 0.251", 0.253", 0.254", 0.256"', '0.250", 0.251", 0.250", 0.249", 0.250"'),
    basis: 'Kendall\'s rank test of a trend, slope by Theil and Sen; 1/64" to look at, 1/32" to reject, a gauge every fifth board: common practice, no source.',
    check: {
        room({ layout: { room }, job }, report) {
            for (const log of room.gauges ?? []) {
                const drift = driftOf(log), size = sizesOf(job), { worst } = drift, isOff = Math.abs(worst.off) > LOOK;
                if (!isOff && !drift.creeps) continue;
                const what = log.of ?? `cut of ${size.fine(log.meant.value)}`;
                const off = isOff ? ` Reading ${worst.reading} is ${size.fine(Math.abs(worst.off))} ${worst.off > 0 ? 'over' : 'under'} ${size.fine(log.meant.value)}: ${Math.abs(worst.off) > SCRAP ? 'such a board is scrap' : 'look at that board'}.` : '';
                report({
                    at: log.at, severity: Math.abs(worst.off) > SCRAP ? 'error' : isOff || (drift.untilLook ?? Infinity) < SOON ? 'warning' : 'hint',
                    message: `${drift.creeps ? creepWords(drift, what, size) : `The ${what} is off.`}${off}`,
                });
            }
        },
    },
});

/** So many boards ahead it is more than a hint. Common practice, no source. */
const SOON = 50;

function creepWords({ slope, log: { every }, untilLook, untilScrap }: Drift, what: string, size: Sizes): string {
    const many = readingsToTell(slope), boards = many * every, readings = many === 1 ? 'reading' : `${many} readings`;
    const rate = `The ${what} creeps: ${size.fine(many * Math.abs(slope))} ${slope > 0 ? 'more' : 'less'} with every ${readings}, ${boards === 1 ? 'every board' : `${boards} boards`}.`;
    if (untilLook === undefined) return `${rate} It goes towards what it is meant to be; watch where it stops.`;
    const when = (boards: number): string => (boards === 0 ? 'now' : boards === 1 ? 'after one more board' : `after ${boards} more boards`);
    return `${rate} At that rate it is ${size.fine(LOOK)} off ${when(untilLook)}, and ${size.fine(SCRAP)}, scrap, ${when(untilScrap!)}. Set the cutter again before that.`;
}
