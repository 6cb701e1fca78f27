import type { Recorded, Status } from '../../job/status.ts';
import type { Limit } from '../../job/settings.ts';
import type { Source } from '../../provenance/source.ts';
import type { Reading } from './reading.ts';
import type { Found, Values } from './values.ts';

/** Where a modifier of the line in question is found. */
type Modifier = (name: 'as' | 'on' | 'by') => Found | undefined;

/**
 * How a dimension is known, as the modifiers of its line say it. What has a day, or was found on site (`onSite`), counts as measured; a diagonal of which
 * nothing is said too, since nobody draws one. `at`: the words of the dimension.
 */
export function recordedBy(values: Values, found: Modifier, at: Source, onSite = false): Recorded {
    const as = values.given(found('as'), ({ known: { value } }) => (value.is === 'word' ? value.word as Status : undefined));
    const on = values.given(found('on'), ({ known: { value } }) => (value.is === 'date' ? value.text : undefined));
    const by = values.given(found('by'), ({ known: { value } }) => (value.is === 'text' ? value.text : undefined));
    const status = as ?? (onSite || on ? { value: 'measured' as const, at: on?.at ?? at, said: false } : undefined);
    return { ...status && { status }, ...on && { on: on.value }, ...by && { by: by.value } };
}

/** A length that limits what gets somewhere, with how it is known. */
export function limitOf(reading: Reading, name: 'longest-board' | 'longest-piece'): Limit | undefined {
    const limit = reading.length(name);
    return limit && { ...limit, ...recordedBy(reading, mod => reading.found(name, mod), limit.at) };
}
