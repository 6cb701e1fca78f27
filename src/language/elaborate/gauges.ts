import type { GaugeLog, Room } from '../../job/model.ts';
import { isBroken } from '../types/broken.ts';
import type { Reading } from './reading.ts';

/** What gauges read, a log for each line. One of which what it is meant to be, or a reading, is not known is left out: nothing can be said of how it goes. */
export function gaugesOf(measured: Reading | undefined): Pick<Room, 'gauges'> {
    const property = measured?.block.declaration('gauge'), lines = measured?.block.entries.get('gauge')?.lines.filter(line => !isBroken(line)) ?? [];
    if (!measured || !property || lines.length === 0) return {};
    const gauges = lines.flatMap((words): GaugeLog[] => {
        const line = measured.line(words, property, 'Measured'), readings = line.each('value', found => line.ticks(found)), meant = line.length('meant');
        const of = line.text('of'), everyFound = line.found('every'), every = everyFound && line.count(everyFound), [first] = readings;
        if (!meant || !first || every === undefined || readings.length !== words.values.length) return [];
        return [{ at: first.at, readings: readings.map(({ value }) => value), meant, ...of && { of: of.value }, every }];
    });
    return gauges.length > 0 ? { gauges } : {};
}
