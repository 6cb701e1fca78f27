import type { Air, Seasons } from '../../job/seasons.ts';
import type { Given } from '../../provenance/source.ts';
import { sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import type { Reading } from './reading.ts';

/** Degrees where nobody says them. */
const USUAL = { 'feet-inches': 70, 'millimeters': 21 } as const;

/** The seasons of a house or a room; none where its block does not say both, or says the dampest drier than the driest. */
export function readSeasons(outer: Reading, show: keyof typeof USUAL): Seasons | undefined {
    const reading = outer.inner('seasons'), word = reading?.block.words[0];
    if (!reading || !word) return undefined;
    const driest = airOf(reading, 'driest', show), dampest = airOf(reading, 'dampest', show), wet = shareOf(reading, 'goes-up-at');
    if (!driest || !dampest) return undefined;
    if (driest.value.humidity >= dampest.value.humidity) {
        reading.evaluator.raise({ rule: 'out-of-range', at: driest.at, ...driest.via && { via: driest.via }, message: `The driest season is not drier than the dampest: ${percent(driest.value.humidity)} and ${percent(dampest.value.humidity)}.` });
        return undefined;
    }
    return { at: sourceOfProperty(word.line, 'path', word.index), driest, dampest, ...wet && { goesUpAt: { ...wet, value: wet.value * 100 } } };
}

function airOf(reading: Reading, name: 'driest' | 'dampest', show: keyof typeof USUAL): Given<Air> | undefined {
    const humidity = shareOf(reading, name), at = reading.found(name, 'at');
    const degrees = at ? at.known.value.is === 'quantity' ? at.known.value.exact.valueOf() : undefined : USUAL[show];
    if (!humidity || degrees === undefined) return undefined;
    return { ...humidity, value: { humidity: humidity.value, celsius: show === 'millimeters' ? degrees : (degrees - 32) / 1.8 } };
}

/** A share of 1 that is more than nothing, and less than all. */
function shareOf(reading: Reading, name: string): Given<number> | undefined {
    const given = reading.number(name);
    if (!given || given.value > 0 && given.value < 1) return given;
    reading.evaluator.raise({ rule: 'out-of-range', at: given.at, ...given.via && { via: given.via }, message: `${quoted(name)} has to be more than 0% and less than 100%.` });
    return undefined;
}

function percent(share: number): string {
    return `${Number((share * 100).toFixed(1))}%`;
}
