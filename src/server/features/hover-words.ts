import { tapeOf } from '../../job/tape.ts';
import type { Ceiling, Derived, Line, Section } from '../../ceiling/model.ts';
import type { JobSettings, Room } from '../../job/model.ts';
import { inInches, inMillimeters } from '../../language/elaborate/print.ts';
import { dimensionsOf, isAsked } from '../../measure/dimensions.ts';
import { knownWords } from '../../job/status.ts';
import { t } from '../../pages/shared/words.ts';
import { whyText } from '../../provenance/why-text.ts';
import { sumOf, term, type Why } from '../../provenance/why.ts';
import { printLength } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import { coffers as count, cofferSizes, fitOfBottom } from './words.ts';

/** `7 1/2" (190.5 mm)`, the job's own system first. */
function inBoth(ticks: Ticks, { show }: JobSettings): string {
    const inches = inInches(ticks), millimeters = inMillimeters(ticks);
    return show.value === 'millimeters' ? `${millimeters} (${inches})` : `${inches} (${millimeters})`;
}

/** Depth, width and fit of a beam, each with its sum. */
export function beamInWords(section: Section, job: JobSettings): string {
    const fit = fitOfBottom(section, job);
    return [
        section.depth && `- ${t('{0} deep: {1}', inBoth(section.depth.ticks, job), why(section.depth, job))}`,
        section.outerWidth && `- ${t('{0} wide: {1}', inBoth(section.outerWidth.ticks, job), why(section.outerWidth, job))}`,
        section.fit && fit && `- ${t('bottom {0}: {1}', fit + offBy(section.fit, job), why(section.fit, job))}`,
    ].filter(line => line).join('\n');
}

/** What a line of a profile decides, with its sum. */
export function partInWords(word: string, section: Section, job: JobSettings): readonly string[] {
    const fit = fitOfBottom(section, job);
    switch (word) {
        case 'sides': case 'held-down': return section.depth ? [t('beam {0} deep: {1}', inBoth(section.depth.ticks, job), why(section.depth, job))] : [];
        case 'other-side': return section.other?.heldDown ? [t('other side held down {0}, to hang as low as the side', inBoth(section.other.heldDown.value.ticks, job))] : [];
        case 'blocking': return section.outerWidth ? [t('beam {0} wide: {1}', inBoth(section.outerWidth.ticks, job), why(section.outerWidth, job))] : [];
        case 'bottom': case 'gap': return section.fit && fit ? [t('bottom {0}: {1}', fit + offBy(section.fit, job), why(section.fit, job))] : [];
        case 'cleats': return section.cleatTop ? [t('tops of the cleats {0} below the ceiling: {1}', inBoth(section.cleatTop.ticks, job), why(section.cleatTop, job))] : [];
        case 'spacers': case 'height': return section.spacerRoom ? [t('room for the spacers {0}: {1}', inBoth(section.spacerRoom.ticks, job), why(section.spacerRoom, job))] : [];
        default: return [];
    }
}

/** How the length of a wall or the place of a fixture is known, once the room is asked for it. */
export function knownInWords(room: Room, kind: 'wall' | 'fixture', name: string): readonly string[] {
    if (!isAsked(room)) return [];
    const own = dimensionsOf(room).find(dimension => dimension.name === name && (kind === 'wall' ? dimension.kind === 'wall' : dimension.fixture !== undefined));
    return own ? [t('How it is known: {0}', knownWords(own))] : [];
}

/** How a wall is divided: the wall, less what stands at its ends and the beams across it, in so many coffers. */
export function runInWords(ceiling: Ceiling, run: 'across' | 'down'): readonly string[] {
    const { job } = ceiling.room;
    const { coffers, residue, lines, start, end } = ceiling[run];
    const length = run === 'across' ? ceiling.width : ceiling.length;
    if (coffers.length === 0) return [];
    const free = coffers.reduce((sum, coffer) => sum + coffer, 0);
    const ends = ceiling.band
        ? { each: t('band'), one: t('band at one end'), other: t('band at the other') }
        : { each: t('wall side'), one: t('wall side at one end'), other: t('wall side at the other') };
    const terms = [
        term(t('wall'), 1, length),
        ...start === length - end ? (start === 0 ? [] : [term(ends.each, -2, start)]) : [term(ends.one, -1, start), term(ends.other, -1, length - end)],
        ...[...new Set(lines.map(widthOf))].map(width => {
            const same = lines.filter(line => widthOf(line) === width);
            return term(same.length === 1 ? t('line {0}', same[0]!.name) : t('line'), -same.length, width);
        }),
    ];
    const sum: Why = { terms };
    const sizes = new Set(residue.cutCoffers);
    const said = sizes.size === 1 ? inBoth(residue.cutCoffers[0]!, job) : cofferSizes(ceiling[run], job);
    const sentence = run === 'across'
        ? coffers.length > 1 && sizes.size === 1 ? t('{0} along the north wall, each {1} clear', count(coffers.length), said) : t('{0} along the north wall, {1} clear', count(coffers.length), said)
        : coffers.length > 1 && sizes.size === 1 ? t('{0} along the east wall, each {1} clear', count(coffers.length), said) : t('{0} along the east wall, {1} clear', count(coffers.length), said);
    return [sumOf(sum) === free ? `${sentence}: ${whyText(sum, free, tapeOf(job))}` : sentence];
}

function widthOf({ low, high }: Line): Ticks {
    return high - low;
}

function why({ why, ticks }: Derived, job: JobSettings): string {
    return whyText(why, ticks, tapeOf(job));
}

function offBy({ tolerance }: Derived, job: JobSettings): string {
    const off = worstCase(tolerance);
    return off > 0 ? t(', ± {0} at worst', printLength(off, job.show.value)) : '';
}
