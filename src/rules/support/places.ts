import type { Section } from '../../ceiling/model.ts';
import type { Spacing, Stock } from '../../job/model.ts';
import type { Given, Source } from '../../provenance/source.ts';
import type { Measure } from '../../quantity/measure.ts';

/** Where a finding about this value stands: its words, and the arguments it came through. */
export function wordsOf(given: Given<unknown>): { at: Source; via?: readonly Source[] } {
    return { at: given.at, via: given.via };
}

/** What says how wide a part is: its rip, or else its stock. */
export function widthSaidBy(part: { readonly rip?: Given<Measure>; readonly stock?: Given<Stock> } | undefined): Given<unknown> | undefined {
    return part?.rip ?? part?.stock;
}

/** What divides a run: the number of coffers, their size, or the first of the lines. */
export function spacingSaidBy(spacing: Spacing): Given<unknown> {
    switch (spacing.by) {
        case 'number': return spacing.coffers;
        case 'size': return spacing.size;
        case 'lines': return spacing.centers[0]!;
    }
}

/** How far the side is held down here, and whether that is the line's own figure rather than the profile's. */
export function heldDownOf({ profile, heldDown }: Section): { readonly given: Given<Measure>; readonly ofLine: boolean } | undefined {
    const ofProfile = profile.sides?.heldDown;
    const given = heldDown ?? ofProfile;
    return given && { given, ofLine: given !== ofProfile };
}
