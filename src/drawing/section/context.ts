import type { Ceiling, Line, Section } from '../../ceiling/model.ts';
import type { JobSettings, Room } from '../../job/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { SheetOptions } from '../sheet-options.ts';
import { lookOf } from '../../ceiling/flanks.ts';
import { grouped } from '../../plain/groups.ts';
import { listed } from '../../plain/words.ts';

/** Where a section stands: what is around it and what the sheet says of it. */
export interface SectionContext extends SheetOptions {
    readonly job: JobSettings;
    /** The room as it is called on drawings; undefined for a detail that stands for itself. */
    readonly room?: string;
    /** Names of the lines that are built so. */
    readonly lines: readonly string[];
    /** Where its flanks are unlike, on which side of which of these lines the other side is: `east of lines 1 and 2`. */
    readonly otherSides?: readonly string[];
    readonly covering?: Room['covering'];
    /** Depth of the band's lower edge, where there is one. */
    readonly bandEdge?: Ticks;
    /** Other lines cross it, and are seen beyond the cut. */
    readonly crossed: boolean;
}

/** One section of a ceiling with the lines that are built so. */
export interface SectionOfLines { readonly section: Section; readonly lines: readonly Line[] }

/** The sections of a ceiling, each once, in the order of the lines 1, 2, 3 …, A, B …. */
export function sectionsOf(ceiling: Ceiling): readonly SectionOfLines[] {
    const byKey = grouped(ceiling.lines, ({ section }) => `${section.profile.key} ${section.heldDown.value.ticks}`);
    return [...byKey.values()].map(lines => ({ section: withTrimOf(ceiling.beams, lines[0]!.section), lines }));
}

/** The trim of the grid's own beams goes round every coffer, also beside a line of another profile. */
function withTrimOf(beams: Section | undefined, section: Section): Section {
    if (beams === undefined || beams.profile === section.profile) return section;
    const { trimThickness, trimHeight } = beams;
    return { ...section, trimThickness, trimHeight, profile: { ...section.profile, trim: beams.profile.trim } };
}

function otherSidesOf(lines: readonly Line[]): readonly string[] {
    const looking = grouped(lines.flatMap(line => (line.otherSide ? [{ name: line.name, looks: lookOf(line, line.otherSide) }] : [])), ({ looks }) => looks);
    return [...looking].map(([looks, own]) => `${looks} of line${own.length === 1 ? '' : 's'} ${listed(own.map(({ name }) => name))}`);
}

export function contextIn(ceiling: Ceiling, { lines }: SectionOfLines, options: SheetOptions): SectionContext {
    const { room, band } = ceiling;
    return {
        ...options, job: room.job, room: room.title ?? room.name, lines: lines.map(line => line.name), otherSides: otherSidesOf(lines), covering: room.covering,
        ...(band === null ? {} : { bandEdge: band.lowerEdge.ticks }),
        crossed: lines.some(line => ceiling.lines.some(other => other.runs !== line.runs)),
    };
}
