import type { Ceiling, Derived, Line, Section } from '../../ceiling/model.ts';
import type { JobSettings } from '../../job/model.ts';
import { inInches, inMillimeters } from '../../language/elaborate/print.ts';
import { whyText } from '../../provenance/why-text.ts';
import { sumOf, term, type Why } from '../../provenance/why.ts';
import { printLength } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import { cofferSizes, counted, fitOfBottom } from './words.ts';

/** `7 1/2" (190.5 mm)`, the job's own system first. */
export function inBoth(ticks: Ticks, { show }: JobSettings): string {
    const inches = inInches(ticks), millimeters = inMillimeters(ticks);
    return show.value === 'millimeters' ? `${millimeters} (${inches})` : `${inches} (${millimeters})`;
}

/** Depth, width and fit of a beam, each with its sum. */
export function beamInWords(section: Section, job: JobSettings): string {
    const fit = fitOfBottom(section, job);
    return [
        section.depth && `- ${inBoth(section.depth.ticks, job)} deep: ${why(section.depth, job)}`,
        section.outerWidth && `- ${inBoth(section.outerWidth.ticks, job)} wide: ${why(section.outerWidth, job)}`,
        section.fit && fit && `- bottom ${fit}${offBy(section.fit, job)}: ${why(section.fit, job)}`,
    ].filter(line => line).join('\n');
}

/** What a line of a profile decides, with its sum. */
export function partInWords(word: string, section: Section, job: JobSettings): readonly string[] {
    const fit = fitOfBottom(section, job);
    switch (word) {
        case 'sides': case 'held-down': return section.depth ? [`beam ${inBoth(section.depth.ticks, job)} deep: ${why(section.depth, job)}`] : [];
        case 'blocking': return section.outerWidth ? [`beam ${inBoth(section.outerWidth.ticks, job)} wide: ${why(section.outerWidth, job)}`] : [];
        case 'bottom': case 'gap': return section.fit && fit ? [`bottom ${fit}${offBy(section.fit, job)}: ${why(section.fit, job)}`] : [];
        case 'cleats': return section.cleatTop ? [`tops of the cleats ${inBoth(section.cleatTop.ticks, job)} below the ceiling: ${why(section.cleatTop, job)}`] : [];
        case 'spacers': case 'height': return section.spacerRoom ? [`room for the spacers ${inBoth(section.spacerRoom.ticks, job)}: ${why(section.spacerRoom, job)}`] : [];
        default: return [];
    }
}

/** How a wall is divided: the wall, less what stands at its ends and the beams across it, in so many coffers. */
export function runInWords(ceiling: Ceiling, run: 'across' | 'down'): readonly string[] {
    const { job } = ceiling.room;
    const { coffers, residue, lines, start, end } = ceiling[run];
    const wall = run === 'across' ? 'north' : 'east', length = run === 'across' ? ceiling.width : ceiling.length;
    if (coffers.length === 0) return [];
    const free = coffers.reduce((sum, coffer) => sum + coffer, 0);
    const ends = ceiling.band ? 'band' : 'wall side';
    const terms = [
        term('wall', 1, length),
        ...start === length - end ? (start === 0 ? [] : [term(ends, -2, start)]) : [term(`${ends} at one end`, -1, start), term(`${ends} at the other`, -1, length - end)],
        ...[...new Set(lines.map(widthOf))].map(width => {
            const same = lines.filter(line => widthOf(line) === width);
            return term(same.length === 1 ? `line ${same[0]!.name}` : 'line', -same.length, width);
        }),
    ];
    const sum: Why = { terms };
    const sizes = new Set(residue.cutCoffers);
    const said = sizes.size === 1 ? inBoth(residue.cutCoffers[0]!, job) : cofferSizes(ceiling[run], job);
    return [[
        `${counted(coffers.length, 'coffer')} along the ${wall} wall, ${coffers.length === 1 || sizes.size > 1 ? '' : 'each '}${said} clear`,
        ...sumOf(sum) === free ? [`: ${whyText(sum, free, job.show.value)}`] : [],
    ].join('')];
}

function widthOf({ low, high }: Line): Ticks {
    return high - low;
}

function why({ why, ticks }: Derived, job: JobSettings): string {
    return whyText(why, ticks, job.show.value);
}

function offBy({ tolerance }: Derived, job: JobSettings): string {
    const off = worstCase(tolerance);
    return off > 0 ? `, ± ${printLength(off, job.show.value)} at worst` : '';
}
